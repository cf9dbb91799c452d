package org.benchtrail.training;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.DocumentRequirement;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.IdentifyRequirement;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.plan.PlanRequirement;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.TestRequirement;
import org.benchtrail.core.method.verify.VerifyRequirement;
import org.benchtrail.core.practice.job.DeviceAct;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.Truth;
import org.benchtrail.core.practice.job.Truth.Played;
import org.benchtrail.core.training.CoachChoices;
import org.benchtrail.core.training.CoachEvent;
import org.benchtrail.core.training.Ties;
import org.benchtrail.core.training.WorkJudged;
import org.benchtrail.core.training.WorkJudged.Judgement;

/**
 * What is true of a practice device says of what was written about it. Only of a job that has ended: before, it would tell what is
 * sealed. What the device cannot tell is not judged, and fades nothing.
 */
final class PracticeJudged {
    /** Minutes and share by which stated minutes may differ from the job's own clock; a choice of this project. */
    private static final double NEAR_MINUTES = 5;

    private static final double NEAR_SHARE = 0.2;

    private final PracticeJob job;
    private final Instant ended;
    private final JobSheet sheet;
    private final Played played;
    private final List<Judgement> judged = new ArrayList<>();

    private PracticeJudged(PracticeJob job, Instant ended) {
        this.job = job;
        this.ended = ended;
        sheet = job.sheet();
        played = job.played();
    }

    /** What a job says of each requirement, before it is known what its person had chosen to be shown. */
    record Told(
            List<Entry> entries,
            String person,
            Family family,
            List<Judgement> judged,
            Map<String, List<CoachEvent>> harm) {
        Map<String, List<CoachEvent>> events(CoachChoices choices, Instant ended) {
            Map<String, List<CoachEvent>> events = new HashMap<>();
            WorkJudged.of(entries, person, judged, choices)
                    .forEach((code, of) -> events.put(
                            code, of.stream().map(e -> known(e, ended)).toList()));
            harm.forEach((code, of) -> events.merge(code, of, PracticeJudged::together));
            return events;
        }

        /** The job's own time is invented: it was worked when it was begun, and is known when it has ended. */
        private static CoachEvent known(CoachEvent event, Instant ended) {
            if (event instanceof CoachEvent.Occasion occasion) {
                return new CoachEvent.Occasion(ended, occasion.worked(), occasion.met(), occasion.chosen());
            }
            return event instanceof CoachEvent.NearMiss ? new CoachEvent.NearMiss(ended) : event;
        }
    }

    private static List<CoachEvent> together(List<CoachEvent> one, List<CoachEvent> other) {
        List<CoachEvent> all = new ArrayList<>(one);
        all.addAll(other);
        return all;
    }

    static Told of(PracticeJob job, Instant ended, Model model) {
        PracticeJudged judging = new PracticeJudged(job, ended);
        judging.answers(model);
        return new Told(
                job.trail().stream().map(e -> begun(e.read(), job.begun())).toList(),
                job.person(),
                job.truth().family(),
                List.copyOf(judging.judged),
                judging.harm());
    }

    private static Entry begun(Entry entry, Instant begun) {
        Stamp stamp = entry.stamp();
        return new Entry(new Stamp(stamp.entry(), begun, stamp.by(), stamp.roles(), stamp.origin()), entry.fact());
    }

    private void answers(Model model) {
        judge(IdentifyRequirement.EVIDENCE_ATTACHED, deviceShowedAtIdentify(), false);
        if (!job.hazards().isEmpty()) {
            judge(
                    IdentifyRequirement.HAZARDS_SCREENED,
                    job.hazards().keySet().stream().allMatch(job::named),
                    true);
        }
        played.device()
                .isBackedUp()
                .ifPresent(there -> judge(IdentifyRequirement.DATA_PROTECTED, dataAreSafe(there), true));
        judge(
                TestRequirement.EXPECTATION_FIRST,
                sheet.all(CheckPlanned.class).stream()
                        .map(c -> c.fact())
                        .anyMatch(c -> c.finding() != null || c.expected() != null),
                false);
        careful().ifPresent(careful -> judge(PlanRequirement.CAUTIONS_TAKEN, careful, true));
        judge(VerifyRequirement.SYMPTOMS_GONE, played.device().isWell(), true);
        Set<String> right =
                Ties.of(job.truth().family()).causes().getOrDefault(job.truth().fault(), Set.of());
        sheet.latest(CauseNamed.class)
                .ifPresent(c ->
                        judge(DocumentRequirement.CAUSE_NAMED, DebriefView.isRight(c.fact(), right, model), false));
        sheet.latest(EffortRecorded.class)
                .ifPresent(e -> judge(
                        DocumentRequirement.EFFORT_RECORDED, isNear(e.fact().minutes()), false));
    }

    private void judge(Requirement requirement, boolean satisfied, boolean critical) {
        judged.add(new Judgement(requirement.code(), ended, satisfied, critical && !satisfied));
    }

    private boolean deviceShowedAtIdentify() {
        int left = sheet.all(Advanced.class).stream()
                .mapToInt(StandingFact::entry)
                .min()
                .orElse(Integer.MAX_VALUE);
        return sheet.facts().stream()
                .anyMatch(f -> f.entry() < left
                        && (f.fact() instanceof ReadingRecorded || f.fact() instanceof FindingAnswered));
    }

    /** The data are there, and somebody looked before saying so. */
    private boolean dataAreSafe(boolean there) {
        boolean claimed = sheet.latest(DataAnswered.class)
                .filter(d -> d.fact().state().backedUp())
                .isPresent();
        return there && claimed && did(DeviceAct.Way.PREPARE, Step.IDENTIFY);
    }

    private boolean did(DeviceAct.Way way, Step latest) {
        return job.done().stream()
                .filter(d -> !latest.isBefore(d.step()))
                .map(d -> Deed.of(job.truth().family(), d.act()).act())
                .anyMatch(act -> act != null && act.way() == way);
    }

    /** Whether what makes safe was done before each act that asks for it; empty if no act did. */
    private Optional<Boolean> careful() {
        boolean asked = false;
        Set<DeviceAct> safe = new HashSet<>();
        for (Truth.Step step : played.steps()) {
            DeviceAct act = step.act();
            if (act.way() == DeviceAct.Way.MEND && !act.prudent().isEmpty()) {
                asked = true;
                if (!safe.containsAll(act.prudent())) {
                    return Optional.of(false);
                }
            }
            safe.add(act);
            if (act.way() == DeviceAct.Way.MEND) {
                safe.removeIf(p -> !p.lasting());
            }
        }
        return asked ? Optional.of(true) : Optional.empty();
    }

    private boolean isNear(int minutes) {
        double worked = played.clock().handsOn();
        return Math.abs(minutes - worked) <= Math.max(NEAR_MINUTES, NEAR_SHARE * worked);
    }

    /** What somebody or somebody's data came to harm by, and what was done outside the plan, whichever step it was. */
    private Map<String, List<CoachEvent>> harm() {
        Map<String, List<CoachEvent>> harm = new LinkedHashMap<>();
        if (!played.harm().isEmpty()) {
            harm.put(PlanRequirement.CAUTIONS_TAKEN.code(), List.of(new CoachEvent.CriticalMiss(ended)));
        }
        if (!DebriefView.outside(job).isEmpty()) {
            harm.put(PlanRequirement.ACTION_PLANNED.code(), List.of(new CoachEvent.CriticalMiss(ended)));
        }
        return harm;
    }
}
