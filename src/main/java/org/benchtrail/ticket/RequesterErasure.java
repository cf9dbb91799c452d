package org.benchtrail.ticket;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/**
 * Erases name and contact of who reported a ticket, because they ask for it. The record of the ticket holds a number in their place and
 * stays as it is; the log holds commitments that nobody can open any more, and who decided.
 */
@Startup
@ApplicationScoped
public class RequesterErasure {
    private static final int LONGEST_REASON = 500;

    private final EntityManager database;
    private final SqlText text;
    private final Tickets tickets;
    private final Directory people;
    private final Clock clock;

    RequesterErasure(EntityManager database, Tickets tickets, Directory people, Clock clock) {
        this.database = database;
        this.tickets = tickets;
        this.people = people;
        this.clock = clock;
        text = SqlText.of(RequesterErasure.class).having("erase", "of the same name");
    }

    /**
     * What was done.
     *
     * @param erased whether there was something to erase
     * @param alike how many other people of the same name are kept, with other contacts: they may be the same person
     */
    public record Erased(boolean erased, int alike) {}

    /**
     * Erases who reported a ticket.
     *
     * @param supervisor account of the supervisor who decided it
     * @param reason in a few words, without the name of the person
     * @throws Invalid if that is no supervisor, or no reason
     */
    @Transactional
    public Erased erase(TicketNumber ticket, String supervisor, String reason) {
        String line = PlainText.line(reason);
        boolean decides = people.allowed(Permission.DECIDE_PROPOSALS).stream()
                .anyMatch(actor -> actor.account().equals(supervisor));
        new Invalid.Collector()
                .require(decides, "supervisor", "'" + supervisor + "' is no account of a supervisor, who decides this.")
                .require(
                        !line.isEmpty() && line.length() <= LONGEST_REASON && PlainText.isText(line),
                        "reason",
                        "Say in a few words why, without the name of the person.")
                .throwIfAny();
        long requester = tickets.present(ticket).requester;
        List<Long> alike = Sql.of(database, text.statement("of the same name"))
                .with("requester", requester)
                .values(Long.class);
        boolean erased = Sql.of(database, text.statement("erase"))
                .with("requester", requester)
                .with("reason", line)
                .with("by", supervisor)
                .with("at", clock.instant())
                .value(Boolean.class);
        return new Erased(erased, erased ? alike.size() : 0);
    }
}
