package org.benchtrail.core.training;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Harm;
import org.benchtrail.core.practice.job.DeviceAct;
import org.benchtrail.core.practice.job.OwnJob;
import org.benchtrail.core.practice.job.PracticeDevice;
import org.benchtrail.core.practice.job.Truth;

/**
 * A mentor's job played by machine before anybody is given it: whether its symptom shows, whether its faults can be told apart from all
 * others of the device, whether it can be mended, how long that takes, and whether harm can be done. The same text is always judged alike.
 */
public final class OwnJobCheck {
    public static final int SEEDS = 200;
    public static final int STEPS = 100;

    static final double PLAIN = 3;
    private static final double OFTEN = 0.95;
    /** Of each fault, for what readings show: each costs minutes of simulated running. */
    private static final int READ = 60;

    /** Harm of an act depends on the device: looked for on so many. */
    private static final int HARMED = 20;

    private OwnJobCheck() {}

    /** The seed of that number. */
    static byte[] seed(int number) {
        return ByteBuffer.allocate(32).putInt(28, number).array();
    }

    /**
     * How often a fault shows the symptom at once, and what became of the jobs in which it was drawn.
     *
     * @param solved by the recommended policy
     * @param minutes of it, mean; of a job that it did not solve with those of escalating
     * @param least minutes of somebody who knows the truth, mean of what can be mended
     */
    public record FaultRow(
            String fault, int atOnce, int drawn, int played, int mended, int solved, double minutes, double least) {
        boolean shows() {
            return atOnce >= OFTEN * drawn;
        }
    }

    /**
     * A fault of the job beside another of the device.
     *
     * @param named whether the author calls them alike
     * @param by what tells them apart best or first; empty if nothing differs
     */
    public record PairRow(String fault, String other, boolean named, String by, double deviations) {
        boolean isPlain() {
            return deviations >= PLAIN;
        }
    }

    /**
     * What the check came to.
     *
     * @param harm what does harm if nothing is made safe before it, each with whom or what it hits
     * @param refused why it is not given to anybody; empty if it may be
     * @param told what its author should know
     */
    public record Result(
            List<FaultRow> faults, List<PairRow> pairs, List<String> harm, List<String> refused, List<String> told) {
        public Result {
            faults = List.copyOf(faults);
            pairs = List.copyOf(pairs);
            harm = List.copyOf(harm);
            refused = List.copyOf(refused);
            told = List.copyOf(told);
        }

        public boolean clean() {
            return refused.isEmpty();
        }
    }

    /** @param progress hears how many of {@link #STEPS} are done */
    public static Result of(OwnJob job, Model model, IntConsumer progress) {
        List<FaultRow> faults = played(job, model, progress);
        List<PairRow> pairs = pairs(job, progress);
        List<String> harm = harm(job);
        progress.accept(STEPS);
        return new Result(faults, pairs, harm, refused(faults, pairs), told(faults, pairs, harm));
    }

    /** The games of one fault while they are counted. */
    private static final class Tally {
        private int played;
        private int mended;
        private int solved;
        private double minutes;
        private double least;

        private void add(Players players) {
            Players.Result best = players.recommended();
            OptionalDouble bound = players.leastMinutes();
            played++;
            solved += best.solved() ? 1 : 0;
            minutes += best.minutes();
            mended += bound.isPresent() ? 1 : 0;
            least += bound.orElse(0);
        }
    }

    private static List<FaultRow> played(OwnJob job, Model model, IntConsumer progress) {
        Map<String, Tally> tallies = new LinkedHashMap<>();
        job.faults().keySet().forEach(fault -> tallies.put(fault, new Tally()));
        for (int i = 0; i < SEEDS; i++) {
            Truth truth = Truth.of(job, seed(i));
            if (truth.found().isPresent()) {
                Objects.requireNonNull(tallies.get(truth.fault())).add(new Players(truth, model));
            }
            progress.accept(STEPS / 2 * i / SEEDS);
        }
        List<FaultRow> rows = new ArrayList<>();
        tallies.forEach((fault, t) -> rows.add(new FaultRow(
                fault,
                (int) IntStream.range(0, SEEDS)
                        .filter(i -> job.showsAtOnce(new Chance(seed(i)), fault))
                        .count(),
                SEEDS,
                t.played,
                t.mended,
                t.solved,
                t.minutes / Math.max(1, t.played),
                t.least / Math.max(1, t.mended))));
        return rows;
    }

