package org.benchtrail.core.bench.network;

import static org.benchtrail.core.bench.Numeral.about;
import static org.benchtrail.core.bench.Numeral.of;

import java.util.List;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Choice;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.Result.Point;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Trade;

/** How long a copy takes: bits over rate, and a fixed time for each file. Units of bytes as in IEC 80000-13. */
public final class Transfer {
    /** Seconds from which on people speak of minutes. */
    private static final double LONG = 120;

    /** Unit of the amount: decimal as on labels, binary as many programs show it. */
    public enum ByteUnit implements Choice {
        MB("MB (10^6 bytes)", 1e6),
        MIB("MiB (2^20 bytes)", 0x1p20),
        GB("GB (10^9 bytes)", 1e9),
        GIB("GiB (2^30 bytes)", 0x1p30),
        TB("TB (10^12 bytes)", 1e12),
        TIB("TiB (2^40 bytes)", 0x1p40);

        private final String words;

        private final double bytes;

        ByteUnit(String words, double bytes) {
            this.words = words;
            this.bytes = bytes;
        }

        @Override
        public String words() {
            return words;
        }

        public double bytes() {
            return bytes;
        }
    }

    public record Input(
            @Ask(label = "Amount", hint = "In the unit chosen below")
            double amount,

            @Ask(label = "Unit of the amount") ByteUnit unit,

            @Ask(label = "Rate of the link", unit = "Mb/s", hint = "Megabits, as links are named")
            double rate,

            @Ask(
                    label = "Share of the rate that carries content",
                    unit = "%",
                    hint = "About 94 for TCP over Ethernet at best")
            double efficiency,

            @Ask(label = "Files", unit = "1", hint = "0 or 1 for one stream")
            int files,

            @Ask(label = "Time lost for each file", unit = "ms", hint = "Opening and closing it; 0 if unknown")
            double perFile) {
        public Input {
            InputCheck check = new InputCheck();
            check.within("amount", amount, 1e-6, 1e9, "");
            check.present("unit", unit);
            check.within("rate", rate, 0.001, 1e7, "Mb/s");
            check.within("efficiency", efficiency, 0.1, 100, "%");
            check.rule(files >= 0, "files", "give 0 or more");
            check.within("perFile", perFile, 0, 1e6, "ms");
            check.done();
        }
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "transfer",
            1,
            Trade.NETWORK,
            "Transfer time",
            "How long does this copy take?",
            new Input(250, ByteUnit.GIB, 1000, 94, 12_000, 5),
            Transfer::calculate);

    private Transfer() {}

    public static Result calculate(Input in) {
        ResultDraft draft = new ResultDraft();
        double all = all(draft, in);
        if (all >= LONG) {
            draft.figure("The same in minutes", "s / 60", of(all) + " / 60", all / 60, "min", 4);
        }
        draft.assume("The drives at both ends keep up with the link, and nothing else uses it.");
        draft.curve(new Curve(
                "Copied",
                "time",
                "s",
                "amount",
                in.unit().words().replaceAll(" .*", ""),
                List.of(new Point(0, 0), new Point(all, in.amount()))));
        return draft.judged(
                Level.NONE,
                "a time",
                "It takes " + about(all) + " at " + of(in.rate() * in.efficiency() / 100, 4) + " Mb/s of content.");
    }

    /** Content and files together, in seconds. */
    private static double all(ResultDraft draft, Input in) {
        double bits = draft.step(
                "Bits",
                "amount × bytes of the unit × 8",
                of(in.amount()) + " × " + of(in.unit().bytes(), 15) + " × 8",
                in.amount() * in.unit().bytes() * 8,
                "bit",
                6);
        double stream = draft.figure(
                "Time for the content",
                "bits / (rate × 10^6 × share / 100)",
                of(bits) + " / (" + of(in.rate()) + " × 10^6 × " + of(in.efficiency()) + " / 100)",
                bits / (in.rate() * 1e6 * in.efficiency() / 100),
                "s",
                4);
        double files = draft.figure(
                "Time for the files",
                "files × time for each / 1000",
                in.files() + " × " + of(in.perFile()) + " / 1000",
                in.files() * in.perFile() / 1000,
                "s",
                4);
        return draft.figure("Time in all", "content + files", of(stream) + " + " + of(files), stream + files, "s", 4);
    }
}
