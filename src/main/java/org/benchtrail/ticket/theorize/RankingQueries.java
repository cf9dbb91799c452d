package org.benchtrail.ticket.theorize;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Optional;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Sight;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.NotFound;
import org.benchtrail.ticket.Diagnoses;
import org.benchtrail.ticket.ForecastFirst;
import org.benchtrail.ticket.Sights;
import org.benchtrail.ticket.TicketQueries;
import org.jspecify.annotations.Nullable;

/** The ranking of a ticket's causes, read in one transaction. */
@ApplicationScoped
public class RankingQueries {
    private final TicketQueries tickets;
    private final Diagnoses diagnoses;
    private final Sights sights;

    RankingQueries(TicketQueries tickets, Diagnoses diagnoses, Sights sights) {
        this.sights = sights;
        this.tickets = tickets;
        this.diagnoses = diagnoses;
    }

    public record Ranked(String title, RankingView ranking) {}

    /**
     * @param version of the catalogue; null for the one in force
     * @throws ForecastFirst whatever version is asked for, if the viewer is to say first what they expect
     * @throws NotFound if that catalogue has nothing for the ticket's category
     */
    @Transactional
    public Ranked ranked(TicketNumber number, @Nullable Integer version, Actor viewer) {
        TicketQueries.Whole ticket = tickets.ticket(number, viewer);
        JobSheet sheet = ticket.sheet();
        if (!(Sight.of(sheet, viewer) instanceof Sight.Open open)) {
            throw new ForecastFirst(number);
        }
        sights.note(number, sheet, viewer);
        Optional<Diagnoses.Dated> dated = version == null ? diagnoses.of(sheet) : diagnoses.of(sheet, version);
        return dated.map(d -> new Ranked(ticket.line().title(), RankingView.of(sheet, d, open)))
                .orElseThrow(() -> new NotFound("ranking for this category"));
    }
}
