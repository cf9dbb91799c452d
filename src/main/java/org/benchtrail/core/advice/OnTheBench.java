package org.benchtrail.core.advice;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.benchtrail.core.diagnosis.BenchSituation;
import org.benchtrail.core.diagnosis.Condition;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Feed;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Hints;
import org.benchtrail.core.diagnosis.Needs;
import org.benchtrail.core.diagnosis.Phrases;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Said;
import org.benchtrail.core.diagnosis.path.Bar;
import org.benchtrail.core.diagnosis.path.Cues;
import org.benchtrail.core.diagnosis.path.Known;
import org.benchtrail.core.diagnosis.path.Localiser;
import org.benchtrail.core.diagnosis.path.Presence;
import org.benchtrail.core.diagnosis.path.Segment;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.identify.ChangeAnswer;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.LossAccepted;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;

/** What holds on the bench of one ticket, beside the evidence: what is safe, allowed, open and at hand. */
final class OnTheBench {
    /** Questions of the catalogue that say whether an array can lose a member. */
    private static final Set<String> DEGRADED = Set.of("a1", "a5");

    private static final String NO = "no";

    private static final Set<ChangeKind> SET =
            EnumSet.of(ChangeKind.SOFTWARE, ChangeKind.SETTINGS, ChangeKind.INFRASTRUCTURE);

    /** What says of a changed thing that another one took its place. */
    private static final Set<String> PUT_IN = Set.of(
            "new",
            "added",
            "another",
            "other",
            "replaced",
            "swapped",
            "exchanged",
            "second",
            "more",
            "bigger",
            "upgraded");

    /** A change that was told is written down with what it was. */
    private static final String CHANGE_NOTED = "change-noted";

    private OnTheBench() {}

    static Known known(JobSheet sheet, Localiser places, Evidence evidence, Cues cues) {
        Map<String, String> called = called(sheet, places, evidence);
        return new Known(
                evidence,
                equipment(called, places, cues),
                changes(sheet),
                Set.of(),
                bars(sheet, evidence),
                sheet.driveFailure().isPresent(),
                isOpened(sheet),
                situation(sheet, called, places),
                cues);
    }

    /**
     * What is there by what the device is called, where nobody answered: a desk computer has no lid. What most devices do not have
     * is there once the words of the ticket name it.
     */
    private static Map<String, Boolean> equipment(Map<String, String> called, Localiser places, Cues cues) {
        Map<String, Boolean> there = new HashMap<>();
        for (Segment s : places.paths().segments()) {
            Presence p = s.present();
            if (p.finding().isEmpty()
                    && p.start() == Presence.Start.ABSENT
                    && cues.segments().contains(s.id())) {
                there.put(s.id(), true);
            } else if (called.containsKey(p.finding())) {
                there.put(s.id(), p.is().contains(called.get(p.finding())));
            }
        }
        return there;
    }

    /** By the questions of what is there that nobody answered: the answer that the name of the device gives. */
    private static Map<String, String> called(JobSheet sheet, Localiser places, Evidence evidence) {
        Said device = Said.of(sheet.opened().device());
        Set<String> answered = SheetEvidence.answers(evidence).keySet();
        Map<String, String> called = new HashMap<>();
        places.paths().segments().stream()
                .map(s -> s.present().finding())
                .filter(f -> !f.isEmpty() && !answered.contains(f))
                .distinct()
                .forEach(f -> called(f, device, places.category().hints()).ifPresent(value -> called.put(f, value)));
        return called;
    }

    /** Tests that make no sense with a device of that name, and what its name has answered. */
    private static Set<String> idle(Map<String, String> called, Localiser places) {
        Set<String> idle = new HashSet<>(called.keySet());
        places.category().findings().stream()
                .filter(f -> isMet(f.unless(), called))
                .map(Finding::id)
                .forEach(idle::add);
        places.paths().notes().entrySet().stream()
                .filter(note -> isMet(note.getValue().unless(), called))
                .map(Map.Entry::getKey)
                .forEach(idle::add);
        return idle;
    }

    private static boolean isMet(List<Condition> any, Map<String, String> answers) {
        return any.stream()
                .anyMatch(c -> Optional.ofNullable(answers.get(c.finding()))
                        .filter(c.values()::contains)
                        .isPresent());
    }

    /** The answer that the name of the device gives to a question. */
    private static Optional<String> called(String finding, Said device, Hints hints) {
        return hints.phrases().stream()
                .filter(row -> row.finding().equals(finding) && !row.value().equals(Phrases.ASK))
                .filter(row -> row.words().stream().anyMatch(words -> words.isIn(device)))
                .map(Phrases::value)
                .findFirst();
    }

