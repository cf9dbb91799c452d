package org.benchtrail.learning;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.function.BiConsumer;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Category;
import org.benchtrail.core.diagnosis.Learned;
import org.benchtrail.core.learning.CaseOfTicket;
import org.benchtrail.core.learning.TicketCase;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.ticket.TicketLook;
import org.jspecify.annotations.Nullable;

/** What a supervisor does with closed tickets. Nothing here changes a figure: that takes a new version, see {@link ShopFigures}. */
@ApplicationScoped
@Transactional
public class LearningActs {
    private static final int MOST_AT_ONCE = 200;
    private static final int LONGEST_REASON = 500;

    private final ShopCases cases;
    private final TicketLook tickets;
    private final Catalogues catalogues;

    LearningActs(ShopCases cases, TicketLook tickets, Catalogues catalogues) {
        this.cases = cases;
        this.tickets = tickets;
        this.catalogues = catalogues;
    }

    /**
     * A stretch of what waits.
     *
     * @param after where the stretch before ended; null for the beginning
     * @param size 1 to 200
     */
    public WaitingPart waiting(@Nullable String after, int size, Actor actor) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        int most = Math.max(1, Math.min(MOST_AT_ONCE, size));
        Place place = Place.parse(after);
        List<ShopCase> found = cases.waiting(place.closed(), place.id(), most + 1);
        List<ShopCase> page = found.size() > most ? found.subList(0, most) : found;
        List<Category> catalogue = catalogue();
        ShopCase last = found.size() > most ? page.get(most - 1) : null;
        return new WaitingPart(
                page.stream().map(row -> view(row, catalogue, actor)).toList(),
                last == null ? null : new Place(last.closedAt, last.id()).text(),
                cases.count(CaseState.WAITING));
    }

    /** Where a stretch ended. */
    private record Place(Instant closed, long id) {
        static Place parse(@Nullable String text) {
            if (text == null || text.isEmpty()) {
                return new Place(Instant.EPOCH, 0);
            }
            int dash = text.lastIndexOf('_');
            try {
                Instant closed = Instant.parse(text.substring(0, Math.max(0, dash)));
                if (closed.isBefore(Instant.EPOCH) || closed.isAfter(Instant.parse("9999-12-31T00:00:00Z"))) {
                    throw new Invalid("after", "Begin at the first page: nothing was closed then.");
                }
                return new Place(closed, Long.parseLong(text.substring(dash + 1)));
            } catch (DateTimeParseException | NumberFormatException e) {
                throw new Invalid("after", "Begin at the first page: this place in the list is not known.");
            }
        }

        String text() {
            return closed + "_" + id;
        }
    }

    private WaitingView view(ShopCase row, List<Category> catalogue, Actor actor) {
        TicketLook.Whole ticket = tickets.ticket(row.number(), actor);
        JobSheet sheet = ticket.sheet();
        CauseNamed named =
                sheet.latest(CauseNamed.class).map(StandingFact::fact).orElse(null);
        TicketCase made = null;
        String obstacle;
        try {
            made = CaseOfTicket.of(sheet, catalogue);
            obstacle = CaseOfTicket.authors(sheet).contains(actor.account())
                    ? "You worked on this ticket: another supervisor has to judge it."
                    : null;
        } catch (Invalid e) {
            obstacle = e.problems().get(0).sentence();
        }
        return new WaitingView(
                row.number().toString(),
                sheet.opened().title(),
                row.closedAt,
                sheet.course().assignee() == null ? "" : sheet.course().assignee(),
                named == null ? "" : named.cause(),
                made == null ? null : made.cause(),
                named == null ? "" : named.sureness().words(),
                made == null ? 0 : made.seen().size(),
                obstacle);
    }

    private List<Category> catalogue() {
        return catalogues.inForce().figures().values().stream()
                .map(Learned::category)
                .toList();
    }

    /**
     * Accepts tickets as cases, all or none. One that was withdrawn or left out before may be accepted after all.
     *
     * @throws Invalid with a sentence for every ticket that cannot be accepted, or not by this person
     */
    public List<CaseView> accept(Collection<TicketNumber> numbers, Actor actor) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        List<Category> catalogue = catalogue();
        return judge(numbers, actor, (number, row) -> {
            require(row.state != CaseState.ACCEPTED, number, "is accepted already.");
            JobSheet sheet = tickets.ticket(number, actor).sheet();
            require(row.closedAt.equals(sheet.course().closed()), number, "was opened again since.");
            require(
                    !CaseOfTicket.authors(sheet).contains(actor.account()),
                    number,
                    "is one you worked on: another supervisor has to judge it.");
            row.accept(CaseOfTicket.of(sheet, catalogue), actor.account(), cases.now());
            cases.note(actor.account(), "accepted", number, String.valueOf(row.cause));
        });
    }

    /** Leaves tickets out that teach nothing. */
    public List<CaseView> leaveOut(Collection<TicketNumber> numbers, String reason, Actor actor) {
        return judge(numbers, actor, (number, row) -> {
            requireReason(reason);
            require(row.state == CaseState.WAITING, number, "is judged already: it is " + row.state.words() + ".");
            row.leaveOut(PlainText.line(reason));
            cases.note(actor.account(), "left out", number, PlainText.line(reason));
        });
    }

    /** Takes accepted cases back; the next learning does without them. */
    public List<CaseView> withdraw(Collection<TicketNumber> numbers, String reason, Actor actor) {
        return judge(numbers, actor, (number, row) -> {
            requireReason(reason);
            require(row.state == CaseState.ACCEPTED, number, "is not accepted: it is " + row.state.words() + ".");
            row.withdraw(PlainText.line(reason), actor.account(), cases.now());
            cases.note(actor.account(), "withdrawn", number, PlainText.line(reason));
        });
    }

    /** Does one act on each ticket; everything that stands in the way is told at once. */
    private List<CaseView> judge(
            Collection<TicketNumber> numbers, Actor actor, BiConsumer<TicketNumber, ShopCase> act) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        new Invalid.Collector()
                .require(!numbers.isEmpty(), "tickets", "Tick at least one ticket.")
                .require(numbers.size() <= MOST_AT_ONCE, "tickets", "Judge at most " + MOST_AT_ONCE + " at once.")
                .throwIfAny();
        List<Invalid.Problem> problems = new ArrayList<>();
        List<CaseView> judged = new ArrayList<>();
        for (TicketNumber number : inOneOrder(numbers)) {
            try {
                ShopCase row =
                        cases.latest(number).orElseThrow(() -> refused(number, "is not closed, or not there at all."));
                act.accept(number, row);
                judged.add(CaseView.of(row));
            } catch (Invalid e) {
                e.problems().forEach(p -> addOnce(problems, named(p, number)));
            }
        }
        if (!problems.isEmpty()) {
            throw new Invalid(problems);
        }
        return judged;
    }

    /** Everybody locks tickets in the same order, so that two supervisors never wait for each other. */
    private static List<TicketNumber> inOneOrder(Collection<TicketNumber> numbers) {
        return numbers.stream()
                .distinct()
                .sorted(Comparator.comparingInt(TicketNumber::serial))
                .toList();
    }

    private static void addOnce(List<Invalid.Problem> problems, Invalid.Problem problem) {
        if (!problems.contains(problem)) {
            problems.add(problem);
        }
    }

    private static Invalid.Problem named(Invalid.Problem p, TicketNumber number) {
        return p.field().equals("ticket")
                ? new Invalid.Problem("tickets", "Ticket " + number + ": " + p.sentence())
                : p;
    }

    private static void require(boolean holds, TicketNumber number, String otherwise) {
        if (!holds) {
            throw refused(number, otherwise);
        }
    }

    private static Invalid refused(TicketNumber number, String what) {
        return new Invalid("tickets", "Ticket " + number + " " + what);
    }

    private static void requireReason(String reason) {
        String line = PlainText.line(reason);
        boolean told = !line.isEmpty() && line.length() <= LONGEST_REASON && PlainText.isText(line);
        new Invalid.Collector()
                .require(told, "reason", "Say why in one line, for those who look at it later.")
                .throwIfAny();
    }

    /** Judged cases in that state, the newest first. */
    public List<CaseView> judged(CaseState state, long before, int most, Actor actor) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        return cases.judged(state, before, most).stream().map(CaseView::of).toList();
    }
}
