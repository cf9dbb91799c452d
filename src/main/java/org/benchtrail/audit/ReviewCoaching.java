package org.benchtrail.audit;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.Coached;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/**
 * What somebody can learn from audits of their own work, requirement by requirement. They read it first; a supervisor, and the mentor
 * that a trainee has at that moment, see of it what they had read by then, and they see who did. Nobody else sees any of it.
 */
@Startup
@ApplicationScoped
@Transactional
class ReviewCoaching {
    private static final int LOOKS = 20;

    private final EntityManager database;
    private final LotRows rows;
    private final AuditedTickets tickets;
    private final Directory people;
    private final Clock clock;
    private final SqlText text;

    ReviewCoaching(EntityManager database, LotRows rows, AuditedTickets tickets, Directory people, Clock clock) {
        this.database = database;
        this.rows = rows;
        this.tickets = tickets;
        this.people = people;
        this.clock = clock;
        text = SqlText.of(ReviewCoaching.class).having("note", "read", "readers", "look", "looks");
    }

    private Sql of(String statement) {
        return Sql.of(database, text.statement(statement));
    }

    /** @param question what reviewers ask of it */
    public record Line(String title, String question, String counts, List<String> tickets) {}

    /** A reviewed ticket, and what it was about. */
    record Found(Coached.Work work, String title) {}

    /** @param looks who looked at it, and when, the latest first */
    public record Own(List<Line> lines, List<String> looks) {}

    /** @param account by which a supervisor asks for somebody */
    public record Person(String account, String name) {}

    /** What somebody had read when a supervisor asks for it. */
    public record Shown(String name, List<Line> lines) {}

    /** Reviewed tickets that the viewer worked on, as far as their reviews can be read. */
    List<Found> works(Actor viewer) {
        Permissions.require(Permission.WORK_TICKETS, viewer);
        return works(viewer.account(), viewer, lot -> lot);
    }

    /** Of the viewer's own work, which they have before them: that is noted as read. */
    Own own(List<Found> works, Actor viewer, ZoneId zone) {
        Permissions.require(Permission.WORK_TICKETS, viewer);
        Instant now = clock.instant();
        works.stream()
                .map(f -> f.work().lot())
                .collect(Collectors.toMap(AuditLot::id, lot -> lot, (one, same) -> one))
                .values()
                .forEach(lot -> of("note")
                        .with("person", viewer.account())
                        .with("lot", lot.id())
                        .with("place", (long) lot.acts().size())
                        .with("at", now)
                        .run());
        return new Own(lines(works), looks(viewer.account(), zone));
    }

    private record LookRow(String reader, Instant at) {}

    private List<String> looks(String account, ZoneId zone) {
        List<LookRow> looks =
                of("looks").with("person", account).with("most", LOOKS).rows(LookRow.class);
        Map<String, String> names =
                people.names(looks.stream().map(LookRow::reader).distinct().toList());
        return looks.stream()
                .map(l -> names.getOrDefault(l.reader(), l.reader()) + ", " + Moments.text(l.at(), zone))
                .toList();
    }

    /** Who has read reviews of their own work, by name; of them a mentor's trainees, and all for a supervisor. */
    List<Person> people(Actor viewer) {
        Permissions.require(Permission.COACH, viewer);
        List<String> readers = of("readers").values(String.class).stream()
                .filter(coachedBy(viewer))
                .toList();
        return people.names(readers).entrySet().stream()
                .map(e -> new Person(e.getKey(), e.getValue()))
                .sorted(Comparator.comparing(Person::name).thenComparing(Person::account))
                .toList();
    }

    /** Whose coach the viewer is. */
    private Predicate<String> coachedBy(Actor viewer) {
        if (Permissions.allow(Permission.PLAN_AUDITS, viewer)) {
            return account -> true;
        }
        Set<String> trainees =
                people.traineesOf(viewer.account()).stream().map(Actor::account).collect(Collectors.toSet());
        return trainees::contains;
    }

    private record ReadRow(String lot, long place) {}

    /**
     * What somebody had read of the reviews of their work; that it was looked at is noted for them.
     *
     * @throws NotFound if they have read none, or are nobody whom the viewer coaches
     */
    Shown of(String account, Actor viewer) {
        Permissions.require(Permission.COACH, viewer);
        Map<String, Long> read = of("read").with("person", account).rows(ReadRow.class).stream()
                .collect(Collectors.toMap(ReadRow::lot, ReadRow::place));
        if (read.isEmpty() || !coachedBy(viewer).test(account)) {
            throw new NotFound("review of their work that this person has read");
        }
        of("look")
                .with("person", account)
                .with("reader", viewer.account())
                .with("at", clock.instant())
                .run();
        List<Found> works = works(account, viewer, lot -> upTo(lot, read.getOrDefault(lot.id(), 0L)));
        return new Shown(people.names(List.of(account)).getOrDefault(account, account), lines(works));
    }

    /** The lot as it was after that act. */
    private static AuditLot upTo(AuditLot lot, long place) {
        return AuditLot.of(
                lot.id(), lot.acts().stream().filter(a -> a.place() <= place).toList());
    }

    /** Reviewed tickets among whose hands that person is, whose reviews can be read in the lot as it is looked at. */
    private List<Found> works(String account, Actor viewer, UnaryOperator<AuditLot> looked) {
        List<Found> works = new ArrayList<>();
        Map<String, List<LotRows.ReviewedOf>> byLot =
                rows.reviewedOf(account).stream().collect(Collectors.groupingBy(LotRows.ReviewedOf::lot));
        byLot.forEach((id, own) -> {
            AuditLot lot = looked.apply(rows.lot(id));
            own.stream()
                    .map(r -> new TicketNumber(r.ticket()).toString())
                    .filter(ticket -> !lot.acts().isEmpty() && lot.isReadable(ticket))
                    .forEach(ticket -> {
                        JobSheet sheet = tickets.frozen(lot.item(ticket).orElseThrow(), viewer)
                                .sheet();
                        if (sheet.isHand(account)) {
                            works.add(new Found(
                                    new Coached.Work(lot, ticket),
                                    sheet.opened().title()));
                        }
                    });
        });
        return works;
    }

    private static List<Line> lines(List<Found> works) {
        return Coached.of(works.stream().map(Found::work).toList()).stream()
                .map(c -> new Line(
                        c.requirement().title(), c.requirement().review().question(), counts(c), c.faulty()))
                .toList();
    }

    static String counts(Coached one) {
        return "Not satisfied in " + one.faulty().size() + " of " + one.judged()
                + one.share()
                        .map(s -> ", that is " + Shares.of(one.faulty().size(), one.judged(), s))
                        .orElse("")
                + ".";
    }
}
