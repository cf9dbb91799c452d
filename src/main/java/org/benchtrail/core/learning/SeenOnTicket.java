package org.benchtrail.core.learning;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.diagnosis.Category;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.jspecify.annotations.Nullable;

/**
 * The findings of a category as a ticket recorded them: answers, readings held against the catalogue's limits, and results of
 * checks. Of several reports on one finding the last counts, once before the cause was settled and once after. What a
 * category does not know, an answer that is unknown, and a reading too close to its limit count for nothing.
 */
final class SeenOnTicket {
    private final Map<String, Finding> known = new LinkedHashMap<>();
    private final int settled;
    private final Map<String, TicketCase.Seen> last = new LinkedHashMap<>();

    private SeenOnTicket(Category category, int settled) {
        category.findings().forEach(f -> known.put(f.id(), f));
        this.settled = settled;
    }

    /** @param settled entry that settled the cause; itself still counts as before */
    static List<TicketCase.Seen> of(JobSheet sheet, Category category, int settled) {
        SeenOnTicket seen = new SeenOnTicket(category, settled);
        sheet.facts().forEach(noted -> seen.take(sheet, noted));
        return List.copyOf(seen.last.values());
    }

    private void take(JobSheet sheet, StandingFact<?> noted) {
        if (noted.fact() instanceof FindingAnswered answered) {
            keep(noted, answered.finding(), answered.value(), answered.source().reliability());
        } else if (noted.fact() instanceof ReadingRecorded reading && reading.finding() != null) {
            String finding = reading.finding();
            value(reading, known.get(finding))
                    .ifPresent(value -> keep(noted, finding, value, SheetEvidence.reliability(reading)));
        } else if (noted.fact() instanceof ResultRecorded result && result.answer() != null) {
            String given = result.answer();
            sheet.latest(CheckPlanned.class, c -> c.entry() == result.check())
                    .map(c -> c.fact().finding())
                    .ifPresent(finding -> keep(noted, finding, given, Source.SEEN.reliability()));
        }
    }

    private void keep(StandingFact<?> noted, String finding, String value, double reliability) {
        Finding f = known.get(finding);
        if (f != null && f.values().contains(value)) {
            boolean before = noted.entry() <= settled;
            boolean intake = noted.during() == Step.IDENTIFY;
            last.put(
                    finding + (before ? " before" : " after"),
                    new TicketCase.Seen(noted.entry(), finding, value, reliability, intake, before));
        }
    }

    /** What the reading says; empty if that cannot be told, or it lies too close to its limit. */
    private static Optional<String> value(ReadingRecorded reading, @Nullable Finding f) {
        return f == null
                ? Optional.empty()
                : SheetEvidence.judge(f, reading)
                        .filter(judged -> judged.reliability() >= SheetEvidence.reliability(reading))
                        .map(Finding.Judged::value);
    }
}
