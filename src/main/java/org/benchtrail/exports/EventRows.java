package org.benchtrail.exports;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;

/** The rows of the event log; everything within the running transaction. */
@Startup
@ApplicationScoped
class EventRows {
    private final EntityManager database;
    private final SqlText text;

    EventRows(EntityManager database) {
        this.database = database;
        text = SqlText.of(EventRows.class)
                .having("months", "tickets", "entries", "head", "leaves", "give", "given", "given of");
    }

    private Sql of(String statement) {
        return Sql.of(database, text.statement(statement));
    }

    /**
     * A month in which tickets ended.
     *
     * @param entries of all of them together
     */
    public record Month(String month, int tickets, long entries) {
        private static final int XES_BYTES = 640;
        private static final int CSV_BYTES = 110;
        private static final int JSON_BYTES = 310;
        private static final int HASH_BYTES = 47;
        private static final double KILO = 1000;

        /** How large its files are, about. */
        public String xes() {
            return size(XES_BYTES);
        }

        public String csv() {
            return size(CSV_BYTES);
        }

        /** @param leaves of the log by which entries are proven: a proof has a hash for each time that they halve */
        public String jsonLines(long leaves) {
            return size(JSON_BYTES + (long) HASH_BYTES * (Long.SIZE - Long.numberOfLeadingZeros(leaves)));
        }

        private String size(long bytesAnEntry) {
            double kilobytes = entries * bytesAnEntry / KILO;
            return kilobytes < KILO
                    ? Numeral.of(Math.max(1, kilobytes), 2) + "\u00a0kB"
                    : Numeral.of(kilobytes / KILO, 2) + "\u00a0MB";
        }
    }

    /** Since then, the latest first. */
    List<Month> months(Instant since, ZoneId zone) {
        return of("months").with("since", since).with("zone", zone.getId()).rows(Month.class);
    }

    /** Serials of tickets that ended in the period, in order, after that one, at most so many. */
    List<Integer> tickets(Instant begins, Instant ends, int after, int most) {
        return of("tickets")
                .with("begins", begins)
                .with("ends", ends)
                .with("after", after)
                .with("most", most)
                .values(Integer.class);
    }

    record EntryRow(
            int serial,
            String category,
            String priority,
            int round,
            int entry,
            Instant at,
            String actor,
            String kind,
            byte[] canonical,
            String hash,
            @Nullable Long leaf) {}

    /** All entries of those tickets, by ticket and entry. */
    List<EntryRow> entries(Collection<Integer> tickets) {
        return of("entries").with("tickets", tickets).rows(EntryRow.class);
    }

    /** The newest head of the log; empty if there is none yet. */
    String head() {
        return of("head").values(String.class).stream().findFirst().orElse("");
    }

    /**
     * A file that somebody was given.
     *
     * @param month of an event log; empty for a file of one ticket
     * @param ticket serial number of it; null for an event log
     * @param person account
     */
    record GivenRow(String month, @Nullable Integer ticket, String format, String person, Instant at) {
        static GivenRow of(TicketNumber ticket, String format, String person, Instant at) {
            return new GivenRow("", ticket.serial(), format, person, at);
        }

        /** What it is of. */
        String about() {
            return ticket == null ? month : new TicketNumber(ticket).toString();
        }
    }

    /** How many leaves the newest head of the log covers; 0 if there is none yet. */
    long leaves() {
        return of("leaves").values(Long.class).stream().findFirst().orElse(0L);
    }

    void give(GivenRow given, String head) {
        of("give")
                .with("month", given.month())
                .with("ticket", given.ticket())
                .with("format", given.format())
                .with("person", given.person())
                .with("at", given.at())
                .with("head", head)
                .run();
    }

    /** The latest first, at most so many. */
    List<GivenRow> given(int most) {
        return of("given").with("most", most).rows(GivenRow.class);
    }

    /** Of one ticket. */
    List<GivenRow> given(TicketNumber ticket, int most) {
        return of("given of").with("ticket", ticket.serial()).with("most", most).rows(GivenRow.class);
    }
}
