package org.benchtrail.core.audit;

import java.time.Duration;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;

/**
 * What in the papers of a ticket asks to be looked at. A question, never a verdict: it is shown once the marks are final, and with
 * how often reviewers found a defect of its kind where it stood.
 */
public enum SignalKind {
    SHORT_TEXT(
            "A short text",
            n -> "A text that was asked for has fewer than " + n.shortText() + " characters, or fewer than "
                    + n.fewestWords() + " different words. Does it say enough?",
            Texts.ALL),
    REPEATED_TEXT(
            "A text that stands elsewhere",
            n -> "The same words stand on " + n.ticketsAlike() + " tickets of the lot or more, or " + n.wordsInARow()
                    + " of them in a row in another ticket's summary. Were they written for this job?",
            Texts.ALL),
    VALUE_TO_THE_DIGIT(
            "A value to the digit",
            n -> "A reading after the repair is in all digits what one before it was. Was it measured again?",
            Set.of("readings-back")),
    EXPECTATION_JUST_BEFORE(
            "An expectation just before its result",
            n -> "Less than " + words(n.justBefore()) + " lie between them, and the check usually takes more than "
                    + words(n.usualTime()) + ". Which was first?",
            Set.of("expectation-first")),
    BATCH_ENTRY(
            "Much at once, and late",
            n -> n.batch() + " facts of a step or more came within " + words(n.batchWithin()) + ", more than "
                    + words(n.batchLate()) + " after the step before had ended. Was it recorded as it was done?",
            Set.of()),
    LEFT_AT_ONCE(
            "A step left at once",
            n -> "A step was entered and left within " + words(n.leftWithin()) + ". Was it worked at?",
            Set.of()),
    NO_NEW_EVIDENCE(
            "Nothing new after the repair",
            n -> "No reading, no picture and no check came after the last action. What shows that it held?",
            Set.of("symptoms-gone", "readings-back", "function-checked")),
    END_OF_PERIOD(
            "Closed at the end of the period",
            n -> "It was closed in the last working hour, when more were closed than " + n.timesTheUsual()
                    + " times the usual. Was it ready?",
            Set.of());

    private final String title;
    private final Function<SignalNumbers, String> question;
    private final Set<String> requirements;

    SignalKind(String title, Function<SignalNumbers, String> question, Set<String> requirements) {
        this.title = title;
        this.question = question;
        this.requirements = requirements;
    }

    public String title() {
        return title;
    }

    /**
     * What was seen, by which rule, and what it leaves open.
     *
     * @param numbers by which it was made
     */
    public String question(SignalNumbers numbers) {
        return question.apply(numbers);
    }

    private static String words(Duration time) {
        return time.toMinutes() > 0 && time.toSecondsPart() == 0
                ? time.toMinutes() == 60 ? "an hour" : time.toMinutes() + " min"
                : time.toSeconds() + " s";
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