    /** Each fault of the job against each other of the device that could be meant; a pair of two of the job's own once. */
    private static List<PairRow> pairs(OwnJob job, IntConsumer progress) {
        ReadingsApart readings = new ReadingsApart(job, READ);
        List<String> own = List.copyOf(job.faults().keySet());
        List<String> all = job.family().faults();
        List<PairRow> rows = new ArrayList<>();
        for (int i = 0; i < own.size(); i++) {
            for (String other : all) {
                boolean before = own.indexOf(other) >= 0 && own.indexOf(other) <= i;
                if (!before && readings.isPossible(own.get(i)) && readings.isPossible(other)) {
                    rows.add(pair(job, readings, own.get(i), other));
                }
                progress.accept(
                        STEPS / 2 + STEPS / 2 * (i * all.size() + all.indexOf(other)) / (own.size() * all.size()));
            }
        }
        return rows;
    }

    private static PairRow pair(OwnJob job, ReadingsApart readings, String fault, String other) {
        ReadingsApart.Apart apart = readings.between(fault, other, PLAIN);
        DeviceAct act = apart.act();
        return new PairRow(
                fault,
                other,
                job.alike().contains(Set.of(fault, other)),
                act == null ? "" : act.way().words() + " " + act.label(),
                apart.deviations());
    }

    /** Each act as the first, with nothing made safe. */
    private static List<String> harm(OwnJob job) {
        List<String> harm = new ArrayList<>();
        for (DeviceAct act : job.family().acts()) {
            Set<String> kinds = new TreeSet<>();
            for (int i = 0; i < HARMED; i++) {
                Truth.of(job, seed(i)).found().ifPresent(device -> kinds.addAll(kinds(device, act)));
            }
            if (!kinds.isEmpty()) {
                harm.add(act.label() + " (" + String.join(", ", kinds) + ")");
            }
        }
        return harm;
    }

    private static List<String> kinds(PracticeDevice device, DeviceAct act) {
        return device.act(act).harm().stream()
                .map(Harm::kind)
                .map(kind -> kind.name().toLowerCase(Locale.ROOT))
                .toList();
    }

    private static List<String> refused(List<FaultRow> faults, List<PairRow> pairs) {
        List<String> refused = new ArrayList<>();
        for (FaultRow row : faults) {
            if (!row.shows()) {
                refused.add("With " + row.fault + " the symptom shows in " + row.atOnce + " of " + row.drawn
                        + " first draws; it takes " + Math.round(OFTEN * row.drawn)
                        + ". Make the fault graver, or narrow what is drawn.");
            }
            if (row.mended < row.played) {
                refused.add("With " + row.fault + " no repair that this device has mends " + (row.played - row.mended)
                        + " of " + row.played + " devices without harm. Take out what keeps it from being well.");
            }
        }
        for (PairRow row : pairs) {
            if (!row.named && !row.isPlain()) {
                refused.add(row.fault + " is not told from " + row.other + ": "
                        + (row.by.isEmpty()
                                ? "nothing that is looked at or measured differs"
                                : "'" + row.by + "' comes nearest, and differs by " + one(row.deviations)
                                        + " standard deviations; it takes " + one(PLAIN))
                        + ". Change one of them, or name them alike.");
            }
        }
        return refused;
    }

    private static List<String> told(List<FaultRow> faults, List<PairRow> pairs, List<String> harm) {
        List<String> told = new ArrayList<>();
        for (PairRow row : pairs) {
            if (row.named && row.isPlain()) {
                told.add(row.fault + " and " + row.other + " are named alike, but '" + row.by + "' tells them apart.");
            }
        }
        for (FaultRow row : faults) {
            if (row.solved < OFTEN * row.played) {
                told.add("With " + row.fault + " the catalogue's next best acts solve " + row.solved + " of "
                        + row.played + ": whoever follows the catalogue does not always get there.");
            }
        }
        told.add(
                harm.isEmpty()
                        ? "No act does harm here, even with nothing made safe before it."
                        : "Harm can be done: " + (harm.size() == 1 ? "one act does" : harm.size() + " acts do")
                                + " it if nothing is made safe before.");
        return told;
    }

    private static String one(double number) {
        return String.format(Locale.ROOT, "%.1f", number);
    }
}
