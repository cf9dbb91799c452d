package org.benchtrail.core.method;

import java.util.stream.Collectors;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.EvidenceImpossible;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.LikenessChecked;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;

/** What identify lacks. Each answers with a sentence that says what to do, or nothing. */
final class IdentifyGaps {
    private IdentifyGaps() {}

    static String symptom(Situation s) {
        return s.sheet().all(SymptomRecorded.class).isEmpty()
                ? "Record at least one symptom: the requester's words, and what can be observed."
                : "";
    }

    static String onset(Situation s) {
        return unless(s, OnsetRecorded.class, "Say when it began or last worked, or that nobody knows.");
    }

    static String changes(Situation s) {
        return unless(
                s,
                ChangesAsked.class,
                "Ask what changed: hardware, software, settings, place, infrastructure; yes, no or unknown for each.");
    }

    static String scope(Situation s) {
        return unless(s, ScopeRecorded.class, "Say whom it touches: one, several or a site.");
    }

    static String reproduction(Situation s) {
        return unless(s, ReproductionTried.class, "Try to reproduce it and say how, or say that it is unsafe to try.");
    }

    static String hazards(Situation s) {
        String unscreened = unless(
                s,
                HazardsScreened.class,
                "Look for smell, smoke, heat, swelling, liquid, a damaged mains lead, exposed wiring, and answer each.");
        return s.sheet().stopWork().map(stop -> stopped(stop.fact())).orElse(unscreened);
    }

    private static String stopped(HazardsScreened screened) {
        String found = screened.present().entrySet().stream()
                .filter(e -> e.getValue())
                .map(e -> e.getKey().words())
                .collect(Collectors.joining(", "));
        return "Work is stopped: " + found + ". Clear the hazard and acknowledge the caution before anything else.";
    }

    static String data(Situation s) {
        var answer = s.sheet().latest(DataAnswered.class);
        if (answer.isEmpty()) {
            return "Say how the data are protected: backup verified, taken now, impossible (why), or no user data.";
        }
        boolean failing = s.sheet().driveFailure().isPresent();
        return failing && !answer.get().fact().state().backedUp()
                ? "A drive is failing: back up all data now, or verify the backup, before anything else."
                : "";
    }

    static String evidence(Situation s) {
        boolean any = !s.sheet().all(ReadingRecorded.class).isEmpty()
                || !s.sheet().all(ExtractRecorded.class).isEmpty()
                || !s.sheet().all(AttachmentAdded.class).isEmpty()
                || !s.sheet().all(BenchResultAttached.class).isEmpty()
                || !s.sheet().all(EvidenceImpossible.class).isEmpty();
        return any ? "" : "Add a reading, a log extract or a picture, or say why there can be none.";
    }

    static String logs(Situation s) {
        return unless(s, LogsReviewed.class, "Look at the system and application logs, or say why not.");
    }

    static String likeness(Situation s) {
        return unless(s, LikenessChecked.class, "Look at the similar tickets and known causes that are shown.");
    }

    private static String unless(Situation s, Class<? extends Fact> kind, String sentence) {
        return s.sheet().latest(kind).isPresent() ? "" : sentence;
    }
}
