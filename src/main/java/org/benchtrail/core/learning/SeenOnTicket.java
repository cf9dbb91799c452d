package org.benchtrail.core.learning;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.advice.Heard;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.advice.SheetReader;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.identify.FindingAnswered;

/**
 * The findings of a category as the facts of a ticket tell them, heard as the ranking hears them. Of several reports on one
 * finding the last counts, once before the cause was settled and once after. What a category does not know, an answer that is
 * unknown, and a reading too close to its limit count for nothing.
 *
 * <p>Only what everybody is asked updates how often something is so anyhow: neither an answer that words suggested nor one that
 * is presumed.
 */
final class SeenOnTicket {
    private final int settled;
    private final List<Integer> suggested;
    private final Map<String, TicketCase.Seen> last = new LinkedHashMap<>();

    private SeenOnTicket(JobSheet sheet, int settled) {
        this.settled = settled;
        suggested = sheet.all(FindingAnswered.class).stream()
                .filter(a -> a.fact().from() != null)
                .map(StandingFact::entry)
                .toList();
    }

    /** @param settled entry that settled the cause; itself still counts as before */
    static List<TicketCase.Seen> of(JobSheet sheet, CauseCategory category, int settled, SheetReader reader) {
        SeenOnTicket seen = new SeenOnTicket(sheet, settled);
        SheetEvidence.heard(sheet, category, reader).forEach(seen::take);
        return List.copyOf(seen.last.values());
    }

    private void take(Heard heard) {
        boolean judgedNear = heard.report().reliability() < heard.source().reliability();
        if (heard.finding().values().contains(heard.report().value()) && !(isReading(heard) && judgedNear)) {
            int entry = heard.by().entry();
            boolean before = entry <= settled;
            last.put(
                    heard.finding().id() + (before ? " before" : " after"),
                    new TicketCase.Seen(
                            entry,
                            heard.finding().id(),
                            heard.report().value(),
                            heard.source().reliability(),
                            isIntake(heard),
                            before));
        }
    }

    private static boolean isReading(Heard heard) {
        return heard.finding().limits() != null;
    }

    private boolean isIntake(Heard heard) {
        return switch (heard.kind()) {
            case EXPLICIT ->
                heard.by().during() == Step.IDENTIFY
                        && !suggested.contains(heard.by().entry());
            case INTAKE -> heard.source() != Source.PRESUMED;
            case MEASURED, UNNAMED -> false;
        };
    }
}
