package org.benchtrail.ticket.forecast;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.learning.ForecastScores;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Sight;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.ForecastKind;
import org.benchtrail.core.method.desk.Foreseeable;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.Viewing;

/**
 * What may be forecast besides the causes: one chance of one thing, offered and never demanded.
 *
 * @param ahead checks and actions that are not made, findings that nobody answered with each of their values
 */
public record ChancesView(String number, int version, List<Option> ahead) {
    private static final List<Option> CHANCES = IntStream.rangeClosed(1, 99)
            .filter(ForecastScores::isOffered)
            .mapToObj(percent -> new Option(String.valueOf(percent), percent + " %"))
            .toList();

    /** Empty where nothing is offered to the viewer. */
    public static Optional<ChancesView> of(Viewing viewing, Optional<CauseCategory> category) {
        JobSheet sheet = viewing.sheet();
        Foreseeable foreseeable = Foreseeable.of(sheet, viewing.viewer());
        // labels of findings name what may be wrong: they are offered once the causes may be seen
        if (!foreseeable.isOffered() || Sight.of(sheet, viewing.viewer()) instanceof Sight.Veiled) {
            return Optional.empty();
        }
        List<Option> ahead = new ArrayList<>();
        foreseeable
                .checks()
                .forEach(c -> ahead.add(new Option(
                        ForecastKind.CHECK + " " + c.entry(),
                        "Check " + c.entry() + " comes as expected: " + c.fact().what())));
        foreseeable
                .actions()
                .forEach(a -> ahead.add(new Option(
                        ForecastKind.ACTION + " " + a.entry(),
                        "The trouble is gone after action " + a.entry() + ": "
                                + a.fact().what())));
        category.stream()
                .flatMap(c -> c.findings().stream())
                .filter(f -> foreseeable.isOpen(f.id()))
                .sorted(Comparator.comparing(f -> f.label()))
                .forEach(f -> f.values()
                        .forEach(value -> ahead.add(new Option(
                                ForecastKind.FINDING + " " + f.id() + " " + value, f.label() + ": " + value))));
        String number = TicketNumber.parse(sheet.opened().ticket()).toString();
        return ahead.isEmpty() ? Optional.empty() : Optional.of(new ChancesView(number, sheet.entries(), ahead));
    }

    public List<Option> chances() {
        return CHANCES;
    }
}
