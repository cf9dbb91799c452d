package org.benchtrail.ticket.record;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.function.Function;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.people.Directory;
import org.benchtrail.site.SiteBook;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.ticket.attachment.PaperPictures;
import org.benchtrail.ticket.identify.MarkedPicture;
import org.benchtrail.trail.TrailEntry;
import org.jspecify.annotations.Nullable;

/** All that a record shows, read in one transaction. */
@ApplicationScoped
public class RecordQueries {
    private final TicketQueries tickets;
    private final Directory people;
    private final SiteBook site;
    private final PaperPictures pictures;
    private final Clock clock;

    RecordQueries(TicketQueries tickets, Directory people, SiteBook site, PaperPictures pictures, Clock clock) {
        this.pictures = pictures;
        this.tickets = tickets;
        this.people = people;
        this.site = site;
        this.clock = clock;
    }

    /** For a screen. */
    @Transactional
    RecordView record(TicketNumber number, Actor viewer, ZoneId zone) {
        return record(tickets.traced(number, viewer), viewer, zone, picture -> picture);
    }

    /** A record, and the trail that it was written from. */
    public record Written(RecordView view, List<TrailEntry> trail) {}

    /** For paper, the pictures in it. */
    @Transactional
    public Written paper(TicketNumber number, Actor viewer, ZoneId zone) {
        TicketQueries.Traced traced = tickets.traced(number, viewer);
        return new Written(record(traced, viewer, zone, pictures::onPaper), traced.trail());
    }

    private RecordView record(
            TicketQueries.Traced traced,
            Actor viewer,
            ZoneId zone,
            Function<MarkedPicture, @Nullable MarkedPicture> shown) {
        JobSheet sheet = traced.ticket().sheet();
        SiteHistory decided = site.history();
        Instant now = clock.instant();
        Instant ended = sheet.course().closed();
        Viewing viewing = new Viewing(
                sheet,
                viewer,
                zone,
                now,
                decided.at(ended == null ? now : ended).rules().policy(),
                decided.workingTime(),
                people.names(RecordView.accounts(traced)));
        return RecordView.of(traced, viewing, shown);
    }
}
