package org.benchtrail.core.method;

import java.util.stream.Collectors;

/** What identify lacks. Each answers with a sentence that says what to do, or nothing. */
final class IdentifyGaps {
    private IdentifyGaps() {}

    static String symptom(Situation s) {
        return s.sheet().all(IdentifyFact.SymptomRecorded.class).isEmpty()
                ? "Record at least one symptom: the requester's words, and what can be observed."
                : "";
    }

    static String onset(Situation s) {
        return unless(s, IdentifyFact.OnsetRecorded.class, "Say when it began or last worked, or that nobody knows.");
    }

    static String changes(Situation s) {
        return unless(
                s,
                IdentifyFact.ChangesAsked.class,
                "Ask what changed: hardware, software, settings, place, infrastructure; yes, no or unknown for each.");
    }

    static String scope(Situation s) {
        return unless(s, IdentifyFact.ScopeRecorded.class, "Say whom it touches: one, several or a site.");
    }

    static String reproduction(Situation s) {
        return unless(
                s,
                IdentifyFact.ReproductionTried.class,
                "Try to reproduce it and say how, or say that it is unsafe to try.");
    }

    static String hazards(Situation s) {
        String unscreened = unless(
                s,
                IdentifyFact.HazardsScreened.class,
                "Look for smell, smoke, heat, swelling, liquid, a damaged mains lead, exposed wiring, and answer each.");
        return s.sheet().stopWork().map(stop -> stopped(stop.fact())).orElse(unscreened);
    }

    private static String stopped(IdentifyFact.HazardsScreened screened) {
        String found = screened.present().entrySet().stream()
                .filter(e -> e.getValue())
                .map(e -> e.getKey().words())
                .collect(Collectors.joining(", "));
        return "Work is stopped: " + found + ". Clear the hazard and acknowledge the caution before anything else.";
    }

    static String data(Situation s) {
        var answer = s.sheet().latest(IdentifyFact.DataAnswered.class);
        if (answer.isEmpty()) {
            return "Say how the data are protected: backup verified, taken now, impossible (why), or no user data.";
        }
        boolean failing = s.sheet().driveFailure().isPresent();
        return failing && !answer.get().fact().state().backedUp()
                ? "A drive is failing: back up all data now, or verify the backup, before anything else."
                : "";
    }

    static String evidence(Situation s) {
        boolean any = !s.sheet().all(IdentifyFact.ReadingRecorded.class).isEmpty()
                || !s.sheet().all(IdentifyFact.ExtractRecorded.class).isEmpty()
                || !s.sheet().all(IdentifyFact.AttachmentAdded.class).isEmpty()
                || !s.sheet().all(IdentifyFact.BenchResultAttached.class).isEmpty()
                || !s.sheet().all(IdentifyFact.EvidenceImpossible.class).isEmpty();
        return any ? "" : "Add a reading, a log extract or a picture, or say why there can be none.";
    }

    static String logs(Situation s) {
        return unless(s, IdentifyFact.LogsReviewed.class, "Look at the system and application logs, or say why not.");
    }

    static String likeness(Situation s) {
        return unless(
                s, IdentifyFact.LikenessChecked.class, "Look at the similar tickets and known causes that are shown.");
    }

    private static String unless(Situation s, Class<? extends Fact> kind, String sentence) {
        return s.sheet().latest(kind).isPresent() ? "" : sentence;
    }
}
