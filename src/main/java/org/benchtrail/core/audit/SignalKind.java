package org.benchtrail.core.audit;

import java.util.Locale;
import java.util.Set;

/**
 * What in the papers of a ticket asks to be looked at. A question, never a verdict: it is shown once the marks are final, and with
 * how often reviewers found a defect of its kind where it stood.
 */
public enum SignalKind {
    SHORT_TEXT(
            "A short text",
            "A text that was asked for has fewer than 15 characters, or fewer than 3 different words. Does it say enough?",
            Texts.ALL),
    REPEATED_TEXT(
            "A text that stands elsewhere",
            "The same words stand on three tickets of the lot or more, or eight of them in a row in another ticket's summary."
                    + " Were they written for this job?",
            Texts.ALL),
    VALUE_TO_THE_DIGIT(
            "A value to the digit",
            "A reading after the repair is in all digits what one before it was. Was it measured again?",
            Set.of("readings-back")),
    EXPECTATION_JUST_BEFORE(
            "An expectation just before its result",
            "Less than 20 s lie between them, and the check usually takes more than two minutes. Which was first?",
            Set.of("expectation-first")),
    BATCH_ENTRY(
            "Much at once, and late",
            "Five facts of a step or more came within a minute, over an hour after the step before had ended. Was it recorded"
                    + " as it was done?",
            Set.of()),
    LEFT_AT_ONCE("A step left at once", "A step was entered and left within 30 s. Was it worked at?", Set.of()),
    NO_NEW_EVIDENCE(
            "Nothing new after the repair",
            "No reading, no picture and no check came after the last action. What shows that it held?",
            Set.of("symptoms-gone", "readings-back", "function-checked")),
    END_OF_PERIOD(
            "Closed at the end of the period",
            "It was closed in the last working hour, when more were closed than three times the usual. Was it ready?",
            Set.of());

    private final String title;
    private final String question;
    private final Set<String> requirements;

    SignalKind(String title, String question, Set<String> requirements) {
        this.title = title;
        this.question = question;
        this.requirements = requirements;
    }

    public String title() {
        return title;
    }

    /** What was seen, by which rule, and what it leaves open. */
    public String question() {
        return question;
    }

    /** As it is stored and posted. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Whether a defect at that requirement is of its kind. */
    public boolean isAbout(String requirement) {
        return requirements.isEmpty() || requirements.contains(requirement);
    }

    Set<String> requirements() {
        return requirements;
    }

    /** Of what a text is asked for. */
    private static final class Texts {
        static final Set<String> ALL = Set.of(
                "symptom-observed",
                "reproduced",
                "expectation-first",
                "result-recorded",
                "action-planned",
                "parts-fit",
                "symptoms-gone",
                "summary-written");
    }
}
