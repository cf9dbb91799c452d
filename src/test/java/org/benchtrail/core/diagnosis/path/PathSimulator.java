package org.benchtrail.core.diagnosis.path;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Answers;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.FailedRepair;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Report;

/**
 * Works invented tickets by a policy: to the verified repair or to escalation, and, apart from that, six tests in a row to see how
 * soon the fault is placed.
 */
final class PathSimulator {
    static final int[] LOOKS = {2, 4, 6};

    /** More acts than any ticket takes. */
    private static final int MOST_ACTS = 80;

    private static final double ASKING = 1;

    private PathSimulator() {}

    /** @param placed after 2, 4 and 6 tests; meaningless for a fault outside all places */
    record Outcome(
            boolean listed,
            boolean outside,
            double minutes,
            int wrong,
            int tests,
            boolean escalated,
            boolean[] placed) {}

    private static Evidence start(PathWorld.Hidden ticket, Known known, PathPolicy policy) {
        Localisation at = policy.localiser(ticket.category(), ticket.paths()).locate(known);
        Answers answers = Answers.of(at.model(), Evidence.NONE);
        List<Finding> quick = new ArrayList<>(ticket.category().findings().stream()
                .filter(f -> f.minutes() <= 1
                        && answers.offers(f.id())
                        && !ticket.truth().gone().contains(f.id()))
                .toList());
        java.util.Collections.shuffle(quick, new Random(ticket.seed()));
        Evidence e = Evidence.NONE;
        for (Finding f : quick.subList(0, Math.min(2, quick.size()))) {
            e = e.with(report(
                    f.id(), ticket.answer(f.id(), f.values()), e.reports().size()));
        }
        return e;
    }

    private static Report report(String test, String value, int number) {
        return Rig.seen(test, value, number);
    }

    static Outcome work(PathWorld.Hidden ticket, PathPolicy policy) {
        Localiser localiser = policy.localiser(ticket.category(), ticket.paths());
        Known known = PathPolicy.known(ticket, policy.asksEquipment());
        long asked = ticket.paths().segments().stream()
                .filter(s -> policy.asksEquipment() && !s.present().ask().isEmpty())
                .count();
        Evidence e = start(ticket, known, policy);
        boolean[] placed = placed(ticket, localiser, known.with(e));
        double minutes = ASKING * asked;
        int wrong = 0;
        int tests = 0;
        for (int k = 0; k < MOST_ACTS; k++) {
            Localisation at = localiser.locate(known.with(e));
            Action a = at.advice().recommended().orElseThrow();
            switch (a.type()) {
                case TEST -> {
                    Finding f = finding(at, a.id());
                    minutes += f.minutes();
                    tests++;
                    e = e.with(report(
                            a.id(),
                            ticket.answer(a.id(), f.values()),
                            e.reports().size()));
                }
                case REPAIR, PREPARE -> {
                    minutes += a.minutes();
                    if (ticket.mended(
                            a.id(),
                            home(ticket, a.id()),
                            fix(at, a.id()),
                            a.minutes() <= PathPolicy.PLAN.leaveMinutes())) {
                        return new Outcome(
                                ticket.isListed(), ticket.segment().isEmpty(), minutes, wrong, tests, false, placed);
                    }
                    wrong++;
                    e = e.with(new FailedRepair(
                            a.id(), at.ranking().probability(at.ranking().leader()), Rig.T0));
                }
                case ESCALATE -> {
                    return new Outcome(
                            ticket.isListed(),
                            ticket.segment().isEmpty(),
                            minutes + a.minutes(),
                            wrong,
                            tests,
                            true,
                            placed);
                }
            }
        }
        throw new IllegalStateException("no end: " + ticket);
    }

    private static String home(PathWorld.Hidden ticket, String cause) {
        return ticket.paths().home(cause).map(Segment::id).orElse("");
    }

    private static double fix(Localisation at, String id) {
        return at.model().category().causes().stream()
                .filter(c -> c.id().equals(id))
                .mapToDouble(c -> c.repair().fixProbability())
                .findFirst()
                .orElse(0);
    }

    private static Finding finding(Localisation at, String id) {
        return at.model().category().findings().stream()
                .filter(f -> f.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    /** Whether the segment with most belief is the right one, tests made by what leads to the least minutes. */
    private static boolean[] placed(PathWorld.Hidden ticket, Localiser localiser, Known known) {
        boolean[] placed = new boolean[LOOKS.length];
        Evidence e = known.evidence();
        int look = 0;
        for (int k = 1; k <= LOOKS[LOOKS.length - 1]; k++) {
            Localisation at = localiser.locate(known.with(e));
            Action test = at.placing().orElse(null);
            if (test != null) {
                Finding f = finding(at, test.id());
                e = e.with(report(
                        test.id(),
                        ticket.answer(test.id(), f.values()),
                        e.reports().size()));
            }
            if (k == LOOKS[look]) {
                placed[look++] = leader(localiser.locate(known.with(e))).equals(ticket.segment());
            }
        }
        return placed;
    }

    private static String leader(Localisation at) {
        return at.masses().entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse("");
    }

    /** Figures of one policy over many tickets. */
    record Summary(String policy, List<Outcome> outcomes) {
        /** Of the tickets with a fault in a place. */
        double placed(int look, boolean unlistedOnly) {
            return outcomes.stream()
                    .filter(o -> !o.outside() && !(unlistedOnly && o.listed()))
                    .mapToDouble(o -> o.placed()[look] ? 1 : 0)
                    .average()
                    .orElse(Double.NaN);
        }

        double minutes() {
            return outcomes.stream().mapToDouble(Outcome::minutes).average().orElse(Double.NaN);
        }

        double minutes(boolean listed) {
            return outcomes.stream()
                    .filter(o -> o.listed() == listed)
                    .mapToDouble(Outcome::minutes)
                    .average()
                    .orElse(Double.NaN);
        }

        double error() {
            double mean = minutes();
            double square = outcomes.stream()
                    .mapToDouble(o -> (o.minutes() - mean) * (o.minutes() - mean))
                    .sum();
            return Math.sqrt(square / (outcomes.size() - 1.0) / outcomes.size());
        }

        private double share(java.util.function.Predicate<Outcome> of, java.util.function.Predicate<Outcome> among) {
            return outcomes.stream()
                    .filter(among)
                    .mapToDouble(o -> of.test(o) ? 1 : 0)
                    .average()
                    .orElse(Double.NaN);
        }

        double tests() {
            return outcomes.stream().mapToInt(Outcome::tests).average().orElse(Double.NaN);
        }

        String line() {
            return String.format(
                    Locale.ROOT,
                    "%-26s placed %.3f %.3f %.3f  unlisted %.3f %.3f %.3f  %6.1f (%.1f) min  %6.1f / %6.1f"
                            + "  wrong %.2f  tests %.2f  escalated %.3f / %.3f",
                    policy,
                    placed(0, false),
                    placed(1, false),
                    placed(2, false),
                    placed(0, true),
                    placed(1, true),
                    placed(2, true),
                    minutes(),
                    error(),
                    minutes(true),
                    minutes(false),
                    outcomes.stream().mapToInt(Outcome::wrong).average().orElse(Double.NaN),
                    tests(),
                    share(Outcome::escalated, Outcome::listed),
                    share(Outcome::escalated, o -> !o.listed()));
        }
    }

    static Summary run(PathPolicy policy, List<PathWorld.Hidden> tickets) {
        return new Summary(
                policy.name, tickets.stream().map(t -> work(t, policy)).toList());
    }
}
