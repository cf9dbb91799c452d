package org.benchtrail.core.method.identify;

import java.util.function.Function;
import java.util.stream.Collectors;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.ReviewQuestion;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;

/** What identify asks for. Each gap is a sentence that says what to do, or nothing. */
public enum IdentifyRequirement implements Requirement {
    SYMPTOM_OBSERVED(
            false,
            "Symptom",
            "A symptom, in the requester's words and as something observable",
            IdentifyRequirement::symptom,
            ReviewQuestion.major(
                    "Could somebody who was not there see from these words whether the trouble is gone?",
                    SymptomRecorded.class)),
    ONSET_KNOWN(
            false,
            "Start",
            "When it began or last worked",
            s -> s.unlessRecorded(OnsetRecorded.class, "Say when it began or last worked, or that nobody knows."),
            ReviewQuestion.minor("Is the time named that matters, or rightly not known?", OnsetRecorded.class)),
    CHANGES_ASKED(
            true,
            "Changes",
            "What changed before it began",
            s -> s.unlessRecorded(
                    ChangesAsked.class,
                    "Ask what changed: hardware, software, settings, place, infrastructure; yes, no or unknown for each."),
            ReviewQuestion.minor("Was each kind of change really asked about?", ChangesAsked.class)),
    SCOPE_KNOWN(
            false,
            "Affected",
            "Who is affected: one, several or a site",
            s -> s.unlessRecorded(ScopeRecorded.class, "Say who is affected: one, several or a site."),
            ReviewQuestion.minor("Does the answer fit what else is known of the site?", ScopeRecorded.class)),
    REPRODUCED(
            true,
            "Reproduction",
            "Whether it can be reproduced, and how",
            s -> s.unlessRecorded(
                    ReproductionTried.class, "Try to reproduce it and say how, or say that it is unsafe to try."),
            ReviewQuestion.minor("Could another person bring it about in that way?", ReproductionTried.class)),
    HAZARDS_SCREENED(
            false,
            "Hazards",
            "Hazards looked for; any found is cleared",
            IdentifyRequirement::hazards,
            ReviewQuestion.critical(
                    "Do the answers fit the pictures and words of the ticket, and was a hazard cleared before work went on?",
                    HazardsScreened.class,
                    StopWorkCleared.class)) {
        @Override
        public boolean bitesLater(JobSheet sheet) {
            return true;
        }
    },
    DATA_PROTECTED(
            true,
            "Data",
            "Data at risk: how they are protected",
            IdentifyRequirement::data,
            ReviewQuestion.critical(
                    "Were the data safe before anything was done that could lose them?",
                    DataAnswered.class,
                    LossAccepted.class)) {
        /** From a drive-failure finding on, no step is left without the data backed up. */
        @Override
        public boolean bitesLater(JobSheet sheet) {
            return sheet.driveFailure().isPresent();
        }

        @Override
        public int waivableSince(JobSheet sheet) {
            int failure = sheet.driveFailure().map(StandingFact::settledSince).orElse(0);
            int answer =
                    sheet.latest(DataAnswered.class).map(StandingFact::entry).orElse(0);
            return Math.max(failure, answer);
        }
    },
    EVIDENCE_ATTACHED(
            true,
            "Evidence",
            "A reading, a log extract or a picture",
            IdentifyRequirement::evidence,
            ReviewQuestion.major("Does the evidence show this trouble on this device?", EvidenceFact.class)),
    LOGS_REVIEWED(
            true,
            "Logs",
            "System and application logs looked at",
            s -> s.unlessRecorded(LogsReviewed.class, "Look at the system and application logs, or say why not."),
            ReviewQuestion.minor("Were the logs read that could speak of it?", LogsReviewed.class)),
    LIKENESS_CHECKED(
            false,
            "Seen before",
            "Similar tickets and known causes looked at",
            s -> s.unlessRecorded(
                    LikenessChecked.class, "Look at the similar tickets and known causes that are shown."),
            ReviewQuestion.minor("Was what had been seen before taken into account?", LikenessChecked.class));

    private final Row row;

    IdentifyRequirement(
            boolean waivable, String word, String title, Function<Situation, String> gap, ReviewQuestion review) {
        row = new Row(waivable, word, title, gap, review);
    }

    @Override
    public Step step() {
        return Step.IDENTIFY;
    }

    @Override
    public Row row() {
        return row;
    }

    private static String symptom(Situation s) {
        return s.unlessSinceOpened(
                SymptomRecorded.class, "Record at least one symptom: the requester's words, and what can be observed.");
    }

    private static String hazards(Situation s) {
        String unscreened = s.unlessSinceOpened(
                HazardsScreened.class,
                "Look for every hazard of the list, from a burnt smell to work at height, and answer each by itself.");
        return s.sheet().workStopped() ? stopped(s.sheet()) : unscreened;
    }

    private static String stopped(JobSheet sheet) {
        String found = sheet.hazards().stream().map(Hazard::words).collect(Collectors.joining(", "));
        return "Work is stopped: " + found
                + ". Do what the sheet says for it, and have it cleared, before anything else.";
    }

    private static String data(Situation s) {
        String unanswered = s.unlessSinceOpened(
                DataAnswered.class,
                "Say how the data are protected: backup verified, taken now, impossible (why), or no user data.");
        DataState state = s.sheet()
                .latest(DataAnswered.class)
                .map(answer -> answer.fact().state())
                .orElse(DataState.NOT_YET);
        if (!unanswered.isEmpty()) {
            return unanswered;
        }
        if (state == DataState.NOT_YET) {
            return "The data are not protected yet: take or verify the backup, or say why none is possible.";
        }
        return s.sheet().driveFailure().isPresent() && !state.backedUp()
                ? "A drive is failing: back up all data now, or verify the backup, before anything else."
                : "";
    }

    private static String evidence(Situation s) {
        int opened = s.sheet().course().openedAt();
        boolean any = s.sheet().all(IdentifyFact.class).stream()
                .anyMatch(e -> e.fact().countsAsEvidence() && e.isAfter(opened));
        return any ? "" : "Add a reading, a log extract or a picture, or say why there can be none.";
    }
}
