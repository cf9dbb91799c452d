package org.benchtrail.core.method;

import java.util.Locale;
import java.util.function.Function;
import org.benchtrail.core.method.desk.Waived;

/**
 * What must be true before a step is left. Each step declares its own in an enum beside its facts; {@link Requirements} is
 * the table of all. The same table drives the refusal, the list on the page, the coach's explanations and the reviewer's
 * checklist. Codes are stable: they appear in the API, the trail and reports.
 */
public interface Requirement {

    /** Name of the constant. */
    String name();

    /** The stable code, also its anchor on the job sheet. */
    default String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Whether a waiver or a refusal that names this code means it. */
    default boolean isNamed(String code) {
        return code().equals(code);
    }

    /** The step that cannot be left without it. */
    Step step();

    /** Its row of the table. */
    Row row();

    /**
     * @param waivable whether a supervisor may let it go unmet
     * @param word one or two words for it, as the head of its question
     * @param gap what is lacking, as a sentence with what to do; empty if the requirement is met
     * @param review what a reviewer asks of it
     */
    record Row(boolean waivable, String word, String title, Function<Situation, String> gap, ReviewQuestion review) {}

    default boolean waivable() {
        return row().waivable();
    }

    /** One or two words for it. */
    default String word() {
        return row().word();
    }

    default String title() {
        return row().title();
    }

    default ReviewQuestion review() {
        return row().review();
    }

    /** Why nothing is asked here, as a sentence; empty if something is. Where it is not empty, nothing is lacking. */
    default String unasked(Situation situation) {
        return "";
    }

    /** Whether it stands in the way of every later step too. */
    default boolean bitesLater(JobSheet sheet) {
        return false;
    }

    /** Entry after which a waiver has to have been given, so that it was given in knowledge of what matters; 0 for any. */
    default int waivableSince(JobSheet sheet) {
        return 0;
    }

    /** How a requirement stands. */
    enum State {
        MET,
        WAIVED,
        MISSING
    }

    /** A requirement held against a sheet; the sentence is empty unless it is missing. */
    record Status(Requirement requirement, State state, String sentence) {
        public Missing missing() {
            return new Missing(requirement.code(), sentence, requirement.code(), requirement.waivable());
        }
    }

    default Status status(Situation situation) {
        String lacking = row().gap().apply(situation);
        if (lacking.isEmpty()) {
            return new Status(this, State.MET, "");
        }
        return waivedOn(situation.sheet())
                ? new Status(this, State.WAIVED, "")
                : new Status(this, State.MISSING, lacking);
    }

    /** Whether a waiver is in force. One for identify lasts until the ticket is reopened, any other for its round. */
    private boolean waivedOn(JobSheet sheet) {
        return waivable()
                && sheet.latest(Waived.class, w -> isNamed(w.fact().requirement()))
                        .filter(w -> w.isAfter(waivableSince(sheet)))
                        .filter(w -> step() == Step.IDENTIFY
                                ? w.isAfter(sheet.course().openedAt())
                                : w.round() == sheet.round())
                        .isPresent();
    }
}
