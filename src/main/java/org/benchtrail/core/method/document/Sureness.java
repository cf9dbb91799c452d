package org.benchtrail.core.method.document;

import java.util.Optional;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;

/** How the cause is known. */
public enum Sureness {
    MEASURED("confirmed by measurement"),
    BY_REPAIR("confirmed by the repair"),
    PRESUMED("presumed");

    private final String words;

    Sureness(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /**
     * How the record shows the cause that was tested, once every symptom was looked for again and is gone: by a value measured in a
     * check that supports it, else by what was carried out; empty if by neither.
     */
    public static Optional<Sureness> shownBy(JobSheet sheet) {
        return sheet.activeTheory()
                .filter(theory -> sheet.all(CheckPlanned.class, c -> c.fact().theory() == theory.entry()).stream()
                        .flatMap(check -> sheet.result(check.entry()).stream())
                        .map(StandingFact::fact)
                        .anyMatch(r -> r.outcome() == CheckOutcome.SUPPORTS && r.reading() != null))
                .map(measured -> MEASURED)
                .or(() -> sheet.ofRound(ActionSettled.class).stream()
                        .filter(a -> a.fact().settlement() == Settlement.CARRIED_OUT)
                        .findAny()
                        .map(done -> BY_REPAIR));
    }
}
