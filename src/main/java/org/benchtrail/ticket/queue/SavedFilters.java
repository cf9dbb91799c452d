package org.benchtrail.ticket.queue;

import io.quarkus.hibernate.orm.panache.PanacheRepository;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.NotFound;

/** The filters that people keep. */
@ApplicationScoped
@Transactional
class SavedFilters implements PanacheRepository<SavedFilter> {
    private static final int MOST = 20;
    private static final int LONGEST_NAME = 60;
    private static final int LONGEST_QUERY = 2000;

    private final Clock clock;

    SavedFilters(Clock clock) {
        this.clock = clock;
    }

    /** @param query what follows the question mark in the address of the queue */
    record Kept(long id, String name, String query) {}

    /** By name. */
    List<Kept> of(Actor owner) {
        return list("owner = ?1 order by name", owner.account()).stream()
                .map(kept -> new Kept(kept.id == null ? 0 : kept.id, kept.name, kept.query))
                .toList();
    }

    /** Keeps a filter under a name; the same name again stands for the new filter. */
    void keep(String typedName, QueueAsked asked, Actor owner) {
        Permissions.require(Permission.SEE_TICKETS, owner);
        String name = PlainText.line(typedName);
        String query = asked.query();
        new Invalid.Collector()
                .require(
                        !name.isEmpty() && name.length() <= LONGEST_NAME,
                        "name",
                        "Name the filter, in at most " + LONGEST_NAME + " characters.")
                .require(PlainText.isText(typedName), "name", PlainText.WHAT_TO_DO)
                .require(!query.isEmpty(), "text", "Choose something to filter by first.")
                .require(query.length() <= LONGEST_QUERY, "text", "That is too long a filter to keep: use fewer words.")
                .throwIfAny();
        SavedFilter kept = find("owner = ?1 and name = ?2", owner.account(), name)
                .firstResultOptional()
                .orElseGet(() -> fresh(name, owner));
        kept.query = query;
        kept.kept = clock.instant();
        persist(kept);
    }

    private SavedFilter fresh(String name, Actor owner) {
        new Invalid.Collector()
                .require(
                        count("owner", owner.account()) < MOST,
                        "name",
                        "You keep " + MOST + " filters, which is the most: remove one first.")
                .throwIfAny();
        SavedFilter fresh = new SavedFilter();
        fresh.owner = owner.account();
        fresh.name = name;
        return fresh;
    }

    void remove(long id, Actor owner) {
        Permissions.require(Permission.SEE_TICKETS, owner);
        if (delete("id = ?1 and owner = ?2", id, owner.account()) == 0) {
            throw new NotFound("filter " + id + " of yours");
        }
    }
}
