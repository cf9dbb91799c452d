package org.benchtrail.ticket;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.site.SiteBook;
import org.benchtrail.trail.SaltedWords;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.TrailStore;

/**
 * Erases words that somebody wrote into a ticket, because they tell of a person. The entries keep their hashes, which hold commitments
 * that nobody can open any more; the log holds who decided it.
 */
@Startup
@ApplicationScoped
public class WordsErasure {
    /** What to do where no entry is chosen. */
    public static final String TICK = "Tick the entries of which the words are to go.";

    private final EntityManager database;
    private final SqlText text;
    private final Tickets tickets;
    private final Continuity continuity;
    private final TrailStore trail;
    private final SiteBook site;
    private final Clock clock;
    private final Event<WordsErased> erased;

    WordsErasure(
            EntityManager database,
            Tickets tickets,
            Continuity continuity,
            TrailStore trail,
            SiteBook site,
            Clock clock,
            Event<WordsErased> erased) {
        this.database = database;
        this.tickets = tickets;
        this.continuity = continuity;
        this.trail = trail;
        this.site = site;
        this.clock = clock;
        this.erased = erased;
        text = SqlText.of(WordsErasure.class).having("erase", "erased", "forget spelling");
    }

    /** An entry with words, which are still there. */
    public record Written(int entry, String by, String kind, String words) {
        static Written of(TrailEntry stored) {
            return new Written(
                    stored.entry(),
                    stored.actor(),
                    stored.kind(),
                    stored.saltedWords().values().stream()
                            .map(SaltedWords::value)
                            .collect(Collectors.joining(" / ")));
        }
    }

    /** The entries of a ticket that have words. */
    @Transactional
    public List<Written> written(TicketNumber ticket) {
        return written(trail.read(ticket).entries());
    }

    private static List<Written> written(List<TrailEntry> entries) {
        return entries.stream()
                .filter(entry -> !entry.saltedWords().isEmpty())
                .map(Written::of)
                .toList();
    }

    /** An entry of which the words were erased. */
    public record Erased(int entry, Instant at, String decidedBy, String reason) {}

    /** Which entries of a ticket have no words any more, by whose decision. */
    @Transactional
    public List<Erased> erased(TicketNumber ticket) {
        return Sql.of(database, text.statement("erased"))
                .with("ticket", ticket.serial())
                .rows(Erased.class);
    }

    /**
     * The words of those entries.
     *
     * @throws Invalid on {@code entries} if none is chosen, or one has none
     */
    @Transactional
    public List<Written> chosen(TicketNumber ticket, Collection<Integer> entries) {
        return chosen(written(ticket), entries);
    }

    private static List<Written> chosen(List<Written> written, Collection<Integer> entries) {
        List<Written> chosen =
                written.stream().filter(w -> entries.contains(w.entry())).toList();
        new Invalid.Collector()
                .require(!entries.isEmpty(), "entries", TICK)
                .require(
                        chosen.size() == entries.size(),
                        "entries",
                        "Some of these entries have no words any more: look at the ticket again.")
                .throwIfAny();
        return chosen;
    }

    /**
     * Erases the words of those entries, wherever they are kept.
     *
     * @param decidedBy accounts of the supervisors who decided it
     * @param reason stays for good
     * @throws Invalid as of {@link #chosen}
     * @throws org.benchtrail.platform.RecordBroken if what is stored of the ticket does not hold
     */
    @Transactional
    public void erase(TicketNumber ticket, Collection<Integer> entries, String decidedBy, String reason) {
        Ticket row = tickets.locked(ticket);
        Actor by = new Actor(decidedBy, decidedBy, Set.of());
        SheetRecord before = continuity.read(row, by);
        before.sound();
        String words = chosen(written(before.stored().entries()), entries).stream()
                .map(Written::words)
                .collect(Collectors.joining("\n"));
        Sql.of(database, text.statement("erase"))
                .with("ticket", ticket.serial())
                .with("entries", entries.stream().map(String::valueOf).collect(Collectors.joining(",")))
                .with("reason", reason)
                .with("by", decidedBy)
                .with("at", clock.instant())
                .value(Integer.class);
        SheetRecord now = continuity.read(ticket, by);
        row.show(now.sound(), now.stored().lastHash(), site.kept());
        tickets.flush();
        Sql.of(database, text.statement("forget spelling")).with("words", words).run();
        erased.fire(new WordsErased(ticket, now.sound(), words));
    }
}
