package org.benchtrail.ticket.bench;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.bench.BenchRun;
import org.benchtrail.bench.TicketValues;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.advice.BenchStart;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.platform.Forbidden;
import org.benchtrail.platform.NotFound;
import org.benchtrail.ticket.TicketQueries;

/** What a ticket's sheet knows: an earlier result of the same calculation, and over it the readings. */
@ApplicationScoped
public class KnownValues implements TicketValues {
    private final TicketQueries tickets;

    KnownValues(TicketQueries tickets) {
        this.tickets = tickets;
    }

    @Override
    public Known known(String ticket, Calculation<?> calculation, Actor viewer) {
        try {
            return of(tickets.sound(TicketNumber.parse(ticket.replaceAll("/.*", "")), viewer), calculation);
        } catch (Invalid | NotFound | Forbidden nothingToSee) {
            return Known.NOTHING;
        }
    }

    private static Known of(JobSheet sheet, Calculation<?> calculation) {
        Optional<StandingFact<BenchResultAttached>> earlier = sheet.latest(
                BenchResultAttached.class, r -> r.fact().calculation().equals(calculation.id()));
        BenchStart start = BenchStart.of(calculation.id(), sheet);
        Map<String, String> values =
                new HashMap<>(earlier.map(r -> BenchRun.values(r.fact())).orElse(Map.of()));
        boolean rows = start.values().keySet().stream().anyMatch(path -> path.contains("["));
        if (values.isEmpty() || !rows) {
            values.putAll(start.values());
        }
        return new Known(values, words(earlier, start));
    }

    private static String words(Optional<StandingFact<BenchResultAttached>> earlier, BenchStart start) {
        String before = earlier.map(r -> "the result of entry " + r.entry()).orElse("");
        String read = String.join("; ", start.from());
        return before + (before.isEmpty() || read.isEmpty() ? "" : "; ") + read;
    }
}
