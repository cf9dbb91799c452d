package org.benchtrail.core.bench.judging;

import java.math.BigDecimal;
import java.util.List;
import java.util.TreeSet;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.Result.Point;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Trade;

/**
 * How many of N must be looked at to find a fault that is present in D of them, with a given confidence: the smallest n with 1
 * - C(N - D, n) / C(N, n) at least the confidence, exact (hypergeometric distribution).
 */
public final class Subset {
    private static final int MOST = 100_000;

    public record Input(
            @Ask(label = "How many there are", hint = "Machines, ports, disks of the same kind")
            int size,

            @Ask(label = "How many would have the fault", hint = "The fewest that you want to be sure to notice")
            int faulty,

            @Ask(label = "Confidence", unit = "%", hint = "95 is usual; 100 for certainty")
            double confidence) {
        public Input {
            InputCheck check = new InputCheck();
            boolean sized = check.within("size", size, 1, MOST, "");
            check.within("faulty", faulty, 1, sized ? size : MOST, "");
            check.within("confidence", confidence, 1, 100, "%");
            check.done();
        }
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "subset",
            1,
            Trade.JUDGING,
            "How many to look at",
            "How many of N must be looked at to find a fault that is present in D?",
            new Input(187, 9, 95),
            Subset::calculate);

    private Subset() {}

    public static Result calculate(Input input) {
        ResultDraft draft = new ResultDraft();
        Discovery discovery = new Discovery(input.size(), input.faulty());
        int n = discovery.needed(BigDecimal.valueOf(input.confidence()).movePointLeft(2));
        draft.say(
                "What is sought",
                "smallest n with 1 - C(N - D, n) / C(N, n) at least the confidence",
                "N = " + input.size() + ", D = " + input.faulty() + ", confidence " + Numeral.of(input.confidence())
                        + " %");
        draft.figure("Look at", "n", "smallest n", n, "1", 6);
        double found = found(draft, "Chance to find it", discovery, n);
        found(draft, "Chance with one fewer", discovery, n - 1);
        draft.figure(
                "Share of all", "100 × n / N", "100 × " + n + " / " + input.size(), 100.0 * n / input.size(), "%", 3);
        draft.curve(curve(discovery));
        draft.assume(
                "The ones looked at are drawn at random, each once, and looking shows the fault whenever it is there.");
        String reason = "Looking at " + n + " of " + input.size() + " finds a fault present in " + input.faulty()
                + " with a chance of " + Numeral.share(found, 4)
                + " %; finding none " + proof(input, n) + ".";
        return draft.judged(Level.NONE, "look at " + n, reason);
    }

    /** What it proves to find none among so many: where fewer are left out than have the fault, it cannot have been missed. */
    private static String proof(Input input, int n) {
        if (n <= input.size() - input.faulty()) {
            return "does not prove that there is none";
        }
        return "shows that " + (input.faulty() == 1 ? "there is none" : "fewer than " + input.faulty() + " have it");
    }

    private static double found(ResultDraft draft, String name, Discovery d, int n) {
        String with = d.size() - d.faulty() + ", " + n;
        String put = "100 × (1 - C(" + with + ") / C(" + d.size() + ", " + n + "))";
        return draft.figure(name, "100 × (1 - C(N - D, n) / C(N, n))", put, 100 * d.chance(n), "%", 6);
    }

    private static Curve curve(Discovery discovery) {
        TreeSet<Integer> places = new TreeSet<>();
        for (int i = 0; i <= 40; i++) {
            places.add((int) Math.round(discovery.size() * i / 40.0));
        }
        List<Point> points = places.stream()
                .map(n -> new Point(n, 100 * discovery.chance(n)))
                .toList();
        return new Curve("Chance to find it", "looked at", "1", "chance", "%", points);
    }
}
