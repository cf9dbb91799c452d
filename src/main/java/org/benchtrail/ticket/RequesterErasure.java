package org.benchtrail.ticket;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.core.text.SharedWord;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;

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
        text = SqlText.of(RequesterErasure.class).having("erase", "kept", "newest", "unneeded");
    }

    /**
     * What was done.
     *
     * @param erased whether there was something to erase
     * @param alike how many other people of the same name are kept, with other contacts: they may be the same person
     */
    public record Erased(boolean erased, long alike) {}

    /**
     * What is kept of who reported a ticket.
     *
     * @param erased when that was; null if it was not
     * @param tickets how many they reported
     * @param alike as of {@link Erased}
     */
    public record Kept(
            String name, String contact, @Nullable Instant erased, long tickets, long alike) {}

    @Transactional
    public Kept kept(TicketNumber ticket) {
        return keptOf(tickets.present(ticket).requester);
    }

    private Kept keptOf(long requester) {
        return of("kept").with("requester", requester).row(Kept.class).orElseThrow();
    }

    /** The tickets that whoever reported this one did, the newest first. */
    @Transactional
    public List<TicketNumber> newest(TicketNumber ticket, int most) {
        return of("newest")
                .with("requester", tickets.present(ticket).requester)
                .with("most", most)
                .values(Integer.class)
                .stream()
                .map(TicketNumber::new)
                .toList();
    }

    private Sql of(String statement) {
        return Sql.of(database, text.statement(statement));
    }

    /**
     * The reason stays in the log for good, so it may not tell who it was.
     *
     * @throws Invalid if it does, or is none
     */
    @Transactional
    public void requireReason(TicketNumber ticket, String reason) {
        requireReason(kept(ticket), PlainText.line(reason));
    }

    private static void requireReason(Kept kept, String line) {
        new Invalid.Collector()
                .require(PlainText.isText(line), "reason", PlainText.WHAT_TO_DO)
                .require(
                        !line.isEmpty() && line.length() <= LONGEST_REASON,
                        "reason",
                        "Say in a few words why, without the name of the person.")
                .throwIfAny();
        SharedWord.of(line, kept.name, addresses(kept.contact)).ifPresent(word -> {
            throw new Invalid(
                    "reason",
                    "Leave out '" + word + "': it is of their name or contact, and the reason stays for good.");
        });
    }

    /** The numbers and mail addresses of a contact: such words as mail and room tell nobody. */
    private static String addresses(String contact) {
        return Arrays.stream(contact.split(" "))
                .filter(part -> part.indexOf('@') >= 0 || part.chars().anyMatch(Character::isDigit))
                .collect(Collectors.joining(" "));
    }

    /**
     * Erases who reported a ticket, by one supervisor alone.
     *
     * @param supervisor account of the supervisor who decided it
     * @param reason in a few words, without the name of the person
     * @throws Invalid if that is no supervisor, or no reason
     */
    @Transactional
    public Erased erase(TicketNumber ticket, String supervisor, String reason) {
        boolean decides = people.allowed(Permission.DECIDE_PROPOSALS).stream()
                .anyMatch(actor -> actor.account().equals(supervisor));
        new Invalid.Collector()
                .require(decides, "supervisor", "'" + supervisor + "' is no account of a supervisor, who decides this.")
                .throwIfAny();
        return erased(ticket, supervisor, reason);
    }

    /**
     * As {@link #erase}, by two supervisors whose roles were looked at when each decided.
     *
     * @throws Invalid if that is no reason
     */
    @Transactional
    public Erased eraseAgreed(TicketNumber ticket, String proposer, String confirmer, String reason) {
        return erased(ticket, proposer + ", " + confirmer, reason);
    }

    /**
     * Erases those whose every ticket has ended before that moment, because the site keeps nobody longer.
     *
     * @param most how many at once
     * @return how many it were
     */
    @Transactional
    public int eraseUnneeded(Instant endedBefore, int most, String reason) {
        List<Long> unneeded =
                of("unneeded").with("before", endedBefore).with("most", most).values(Long.class);
        unneeded.forEach(requester -> erase(requester, Stamp.SERVER, reason));
        return unneeded.size();
    }

    private Erased erased(TicketNumber ticket, String decidedBy, String reason) {
        String line = PlainText.line(reason);
        long requester = tickets.present(ticket).requester;
        Kept kept = keptOf(requester);
        requireReason(kept, line);
        boolean erased = erase(requester, decidedBy, line);
        return new Erased(erased, erased ? kept.alike : 0);
    }

    private boolean erase(long requester, String decidedBy, String reason) {
        return of("erase")
                .with("requester", requester)
                .with("reason", reason)
                .with("by", decidedBy)
                .with("at", clock.instant())
                .value(Boolean.class);
    }
}
