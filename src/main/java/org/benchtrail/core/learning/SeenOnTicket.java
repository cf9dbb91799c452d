package org.benchtrail.core.learning;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.CatalogueAnswer;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;

/**
 * The findings of a category as the facts of a ticket tell them: answers, readings held against the catalogue's limits, and
 * results of checks. Of several reports on one finding the last counts, once before the cause was settled and once after. What a
 * category does not know, an answer that is unknown, and a reading too close to its limit count for nothing.
 */
final class SeenOnTicket {
    private final Map<String, Finding> known = new LinkedHashMap<>();
    private final int settled;
    private final Map<String, TicketCase.Seen> last = new LinkedHashMap<>();

    private SeenOnTicket(CauseCategory category, int settled) {
        category.findings().forEach(f -> known.put(f.id(), f));
        this.settled = settled;
    }

    /** @param settled entry that settled the cause; itself still counts as before */
    static List<TicketCase.Seen> of(JobSheet sheet, CauseCategory category, int settled) {
        SeenOnTicket seen = new SeenOnTicket(category, settled);
        sheet.facts().forEach(noted -> seen.take(sheet, noted));
        return List.copyOf(seen.last.values());
    }

    private void take(JobSheet sheet, StandingFact<?> standing) {
        standing.fact().says(sheet).ifPresent(said -> {
            Finding finding = known.get(said.finding());
            if (finding != null) {
                value(finding, said).ifPresent(value -> keep(standing, finding, value, said.source()));
            }
        });
    }

    private void keep(StandingFact<?> standing, Finding finding, String value, Source source) {
        if (finding.values().contains(value)) {
            boolean before = standing.entry() <= settled;
            boolean intake = standing.during() == Step.IDENTIFY;
            last.put(
                    finding.id() + (before ? " before" : " after"),
                    new TicketCase.Seen(standing.entry(), finding.id(), value, source.reliability(), intake, before));
        }
    }

    /** One of the finding's values; empty if a reading tells none, or lies too close to its limit. */
    private static Optional<String> value(Finding finding, CatalogueAnswer said) {
        return said.reading() == null
                ? Optional.of(said.value())
                : SheetEvidence.judge(finding, said.reading())
                        .filter(judged -> judged.reliability() >= said.source().reliability())
                        .map(Finding.JudgedReading::value);
    }
}
