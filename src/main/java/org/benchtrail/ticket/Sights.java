package org.benchtrail.ticket;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.benchtrail.catalogue.CauseDoor;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Sight;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;

/** What tells causes outside the ticket that they are to be forecast on; nobody but trainees is looked at twice. */
@Startup
@ApplicationScoped
@Transactional
public class Sights implements CauseDoor {
    private final EntityManager database;
    private final Continuity continuity;
    private final Event<AdviceSeen> seen;
    private final SqlText text = SqlText.of(Sights.class).having("open tickets of");

    Sights(EntityManager database, Continuity continuity, Event<AdviceSeen> seen) {
        this.database = database;
        this.continuity = continuity;
        this.seen = seen;
    }

    /** A trainee saw on a colleague's ticket what they did not forecast. */
    public record AdviceSeen(TicketNumber ticket, Actor viewer) {}

    /** The ticket of that kind of trouble on which that person's forecast is due; of any kind if the category is empty. */
    public Optional<TicketNumber> due(String category, Actor viewer) {
        return due(
                viewer,
                sheet -> category.isEmpty()
                        || sheet.opened().category().catalogue().equals(category));
    }

    /** @param category null for any */
    public void pass(@Nullable Category category, Actor viewer) {
        pass(category == null ? "" : category.catalogue(), viewer);
    }

    @Override
    public void pass(String category, Actor viewer) {
        due(category, viewer).ifPresent(number -> {
            throw new ForecastFirst(number);
        });
    }

    /**
     * Lets nobody read the record of another ticket of the device on which their forecast is due.
     *
     * @param sheet of the other ticket; null if it cannot be read
     */
    void passToOther(TicketNumber number, @Nullable JobSheet sheet, Actor viewer) {
        if (!viewer.is(Role.TRAINEE) || sheet == null || isAtHand(sheet, viewer)) {
            return;
        }
        Opened report = sheet.opened();
        due(viewer, own -> !own.opened().ticket().equals(number.toString()) && isSameDevice(own.opened(), report))
                .ifPresent(due -> {
                    throw new ForecastFirst(due, known(sheet));
                });
    }

    /** One's own work is known, and a ticket that nobody has can be taken: it has a sight of its own. */
    private static boolean isAtHand(JobSheet sheet, Actor viewer) {
        return sheet.isHand(viewer.account())
                || (sheet.course().isOpen() && sheet.course().assignee() == null);
    }

    private static String known(JobSheet sheet) {
        String hazards = sheet.all(HazardsScreened.class).stream()
                .flatMap(h -> h.fact().found().stream())
                .distinct()
                .map(Hazard::words)
                .collect(Collectors.joining(", "));
        return "Ticket " + sheet.opened().ticket() + ", \u201c" + sheet.opened().title() + "\u201d, is "
                + sheet.course().standing().name().toLowerCase(Locale.ROOT) + "; hazards found there: "
                + (hazards.isEmpty() ? "none" : hazards) + ".";
    }

    private static boolean isSameDevice(Opened one, Opened other) {
        return one.device().equalsIgnoreCase(other.device()) && one.place().equalsIgnoreCase(other.place());
    }

    /** What is seen on a colleague's open ticket is noted, so that a forecast on it later is not scored. */
    public void note(TicketNumber number, JobSheet sheet, Actor viewer) {
        if (Sight.isOnlooker(sheet, viewer)) {
            seen.fire(new AdviceSeen(number, viewer));
        }
    }

    /** Tickets that nobody has yet close no other door: that would close it to every trainee for good. */
    private Optional<TicketNumber> due(Actor viewer, Predicate<JobSheet> which) {
        if (!viewer.is(Role.TRAINEE)) {
            return Optional.empty();
        }
        List<TicketNumber> open = Sql.of(database, text.statement("open tickets of"))
                .with("person", viewer.account())
                .values(Integer.class)
                .stream()
                .map(TicketNumber::new)
                .toList();
        return open.isEmpty()
                ? Optional.empty()
                : continuity.read(open, viewer).stream()
                        .filter(record -> record.fault().isEmpty())
                        .filter(record -> which.test(record.sound()))
                        .filter(record -> Sight.ofLikeness(record.sound(), viewer) instanceof Sight.Veiled)
                        .map(SheetRecord::number)
                        .findFirst();
    }
}