    /** A setting or a version can be set back, and a thing that was put in taken out; a move or a cleaning can not. */
    private static boolean isUndoable(JobSheet sheet) {
        Set<String> changes = changes(sheet);
        boolean putIn = sheet.latest(ChangesAsked.class)
                .map(c -> Said.of(c.fact().note()).words())
                .filter(words -> PUT_IN.stream().anyMatch(words::contains))
                .isPresent();
        return (putIn && changes.contains(ChangeKind.HARDWARE.name()))
                || SET.stream().map(Enum::name).anyMatch(changes::contains);
    }

    private static Set<String> changes(JobSheet sheet) {
        return sheet.latest(ChangesAsked.class).map(c -> c.fact().answers()).orElse(Map.of()).entrySet().stream()
                .filter(a -> a.getValue() == ChangeAnswer.YES)
                .map(a -> a.getKey().name())
                .collect(Collectors.toSet());
    }

    /** An outlet is never opened; of an array nothing is pulled while nobody has said that it can spare it. */
    private static Set<Bar> bars(JobSheet sheet, Evidence evidence) {
        Set<Bar> bars = EnumSet.of(Bar.LIVE_MAINS);
        Map<String, Report> answers = SheetEvidence.answers(evidence);
        boolean whole = DEGRADED.stream()
                .allMatch(f -> answers.containsKey(f) && answers.get(f).value().equals(NO));
        if (!whole) {
            bars.add(Bar.ARRAY_WITHOUT_REDUNDANCY);
        }
        if (data(sheet).filter(OnTheBench::isSafe).isEmpty() && !isLossAccepted(sheet)) {
            bars.add(Bar.UNSAVED_DATA);
        }
        if (sheet.hazards().contains(Hazard.SWELLING)) {
            bars.add(Bar.SWOLLEN);
        }
        return bars;
    }

    private static Optional<DataState> data(JobSheet sheet) {
        return sheet.latest(DataAnswered.class).map(d -> d.fact().state());
    }

    private static boolean isSafe(DataState state) {
        return state.backedUp() || state == DataState.NO_USER_DATA;
    }

    private static boolean isLossAccepted(JobSheet sheet) {
        return sheet.latest(LossAccepted.class).isPresent();
    }

    private static boolean isOpened(JobSheet sheet) {
        return sheet.all(CheckPlanned.class).stream()
                .anyMatch(c -> c.fact().invasive() && sheet.result(c.entry()).isPresent());
    }

    /** What everybody was asked at intake is not asked again, even where nobody knew. */
    private static Set<String> asked(JobSheet sheet, Hints hints) {
        return sheet.inForce(ChangesAsked.class).isEmpty()
                ? Set.of()
                : hints.feeds().stream()
                        .filter(f -> f.sign().startsWith("changed/"))
                        .map(Feed::finding)
                        .collect(Collectors.toSet());
    }

    private static BenchSituation situation(JobSheet sheet, Map<String, String> called, Localiser places) {
        Set<String> withheld = new HashSet<>(asked(sheet, places.category().hints()));
        withheld.addAll(idle(called, places));
        Set<String> met = new TreeSet<>();
        if (data(sheet).filter(OnTheBench::isSafe).isPresent()) {
            met.add(Needs.BACKUP_DONE);
        }
        if (data(sheet).filter(s -> s == DataState.IMPOSSIBLE).isPresent()) {
            met.add(Needs.COPY_IMPOSSIBLE);
        }
        if (isLossAccepted(sheet)) {
            met.add(Needs.LOSS_ACCEPTED);
        }
        if (sheet.latestOfRound(PlanApproved.class).isPresent()) {
            met.add("change-approved");
        }
        if (isUndoable(sheet)) {
            met.add(CHANGE_NOTED);
        }
        if (!sheet.workStopped()) {
            met.add("hazard-cleared");
        }
        Set<String> hazards = sheet.workStopped() ? Set.of("stop-work") : Set.of();
        return new BenchSituation(met, confirmed(sheet), hazards, Map.of(), withheld);
    }

    private static Set<String> confirmed(JobSheet sheet) {
        boolean supported = sheet.latestOfRound(ResultRecorded.class)
                .filter(r -> r.fact().outcome() == CheckOutcome.SUPPORTS)
                .isPresent();
        return sheet.activeTheory()
                .filter(t -> supported)
                .map(StandingFact::fact)
                .flatMap(t -> Optional.ofNullable(t.causeId()))
                .map(Set::of)
                .orElse(Set.of());
    }
}
