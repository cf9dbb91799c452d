package org.benchtrail.core.method;

import java.util.List;

/**
 * One thing that stands in the way of an act.
 *
 * @param code stable code, of a requirement or of a rule of the desk
 * @param sentence what is missing and what to do, for people
 * @param anchor the place on the job sheet where it is met, without the {@code #}
 * @param waivable whether a supervisor may waive it
 */
public record Missing(String code, String sentence, String anchor, boolean waivable) {

    /** A rule that nobody waives, as the one thing in the way. */
    public static List<Missing> rule(String code, String sentence, String anchor) {
        return List.of(new Missing(code, sentence, anchor, false));
    }

    /** What later entries rest on stays as it is. */
    public static List<Missing> reliedOn() {
        return rule(
                "relied-on",
                "Later entries rest on this one as it is: it can no longer be changed, only added to.",
                "trail");
    }
}
