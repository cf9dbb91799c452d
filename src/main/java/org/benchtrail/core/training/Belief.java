package org.benchtrail.core.training;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.diagnosis.Advice;
import org.benchtrail.core.diagnosis.BenchSituation;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.FailedRepair;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.NextTest;
import org.benchtrail.core.diagnosis.PlanSettings;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.practice.job.DeviceAct;
import org.benchtrail.core.practice.job.Seen;

/** What somebody knows of a device, in the words of the catalogue, and what the catalogue would do next by it. */
public record Belief(Ties ties, Model model, Evidence evidence) {
    /** What a reading of these is held against where the catalogue leaves it to the device or the place. */
    private static final Map<String, double[]> OWN_LIMITS =
            Map.of("p3", new double[] {207, 253}, "s10", new double[] {0, 60});

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
