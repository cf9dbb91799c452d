package org.benchtrail.ticket.forecast;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.site.SiteBook;
import org.benchtrail.ticket.Diagnoses;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.Viewing;

/** The forecast that is due on a ticket, read in one transaction. */
@ApplicationScoped
class ForecastQueries {
    private final TicketQueries tickets;
    private final Diagnoses diagnoses;
    private final SiteBook site;
    private final EarlierForecast earlier;
    private final Clock clock;

    ForecastQueries(TicketQueries tickets, Diagnoses diagnoses, SiteBook site, EarlierForecast earlier, Clock clock) {
        this.tickets = tickets;
        this.diagnoses = diagnoses;
        this.site = site;
        this.earlier = earlier;
        this.clock = clock;
    }

    /** @param title of the ticket */
    record Due(String title, ForecastView forecast) {}

    /** Empty if it was made meanwhile. */
    @Transactional
    Optional<Due> due(TicketNumber number, Actor viewer, ZoneId zone) {
        JobSheet sheet = tickets.sound(number, viewer);
        SiteHistory decided = site.history();
        Viewing viewing = new Viewing(
                sheet,
                viewer,
                zone,
                clock.instant(),
                decided.at(clock.instant()).rules().policy(),
                decided.workingTime(),
                Map.of());
        return ForecastView.of(viewing, diagnoses.category(sheet), earlier)
                .map(forecast -> new Due(sheet.opened().title(), forecast));
    }
}
