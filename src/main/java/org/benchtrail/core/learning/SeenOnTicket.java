package org.benchtrail.core.learning;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Category;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.measure.Quantity;
import org.benchtrail.core.measure.Units;
import org.benchtrail.core.method.IdentifyFact.FindingAnswered;
import org.benchtrail.core.method.IdentifyFact.ReadingRecorded;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Noted;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.TestFact.CheckPlanned;
import org.benchtrail.core.method.TestFact.ResultRecorded;
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

    /** Ids of every finding that the ticket answers, of whatever category. */
    static List<String> findings(JobSheet sheet) {
        List<String> ids = new ArrayList<>();
        sheet.all(FindingAnswered.class).forEach(n -> ids.add(n.fact().finding()));
        sheet.all(ReadingRecorded.class).forEach(n -> add(ids, n.fact().finding()));
        sheet.all(CheckPlanned.class).forEach(n -> add(ids, n.fact().finding()));
        return ids;
    }

    private static void add(List<String> ids, @Nullable String id) {
        if (id != null) {
            ids.add(id);
        }
    }

    private void take(JobSheet sheet, Noted<?> noted) {
        if (noted.fact() instanceof FindingAnswered answered) {
            keep(noted, answered.finding(), answered.value(), answered.source());
        } else if (noted.fact() instanceof ReadingRecorded reading && reading.finding() != null) {
            value(reading, known.get(reading.finding()))
                    .ifPresent(value -> keep(noted, reading.finding(), value, Source.CALIBRATED));
        } else if (noted.fact() instanceof ResultRecorded result && result.answer() != null) {
            sheet.latest(CheckPlanned.class, c -> c.entry() == result.check())
                    .map(c -> c.fact().finding())
                    .ifPresent(finding -> keep(noted, finding, result.answer(), Source.SEEN));
        }
    }

    private void keep(Noted<?> noted, String finding, String value, Source source) {
        Finding f = known.get(finding);
        if (f != null && f.values().contains(value)) {
            boolean before = noted.entry() <= settled;
            boolean intake = noted.during() == Step.IDENTIFY;
            last.put(
                    finding + (before ? " before" : " after"),
                    new TicketCase.Seen(noted.entry(), finding, value, source.reliability(), intake, before));
        }
    }

    /** On which side of the catalogue's limits the reading lies; empty if that cannot be told. */
    private static Optional<String> value(ReadingRecorded reading, @Nullable Finding f) {
        if (f == null || f.limits() == null) {
            return Optional.empty();
        }
        try {
            String unit = f.limits().unit();
            double x = in(reading, reading.value(), unit);
            double one = reading.standardUncertainty().orElse(0);
            double expanded = one == 0 ? 0 : 2 * difference(reading, one, unit);
            Finding.Judged judged = f.judge(x, expanded, Source.CALIBRATED.reliability());
            return judged.reliability() < Source.CALIBRATED.reliability()
                    ? Optional.empty()
                    : Optional.of(judged.value());
        } catch (Invalid notComparable) {
            return Optional.empty();
        }
    }

    private static double in(ReadingRecorded reading, String value, String unit) {
        return reading.unit().equals(unit)
                ? Double.parseDouble(value)
                : quantity(reading, value, unit).in(Units.read("unit", unit));
    }

    private static double difference(ReadingRecorded reading, double value, String unit) {
        return reading.unit().equals(unit)
                ? value
                : quantity(reading, Double.toString(value), unit).asDifferenceIn(Units.read("unit", unit));
    }

    /** @throws Invalid if the units do not measure the same */
    private static Quantity quantity(ReadingRecorded reading, String value, String unit) {
        Quantity q = Quantity.of(value, Units.read("unit", reading.unit()));
        if (q.unit().dimension() != Units.read("unit", unit).dimension()) {
            throw new Invalid("unit", "Give a unit that measures the same as " + unit + ".");
        }
        return q;
    }
}
