package org.benchtrail.core.training;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Advice;
import org.benchtrail.core.diagnosis.BenchSituation;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.FailedRepair;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.NextTest;
import org.benchtrail.core.diagnosis.PlanSettings;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Repair;
import org.benchtrail.core.diagnosis.RepairOrder;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.practice.Harm;
import org.benchtrail.core.practice.job.DeviceAct;
import org.benchtrail.core.practice.job.Seen;

/** What somebody knows of a device, in the words of the catalogue, and what the catalogue would do next by it. */
public record Belief(Ties ties, Model model, Evidence evidence) {
    /** What a reading of these is held against where the catalogue leaves it to the device or the place. */
    private static final Map<String, double[]> OWN_LIMITS =
            Map.of("p3", new double[] {207, 253}, "s10", new double[] {0, 60}, "m8", new double[] {1.14, 1.26});

    private static final Set<String> CARED_FOR = Set.of(
            "backup-done",
            "change-approved",
            "hazard-cleared",
            "owner-asked",
            "key-at-hand",
            "device-isolated",
            "outage-announced",
            "change-noted",
            "loss-accepted");

    /** What the report of the job tells, and nothing else. */
    public static Belief reported(Ties ties, Model model) {
        List<Report> told = ties.told().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .map(e -> Report.of(e.getKey(), e.getKey(), e.getValue(), Source.REPORTED, Instant.EPOCH))
                .toList();
        return new Belief(ties, model, new Evidence(told, List.of()));
    }

    /** With what an act showed; the same if it answers nothing of the catalogue. */
    public Belief seeing(DeviceAct act, Seen seen) {
        return ties.finding(act)
                .flatMap(id -> SheetEvidence.finding(model, id))
                .map(finding -> new Belief(ties, model, evidence.remeasured(report(act, finding, seen))))
                .orElse(this);
    }

    public Belief failed(String cause) {
        return new Belief(ties, model, evidence.with(new FailedRepair(cause, 0, Instant.EPOCH)));
    }

    /** With every cause in vain all of whose repairs were made. */
    Belief failedBy(Set<DeviceAct> done) {
        Belief after = this;
        for (String cause : new TreeSet<>(ties.repairs().keySet())) {
            boolean known =
                    evidence.failedRepairs().stream().anyMatch(f -> f.repair().equals(cause));
            if (!known && done.containsAll(ties.repairs().get(cause))) {
                after = after.failed(cause);
            }
        }
        return after;
    }

    /** What an act costs beyond the best one, by what is known before it. */
    Debrief.Judged judge(DeviceAct act, List<Harm> harm, List<DeviceAct> skipped) {
        Advice advice = advice();
        Action best = advice.actions().get(0);
        OptionalDouble expected = switch (act.way()) {
            case PREPARE, TRY -> OptionalDouble.empty();
            case MEND -> ofRepair(act, advice, best);
            default ->
                ties.finding(act)
                        .map(id -> OptionalDouble.of(ofTest(id, act, advice, best)))
                        .orElse(OptionalDouble.empty());
        };
        OptionalDouble regret = expected.isEmpty()
                ? expected
                : OptionalDouble.of(Math.max(0, expected.getAsDouble() - best.expectedMinutes()));
        boolean worse = regret.isPresent() && regret.getAsDouble() > advice.threshold();
        return new Debrief.Judged(
                act, regret, advice.threshold(), worse ? advice.recommended() : Optional.empty(), skipped, harm);
    }

    /** One that is not on offer any more, or cannot help, costs its own minutes. */
    private static double ofTest(String finding, DeviceAct act, Advice advice, Action best) {
        return listed(advice, finding).orElse(best.expectedMinutes() + act.minutes());
    }

    private static Optional<Double> listed(Advice advice, String id) {
        return advice.actions().stream()
                .filter(a -> a.id().equals(id))
                .map(Action::expectedMinutes)
                .findFirst();
    }

    /** Of the cause that speaks most for it. */
    private OptionalDouble ofRepair(DeviceAct act, Advice advice, Action best) {
        OptionalDouble least = ties.repairs().entrySet().stream()
                .filter(e -> e.getValue().contains(act))
                .flatMap(e -> model.category().cause(e.getKey()).stream())
                .mapToDouble(cause -> listed(advice, cause.id()).orElseGet(() -> unlisted(cause)))
                .min();
        return least.isPresent() ? least : OptionalDouble.of(best.expectedMinutes() + act.minutes());
    }

    /** Only the repair that is next in order is on offer; another takes its minutes, and where it is in vain the best after that. */
    private double unlisted(Cause cause) {
        Repair repair = cause.repair();
        double vain = 1 - repair.fixProbability() * ranking().probability(cause.id());
        return RepairOrder.minutes(repair, PlanSettings.STANDARD)
                + vain * failed(cause.id()).advice().actions().get(0).expectedMinutes();
    }

    private static Report report(DeviceAct act, Finding finding, Seen seen) {
        Source source = switch (act.way()) {
            case ASK -> Source.REPORTED;
            case LOOK -> Source.SEEN;
            default -> Source.CALIBRATED;
        };
        return Report.of(finding.id(), finding.id(), value(finding, seen), source, Instant.EPOCH);
    }

    /** The finding's value that was seen; a number is held against its limit. */
    public static String value(Finding finding, Seen seen) {
        if (seen.gauge() == null) {
            return seen.value().equals(Seen.UNKNOWN) ? Report.UNKNOWN : seen.value();
        }
        double number = Double.parseDouble(seen.value());
        double[] own = OWN_LIMITS.get(finding.id());
        if (own != null) {
            return number < own[0] ? Finding.BELOW : number > own[1] ? Finding.ABOVE : Finding.INSIDE;
        }
        try {
            return finding.judge(number, 0, 1).value();
        } catch (Invalid e) {
            return Finding.INSIDE; // on a side for which the catalogue has no name
        }
    }

    public Ranking ranking() {
        return Ranking.of(model, evidence);
    }

    /** What the catalogue advises now, among what the device can answer. */
    public Advice advice() {
        Set<String> answerable = Set.copyOf(ties.findings().values());
        Set<String> withheld = model.category().findings().stream()
                .map(Finding::id)
                .filter(id -> !answerable.contains(id))
                .collect(Collectors.toSet());
        BenchSituation situation = new BenchSituation(CARED_FOR, Set.of(), Set.of(), Map.of(), withheld);
        return new NextTest(model, PlanSettings.STANDARD).advise(ranking(), situation);
    }

    /** Without repairs that would be next and that the device has no act for: they are counted as tried in vain. */
    Belief practicable() {
        Belief now = this;
        Action next = now.advice().recommended().orElseThrow();
        while (next.type() != Action.Type.TEST
                && next.type() != Action.Type.ESCALATE
                && repairing(next.id()).isEmpty()) {
            now = now.failed(next.id());
            next = now.advice().recommended().orElseThrow();
        }
        return now;
    }

    /** The acts by which a cause, or what a shared repair covers, is repaired; none if the device has none. */
    public List<DeviceAct> repairing(String id) {
        return ties.repairs().getOrDefault(id, List.of());
    }

    /** The cause that stands first in the catalogue's own order, of those that the device can be repaired of. */
    public static Optional<String> commonest(Ties ties, CauseCategory category) {
        return category.causes().stream()
                .map(c -> c.id())
                .filter(ties.repairs()::containsKey)
                .findFirst();
    }
}
