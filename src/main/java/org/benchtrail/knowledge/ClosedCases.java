package org.benchtrail.knowledge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;

/** Writes the cases: one for each closed ticket. */
@ApplicationScoped
class ClosedCases {
    private final EntityManager database;
    private final WordList words;
    private final FindingWords findingWords;
    private final SqlText sql = SqlText.of(ClosedCases.class);

    ClosedCases(EntityManager database, WordList words, FindingWords findingWords) {
        this.findingWords = findingWords;
        this.database = database;
        this.words = words;
    }

    private Sql statement(String name) {
        return Sql.of(database, sql.statement(name));
    }

    /** The case of a ticket as it is closed, in place of an earlier one. */
    void put(TicketNumber number, JobSheet sheet, CauseNamed named, @Nullable Long known, String by, Instant at) {
        Opened report = sheet.opened();
        String body = SheetDigest.body(sheet);
        statement("put")
                .with("serial", number.serial())
                .with("title", report.title())
                .with("device", report.device())
                .with("category", report.category().name())
                .with("cause", named.cause())
                .with("causeId", SheetDigest.causeId(sheet, named))
                .with("sureness", named.sureness().name())
                .with("body", body)
                .with(
                        "findings",
                        SheetDigest.findings(sheet, FindingWords.heard(sheet, findingWords.inForce()))
                                .toArray(String[]::new))
                .with("closed", at)
                .with("closedBy", by)
                .with("minutes", SheetDigest.minutes(sheet))
                .with("known", known)
                .with("titleWords", SearchText.index(report.title()))
                .with("causeWords", SearchText.index(named.cause() + " " + report.device()))
                .with("bodyWords", SearchText.index(body))
                .run();
        words.learn(String.join(" ", report.title(), named.cause(), report.device(), body));
    }

    /** What a case says in words, anew by the sheet; nothing where the ticket has none. */
    void rewrite(TicketNumber number, JobSheet sheet, CauseNamed named) {
        String title = sheet.opened().title();
        String body = SheetDigest.body(sheet);
        statement("rewrite")
                .with("serial", number.serial())
                .with("title", title)
                .with("cause", named.cause())
                .with("body", body)
                .with("titleWords", SearchText.index(title))
                .with(
                        "causeWords",
                        SearchText.index(named.cause() + " " + sheet.opened().device()))
                .with("bodyWords", SearchText.index(body))
                .run();
    }

    /** Words that nothing has any more help nobody to spell a search. */
    void forget(String text) {
        words.forget(text);
    }

    /** It counts as solved no more. */
    void reopen(TicketNumber number) {
        statement("reopen").with("serial", number.serial()).run();
    }

    void move(KnownCause from, KnownCause to) {
        statement("move all")
                .with("from", from.number())
                .with("to", to.number())
                .run();
    }

    /** @throws Invalid if the ticket is no case of {@code from} */
    void move(int ticket, KnownCause from, KnownCause to) {
        int moved = statement("move one")
                .with("serial", ticket)
                .with("from", from.number())
                .with("to", to.number())
                .run();
        if (moved == 0) {
            throw new Invalid("cases", "Ticket " + new TicketNumber(ticket) + " is no case of this known cause.");
        }
    }
}
