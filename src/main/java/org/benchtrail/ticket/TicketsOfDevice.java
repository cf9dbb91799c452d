package org.benchtrail.ticket;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.site.DeviceTickets;
import org.jspecify.annotations.Nullable;

/** The tickets of a device, and what was measured on the latest of them. */
@Startup
@ApplicationScoped
@Transactional
class TicketsOfDevice implements DeviceTickets {
    private static final int LISTED = 50;

    /** The trails of so many tickets are read. */
    private static final int READ = 20;

    private final EntityManager database;
    private final TicketQueries tickets;
    private final SqlText text = SqlText.of(TicketsOfDevice.class);

    TicketsOfDevice(EntityManager database, TicketQueries tickets) {
        this.database = database;
        this.tickets = tickets;
    }

    private List<TicketLine> latest(String label, int most) {
        return Sql.of(database, text.statement("of the device"))
                .with("device", label.toLowerCase(Locale.ROOT))
                .with("most", most)
                .rows(TicketLine.class);
    }

    @Override
    public List<Ticket> tickets(String label, Actor viewer) {
        Permissions.require(Permission.SEE_TICKETS, viewer);
        return latest(label, LISTED).stream()
                .sorted(Comparator.comparing(t -> t.standing() != Standing.OPEN))
                .map(t -> new Ticket(
                        t.number(),
                        t.title(),
                        t.standing() == Standing.OPEN,
                        t.standing() == Standing.OPEN
                                ? t.step().title()
                                : t.standing().name().toLowerCase(Locale.ROOT),
                        t.opened()))
                .toList();
    }

    @Override
    public List<Measured> readings(String label, Actor viewer) {
        List<TicketNumber> numbers = latest(label, READ).stream()
                .map(t -> new TicketNumber(t.serial()))
                .toList();
        return tickets.sound(numbers, viewer).entrySet().stream()
                .flatMap(ticket -> ticket.getValue().all(ReadingRecorded.class).stream()
                        .map(reading -> measured(ticket.getKey().toString(), reading)))
                .sorted(Comparator.comparing(Measured::at))
                .toList();
    }

    private static Measured measured(String ticket, StandingFact<ReadingRecorded> reading) {
        ReadingRecorded fact = reading.fact();
        return new Measured(
                reading.stamp().at(),
                ticket,
                reading.entry(),
                fact.quantity(),
                fact.point(),
                new BigDecimal(fact.value()).doubleValue(),
                fact.value(),
                fact.unit(),
                bound(fact.lower()),
                bound(fact.upper()),
                switch (fact.verdict()) {
                    case WITHIN -> "within";
                    case OUTSIDE -> "outside";
                    case TOO_CLOSE -> "too close to call";
                    case NOT_JUDGED -> "no limit";
                });
    }

    private static @Nullable Double bound(@Nullable String text) {
        return text == null ? null : Double.valueOf(text);
    }
}
