package org.benchtrail.ticket.bench;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.bench.BenchRun;
import org.benchtrail.bench.TicketValues;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.advice.BenchStart;
import org.benchtrail.core.advice.DeviceValues;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.platform.Forbidden;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.RecordBroken;
import org.benchtrail.ticket.TicketListQueries;
import org.benchtrail.ticket.TicketQueries;

/**
 * What is known for a ticket: what was given for its device on an earlier ticket, over it an earlier result of the same
 * calculation, and over that its device's label and its readings.
 */
@ApplicationScoped
public class KnownValues implements TicketValues {
    private final TicketQueries tickets;
    private final TicketListQueries lists;

    KnownValues(TicketQueries tickets, TicketListQueries lists) {
        this.tickets = tickets;
        this.lists = lists;
    }

    @Override
    public Known known(String ticket, Calculation<?> calculation, Actor viewer) {
        try {
            TicketNumber number = TicketNumber.parse(ticket.replaceAll("/.*", ""));
            JobSheet sheet = tickets.sound(number, viewer);
            Known own = of(sheet, calculation);
            return lists.ofDevice(sheet.opened(), number.serial(), viewer).stream()
                    .map(TicketNumber::new)
                    .map(earlier -> ofDevice(earlier, calculation, viewer))
                    .filter(before -> !before.values().isEmpty())
                    .findFirst()
                    .map(before -> over(before, own))
                    .orElse(own);
        } catch (Invalid | NotFound | Forbidden nothingToSee) {
            return Known.NOTHING;
        }
    }

    /** What an earlier ticket was told of the device itself; nothing if its record is broken. */
    private Known ofDevice(TicketNumber earlier, Calculation<?> calculation, Actor viewer) {
        try {
            Optional<StandingFact<BenchResultAttached>> result = latest(tickets.sound(earlier, viewer), calculation);
            return result.map(r -> new Known(
                            DeviceValues.among(calculation.id(), BenchRun.values(r.fact())),
                            "ticket " + earlier + " of the same device"))
                    .orElse(Known.NOTHING);
        } catch (RecordBroken broken) {
            return Known.NOTHING;
        }
    }

    /** Of a list, all rows are from the one or from the other. */
    private static Known over(Known before, Known own) {
        Map<String, String> values = new HashMap<>(before.values());
        values.keySet().removeIf(path -> own.values().keySet().stream().anyMatch(o -> field(o).equals(field(path))));
        if (values.isEmpty()) {
            return own;
        }
        values.putAll(own.values());
        return new Known(values, own.from().isEmpty() ? before.from() : own.from() + "; " + before.from());
    }

    private static String field(String path) {
        return path.replaceAll("\\[.*", "");
    }

    private static Known of(JobSheet sheet, Calculation<?> calculation) {
        Optional<StandingFact<BenchResultAttached>> earlier = latest(sheet, calculation);
        BenchStart start = BenchStart.of(calculation.id(), sheet);
        Map<String, String> values =
                new HashMap<>(earlier.map(r -> BenchRun.values(r.fact())).orElse(Map.of()));
        boolean rows = start.values().keySet().stream().anyMatch(path -> path.contains("["));
        if (values.isEmpty() || !rows) {
            values.putAll(start.values());
        }
        return new Known(values, words(earlier, start));
    }

    private static Optional<StandingFact<BenchResultAttached>> latest(JobSheet sheet, Calculation<?> calculation) {
        return sheet.latest(
                BenchResultAttached.class, r -> r.fact().calculation().equals(calculation.id()));
    }

    private static String words(Optional<StandingFact<BenchResultAttached>> earlier, BenchStart start) {
        String before = earlier.map(r -> "the result of entry " + r.entry()).orElse("");
        String read = String.join("; ", start.from());
        return before + (before.isEmpty() || read.isEmpty() ? "" : "; ") + read;
    }
}
