package org.benchtrail.core.diagnosis;

import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.BiFunction;

/**
 * Invented tickets with hidden causes, worked by a policy to the verified cause or to escalation. Drawn from the model's own
 * family (one fault, independent findings), so real gains will be smaller.
 */
final class Simulator {
    /** Reports of a technician who looks. */
    static final double RHO = Source.SEEN.reliability();

    static final PlanSettings PLAN = PlanSettings.STANDARD.withoutRiskMinutes().withPlannedReliability(RHO);

    private Simulator() {}

    /** Everything that chance decides, drawn beforehand: every policy meets the same ticket. */
    record Hidden(Model model, int cause, int[] shown, boolean[] helps) {
        static Hidden draw(Model m, Random r) {
            double[] prior = new double[m.size() + 1];
            for (int i = 0; i < prior.length; i++) {
                prior[i] = m.prior(i);
            }
            int cause = pick(prior, r);
            int[] shown = new int[m.findings()];
            for (int f = 0; f < shown.length; f++) {
                int size = m.table(f).size();
                int truth = pick(m.table(f).row(cause, m.size()), r);
                shown[f] = pick(LikelihoodTable.channel(truth, RHO, size), r);
            }
            boolean[] helps = new boolean[m.size()];
            for (int i = 0; i < helps.length; i++) {
                helps[i] = i == cause && r.nextDouble() < RepairOrder.of(m, PLAN).fix[i];
            }
            return new Hidden(m, cause, shown, helps);
        }

        private static int pick(double[] p, Random r) {
            double x = r.nextDouble();
            int i = 0;
            while (i < p.length - 1 && (x -= p[i]) >= 0) {
                i++;
            }
            return i;
        }
    }

    /** What it took; {@code place} of the true cause in the ranking before the first repair or escalation, from 1. */
    record Outcome(double minutes, int tests, int place) {}

    static Outcome work(Hidden ticket, BiFunction<Model, Evidence, Action> policy) {
        Model m = ticket.model();
        RepairOrder repairs = RepairOrder.of(m, PLAN);
        Evidence e = Evidence.NONE;
        double minutes = 0;
        int place = 0;
        while (true) {
            Action a = policy.apply(m, e);
            if (a.type() == Action.Type.TEST) {
                Finding f = m.finding(m.findingIndex(a.id()));
                String value = f.values().get(ticket.shown()[m.findingIndex(a.id())]);
                minutes += f.minutes();
                e = e.with(Invented.report(f.id(), value, RHO, e.reports().size()));
                continue;
            }
            place = place == 0 ? place(Ranking.of(m, e), ticket) : place;
            if (a.type() == Action.Type.ESCALATE) {
                return new Outcome(
                        minutes + repairs.escalateMinutes, e.reports().size(), place);
            }
            int i = m.index(a.id());
            minutes += repairs.minutes[i];
            if (ticket.helps()[i]) {
                return new Outcome(minutes, e.reports().size(), place);
            }
            e = e.with(new FailedRepair(a.id(), 0, Invented.T0));
        }
    }

    private static int place(Ranking ranking, Hidden ticket) {
        List<String> order = ranking.all().stream().map(Ranking.Ranked::cause).toList();
        return 1 + order.indexOf(ticket.model().id(ticket.cause()));
    }

    /** Figures of one policy over many tickets. */
    record Summary(String name, List<Outcome> outcomes) {
        double minutes() {
            return outcomes.stream().mapToDouble(Outcome::minutes).average().orElseThrow();
        }

        double halfWidth() {
            double mean = minutes();
            double square = outcomes.stream()
                    .mapToDouble(o -> (o.minutes() - mean) * (o.minutes() - mean))
                    .sum();
            return 1.96 * Math.sqrt(square / (outcomes.size() - 1.0) / outcomes.size());
        }

        double tests() {
            return outcomes.stream().mapToDouble(Outcome::tests).average().orElseThrow();
        }

        Calibration.ScoreRange within(int places) {
            return Calibration.wilson(hits(places), outcomes.size());
        }

        int hits(int places) {
            return (int) outcomes.stream().filter(o -> o.place() <= places).count();
        }

        String line() {
            return String.format(
                    Locale.ROOT,
                    "%-22s %6.1f +-%4.1f min  %5.2f tests  top1 %s  top3 %s",
                    name,
                    minutes(),
                    halfWidth(),
                    tests(),
                    share(1),
                    share(3));
        }

        private String share(int places) {
            Calibration.ScoreRange i = within(places);
            return String.format(
                    Locale.ROOT, "%.3f [%.3f, %.3f]", (double) hits(places) / outcomes.size(), i.low(), i.high());
        }
    }

    static Summary run(String name, List<Hidden> tickets, BiFunction<Model, Evidence, Action> policy) {
        return new Summary(name, tickets.stream().map(t -> work(t, policy)).toList());
    }
}
