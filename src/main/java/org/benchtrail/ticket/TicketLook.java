package org.benchtrail.ticket;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.TypedQuery;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.NotFound;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.TrailStore;
import org.benchtrail.trail.Verification;

/** What can be read of tickets. Each look is one transaction, so that what belongs together fits together. */
@ApplicationScoped
@Transactional
public class TicketLook {
    private final Tickets tickets;
    private final Requesters requesters;
    private final Attachments attachments;
    private final TrailStore trail;
    private final EntityManager database;
    private final Clock clock;

    TicketLook(
            Tickets tickets,
            Requesters requesters,
            Attachments attachments,
            TrailStore trail,
            EntityManager database,
            Clock clock) {
        this.tickets = tickets;
        this.requesters = requesters;
        this.attachments = attachments;
        this.trail = trail;
        this.database = database;
        this.clock = clock;
    }

    /** A ticket: its sheet, and what stands outside the trail. */
    public record Whole(TicketNumber number, TicketLine line, JobSheet sheet, String requester, String contact) {}

    public Whole ticket(TicketNumber number, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        Ticket row = tickets.present(number);
        JobSheet sheet = JobSheet.replay(
                trail.read(number).stream().map(TrailEntry::read).toList());
        Requester requester = requesters.findById(row.requester);
        return new Whole(number, TicketLine.of(row), sheet, requester.name, requester.contact);
    }

    public List<TrailEntry> trail(TicketNumber number, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        tickets.present(number);
        return trail.read(number);
    }

    /** Holds the trail against itself, and the ticket's row against a replay of it. */
    public Verification verify(TicketNumber number, Actor actor) {
        Permissions.require(Permission.VERIFY_TRAIL, actor);
        Ticket row = tickets.present(number);
        List<TrailEntry> entries = trail.read(number);
        Verification chain = Verification.of(number, entries, row.entries);
        if (!chain.holds()) {
            return chain;
        }
        return shows(row, entries)
                ? chain
                : new Verification(
                        entries.size(),
                        false,
                        null,
                        "The trail holds, but the ticket's row says something else than it.");
    }

    private static boolean shows(Ticket row, List<TrailEntry> entries) {
        try {
            return row.shows(
                    JobSheet.replay(entries.stream().map(TrailEntry::read).toList()));
        } catch (IllegalArgumentException e) {
            return false; // each entry holds, but together they tell no ticket
        }
    }

    /** The file with that hash, if it is attached to that ticket. */
    public byte[] file(TicketNumber number, String sha256, Actor actor) {
        boolean attached =
                ticket(number, actor).sheet().all(org.benchtrail.core.method.identify.AttachmentAdded.class).stream()
                        .anyMatch(a -> a.fact().sha256().equals(sha256));
        if (!attached) {
            throw new NotFound("such file on ticket " + number);
        }
        return attachments.findById(sha256).content;
    }

    public QueuePart queue(QueueFilter filter, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        Map<String, Object> values = new HashMap<>();
        String where = where(filter, values);
        long total = bind(database.createQuery("select count(*) from Ticket t where " + where, Long.class), values)
                .getSingleResult();
        String order = " order by t.due, t.serial";
        if (filter.after() != null) {
            where += " and (t.due > :due or (t.due = :due and t.serial > :serial))";
            values.put("due", filter.after().due());
            values.put("serial", filter.after().serial());
        }
        List<Ticket> found = bind(database.createQuery("from Ticket t where " + where + order, Ticket.class), values)
                .setMaxResults(filter.size() + 1)
                .getResultList();
        boolean more = found.size() > filter.size();
        List<Ticket> shown = more ? found.subList(0, filter.size()) : found;
        Ticket last = more ? shown.get(shown.size() - 1) : null;
        return new QueuePart(
                shown.stream().map(TicketLine::of).toList(),
                last == null ? null : new QueueFilter.Cursor(last.due, last.serial).token(),
                total);
    }

    private String where(QueueFilter filter, Map<String, Object> values) {
        StringBuilder where = new StringBuilder("t.standing = :standing");
        values.put("standing", filter.standing());
        if (filter.step() != null) {
            where.append(" and t.step = :step");
            values.put("step", filter.step());
        }
        if ("-".equals(filter.assignee())) {
            where.append(" and t.assignee is null");
        } else if (filter.assignee() != null) {
            where.append(" and t.assignee = :assignee");
            values.put("assignee", filter.assignee());
        }
        if (filter.place() != null) {
            where.append(" and lower(t.place) = :place");
            values.put("place", filter.place().toLowerCase(Locale.ROOT));
        }
        if (filter.held() != null) {
            where.append(filter.held() ? " and t.followUp is not null" : " and t.followUp is null");
        }
        if (filter.overdue() != null) {
            where.append(filter.overdue() ? " and t.due < :now" : " and t.due >= :now");
            values.put("now", clock.instant());
        }
        String words = prefixQuery(filter.text(), " & ");
        if (!words.isEmpty()) {
            where.append(" and cast(sql('(search @@ to_tsquery(''simple'', ?))', :words) as Boolean) = true");
            values.put("words", words);
        }
        return where.toString();
    }

    /** Tickets whose words are most like these, other than the one given; at most five, the likest first. */
    public List<TicketLine> alike(String words, int exceptSerial, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        String query = prefixQuery(words, " | ");
        if (query.isEmpty()) {
            return List.of();
        }
        List<?> serials = database.createNativeQuery(
                        "select serial from ticket, to_tsquery('simple', ?1) q where search @@ q and serial <> ?2 and standing <> 'CANCELLED'"
                                + " and ts_rank(search, q) > 0.05 order by ts_rank(search, q) desc, serial desc limit 5")
                .setParameter(1, query)
                .setParameter(2, exceptSerial)
                .getResultList();
        return serials.stream()
                .map(serial -> TicketLine.of(tickets.findById((Integer) serial)))
                .toList();
    }

    /** Words of three letters or more, each as a prefix; nothing of the query syntax passes. */
    private static String prefixQuery(String text, String operator) {
        return Arrays.stream(text.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+"))
                .filter(word -> word.length() >= (operator.contains("|") ? 4 : 1))
                .map(TicketLook::beginning)
                .distinct()
                .limit(12)
                .map(word -> "'" + word + "':*")
                .collect(Collectors.joining(operator));
    }

    /** The database refuses a word of more than 2046 bytes; as a prefix, the beginning finds no less. */
    private static String beginning(String word) {
        int most = 100;
        return word.codePointCount(0, word.length()) <= most
                ? word
                : word.substring(0, word.offsetByCodePoints(0, most));
    }

    private static <T> TypedQuery<T> bind(TypedQuery<T> query, Map<String, Object> values) {
        values.forEach(query::setParameter);
        return query;
    }

    /** Places and devices named before, for the lists to choose from. */
    public List<String> known(String column, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        String field = column.equals("place") ? "t.place" : "t.device";
        return database.createQuery("select distinct " + field + " from Ticket t order by " + field, String.class)
                .setMaxResults(200)
                .getResultList();
    }
}
