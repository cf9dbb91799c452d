package org.benchtrail.knowledge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.document.CauseNamed;
import org.jspecify.annotations.Nullable;

/** Writes the cases: one for each closed ticket. */
@ApplicationScoped
class ClosedCases {
    private static final String PUT =
            "insert into closed_case (serial, title, device, category, cause, cause_id, sureness,"
                    + " body, findings, closed, closed_by, minutes, known, reopened, search)"
                    + " values (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, cast(?9 as text[]), ?10, ?11, cast(?12 as integer), cast(?13 as bigint), false,"
                    + " setweight(to_tsvector('simple', ?14), 'A') || setweight(to_tsvector('simple', ?15), 'B')"
                    + " || setweight(to_tsvector('simple', ?16), 'D'))"
                    + " on conflict (serial) do update set title = excluded.title, device = excluded.device,"
                    + " category = excluded.category, cause = excluded.cause, cause_id = excluded.cause_id,"
                    + " sureness = excluded.sureness, body = excluded.body, findings = excluded.findings, closed = excluded.closed,"
                    + " closed_by = excluded.closed_by, minutes = excluded.minutes, known = excluded.known, reopened = false,"
                    + " search = excluded.search";

    private final EntityManager database;
    private final WordList words;

    ClosedCases(EntityManager database, WordList words) {
        this.database = database;
        this.words = words;
    }

    /** The case of a ticket as it is closed, in place of an earlier one. */
    void put(TicketNumber number, JobSheet sheet, CauseNamed named, @Nullable Long known, String by, Instant at) {
        Opened report = sheet.opened();
        String body = SheetDigest.body(sheet);
        database.createNativeQuery(PUT)
                .setParameter(1, number.serial())
                .setParameter(2, report.title())
                .setParameter(3, report.device())
                .setParameter(4, report.category().name())
                .setParameter(5, named.cause())
                .setParameter(6, SheetDigest.causeId(sheet, named))
                .setParameter(7, named.sureness().name())
                .setParameter(8, body)
                .setParameter(9, SheetDigest.findings(sheet).toArray(String[]::new))
                .setParameter(10, at)
                .setParameter(11, by)
                .setParameter(12, SheetDigest.minutes(sheet))
                .setParameter(13, known)
                .setParameter(14, Plain.index(report.title()))
                .setParameter(15, Plain.index(named.cause() + " " + report.device()))
                .setParameter(16, Plain.index(body))
                .executeUpdate();
        words.learn(String.join(" ", report.title(), named.cause(), report.device(), body));
    }

    /** It counts as solved no more. */
    void reopen(TicketNumber number) {
        database.createNativeQuery("update closed_case set reopened = true where serial = ?1")
                .setParameter(1, number.serial())
                .executeUpdate();
    }

    void move(KnownCause from, KnownCause to) {
        database.createNativeQuery("update closed_case set known = ?1 where known = ?2")
                .setParameter(1, to.number())
                .setParameter(2, from.number())
                .executeUpdate();
    }

    /** @throws Invalid if the ticket is no case of {@code from} */
    void move(int ticket, KnownCause from, KnownCause to) {
        int moved = database.createNativeQuery("update closed_case set known = ?1 where serial = ?2 and known = ?3")
                .setParameter(1, to.number())
                .setParameter(2, ticket)
                .setParameter(3, from.number())
                .executeUpdate();
        if (moved == 0) {
            throw new Invalid("cases", "Ticket " + new TicketNumber(ticket) + " is no case of this known cause.");
        }
    }

    /** Numbers of the tickets that support a known cause, newest first. */
    List<Integer> of(long cause, int most) {
        List<?> serials = database.createNativeQuery(
                        "select serial from closed_case where known = ?1 and not reopened order by closed desc, serial desc")
                .setParameter(1, cause)
                .setMaxResults(most)
                .getResultList();
        return serials.stream().map(n -> ((Number) n).intValue()).toList();
    }
}
