package org.benchtrail.ticket.desk;

import java.util.List;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Lessening;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.ticket.FactText;
import org.benchtrail.ticket.Viewing;

/**
 * A change that takes away something that was owed, and waits for a supervisor.
 *
 * @param entry that is owed on
 * @param owed as it was first recorded
 * @param now how it stands since
 * @param reason as it was given; empty if none was asked for
 * @param change entry number of the change, to which a supervisor agrees
 * @param stamp who made it, and when
 */
public record LesseningView(int entry, String kind, String owed, String now, String reason, int change, String stamp) {

    public static List<LesseningView> all(Viewing viewing) {
        return viewing.sheet().lessenings().stream().map(l -> of(l, viewing)).toList();
    }

    private static LesseningView of(Lessening lessening, Viewing viewing) {
        StandingFact<?> owed = lessening.owed();
        int change = lessening.by().entry();
        Fact made = fact(viewing.sheet(), change);
        Corrected corrected = made instanceof Corrected c ? c : null;
        Fact now = corrected == null ? made : corrected.replacement();
        return new LesseningView(
                owed.entry(),
                FactText.kind(owed.fact()),
                viewing.line(owed).text(),
                now == null ? "withdrawn" : now.told(viewing),
                corrected == null ? "" : corrected.reason(),
                change,
                viewing.stamp(lessening.by()));
    }

    private static Fact fact(JobSheet sheet, int entry) {
        return sheet.at(entry, Fact.class, "change").fact();
    }
}
