package org.benchtrail.learning;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiConsumer;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.CauseCategory;
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
import org.benchtrail.platform.RecordBroken;
import org.benchtrail.ticket.SiteReader;
import org.benchtrail.ticket.TicketQueries;
import org.jspecify.annotations.Nullable;

/** What a supervisor does with closed tickets. Nothing here changes a figure: that takes a new version, see {@link LearnedFigures}. */
@ApplicationScoped
@Transactional
public class LearningActs {
    private static final int MOST_AT_ONCE = 200;
    private static final int LONGEST_REASON = 500;

    private final LearningCases cases;
    private final TicketQueries tickets;
    private final Catalogues catalogues;
    private final SiteReader reader;
    private final Clock clock;

    LearningActs(LearningCases cases, TicketQueries tickets, Catalogues catalogues, SiteReader reader, Clock clock) {
        this.cases = cases;
        this.tickets = tickets;
        this.catalogues = catalogues;
        this.reader = reader;
        this.clock = clock;
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
        WaitingPlace place = WaitingPlace.parse(after);
        List<LearningCase> found = cases.waiting(place.closed(), place.id(), most + 1);
        List<LearningCase> page = found.size() > most ? found.subList(0, most) : found;
        List<CauseCategory> catalogue = catalogue();
        LearningCase last = found.size() > most ? page.get(most - 1) : null;
        return new WaitingPart(
                page.stream().map(row -> view(row, catalogue, actor)).toList(),
                last == null ? null : new WaitingPlace(last.closedAt, last.id()).text(),
                cases.count(CaseState.WAITING));
    }

    /** Where a stretch ended. */
    private record WaitingPlace(Instant closed, long id) {
        static WaitingPlace parse(@Nullable String text) {
            if (text == null || text.isEmpty()) {
                return new WaitingPlace(Instant.EPOCH, 0);
            }
            int dash = text.lastIndexOf('_');
            try {
                Instant closed = Instant.parse(text.substring(0, Math.max(0, dash)));
                if (closed.isBefore(Instant.EPOCH) || closed.isAfter(Instant.parse("9999-12-31T00:00:00Z"))) {
                    throw new Invalid("after", "Begin at the first page: nothing was closed then.");
                }
                return new WaitingPlace(closed, Long.parseLong(text.substring(dash + 1)));
            } catch (DateTimeParseException | NumberFormatException e) {
                throw new Invalid("after", "Begin at the first page: this place in the list is not known.");
            }
        }

        String text() {
            return closed + "_" + id;
        }
    }

    private WaitingView view(LearningCase row, List<CauseCategory> catalogue, Actor actor) {
        try {
            TicketQueries.Whole ticket = tickets.ticket(row.number(), actor);
            WaitingView view = view(row, ticket.sheet(), catalogue, actor);
            return ticket.fault().isEmpty() ? view : view.keptBack(ticket.fault());
        } catch (RecordBroken e) {
            return new WaitingView(
                    row.number().toString(), "", row.closedAt, "", "", null, "", 0, String.valueOf(e.getMessage()));
        }
    }

    private WaitingView view(LearningCase row, JobSheet sheet, List<CauseCategory> catalogue, Actor actor) {
        CauseNamed named =
                sheet.latest(CauseNamed.class).map(StandingFact::fact).orElse(null);
        TicketCase made = null;
        String obstacle;
        try {
            made = CaseOfTicket.of(sheet, catalogue, reader);
            obstacle = involvement(sheet, actor)
                    .map(did -> "You " + did + " this ticket: another supervisor has to judge it.")
                    .orElse(null);
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

    /** What this person did on the ticket, so that somebody else has to judge it; empty if nothing. */
    private static Optional<String> involvement(JobSheet sheet, Actor actor) {
        if (sheet.isHand(actor.account())) {
            return Optional.of("worked on");
        }
        return sheet.isJudge(actor.account())
                ? Optional.of("waived, approved or signed something on")
                : Optional.empty();
    }

    private List<CauseCategory> catalogue() {
        return catalogues.inForce().figures().values().stream()
                .map(Learned::category)
                .toList();
    }

    /**
     * Accepts tickets as cases, all or none. One that was withdrawn or left out before may be accepted after all.
     *
     * @throws Invalid with a sentence for every ticket that cannot be accepted, or not by this person
     * @throws RecordBroken if the record of one does not hold: nothing is learned from it, nor from those sent with it
     */
    public List<CaseView> accept(Collection<TicketNumber> numbers, Actor actor) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        requireSome(numbers);
        List<CauseCategory> catalogue = catalogue();
        Map<TicketNumber, JobSheet> sheets = soundSheets(numbers, actor);
        return judge(numbers, actor, (number, row) -> {
            require(row.state != CaseState.ACCEPTED, number, "is accepted already.");
            JobSheet sheet = Objects.requireNonNull(sheets.get(number));
            require(row.closedAt.equals(sheet.course().closed()), number, "was opened again since.");
            involvement(sheet, actor).ifPresent(did -> {
                throw refused(number, "is one you " + did + ": another supervisor has to judge it.");
            });
            TicketCase made = CaseOfTicket.of(sheet, catalogue, reader);
            Instant now = clock.instant();
            row.accept(made, actor.account(), now);
            cases.note(new CaseNote(now, actor.account(), "accepted", number, made.cause()));
        });
    }

    /** Read before anything is changed, since an alarm that is raised here stays. */
    private Map<TicketNumber, JobSheet> soundSheets(Collection<TicketNumber> numbers, Actor actor) {
        Map<TicketNumber, JobSheet> sheets = new HashMap<>();
        for (TicketNumber number : inOneOrder(numbers)) {
            if (cases.latest(number).isPresent()) {
                sheets.put(number, tickets.sound(number, actor));
            }
        }
        return sheets;
    }

    /** Leaves tickets out that teach nothing. */
    public List<CaseView> leaveOut(Collection<TicketNumber> numbers, String reason, Actor actor) {
        return judge(numbers, actor, (number, row) -> {
            requireReason(reason);
            require(row.state == CaseState.WAITING, number, "is judged already: it is " + row.state.words() + ".");
            row.leaveOut(PlainText.line(reason));
            cases.note(new CaseNote(clock.instant(), actor.account(), "left out", number, PlainText.line(reason)));
        });
    }

    /** Takes accepted cases back; the next learning does without them. */
    public List<CaseView> withdraw(Collection<TicketNumber> numbers, String reason, Actor actor) {
        return judge(numbers, actor, (number, row) -> {
            requireReason(reason);
            require(row.state == CaseState.ACCEPTED, number, "is not accepted: it is " + row.state.words() + ".");
            Instant now = clock.instant();
            row.withdraw(PlainText.line(reason), actor.account(), now);
            cases.note(new CaseNote(now, actor.account(), "withdrawn", number, PlainText.line(reason)));
        });
    }

    /** Does one act on each ticket; everything that stands in the way is told at once. */
    private List<CaseView> judge(
            Collection<TicketNumber> numbers, Actor actor, BiConsumer<TicketNumber, LearningCase> act) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        requireSome(numbers);
        List<Invalid.Problem> problems = new ArrayList<>();
        List<CaseView> judged = new ArrayList<>();
        for (TicketNumber number : inOneOrder(numbers)) {
            try {
                LearningCase row =
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

    private static void requireSome(Collection<TicketNumber> numbers) {
        new Invalid.Collector()
                .require(!numbers.isEmpty(), "tickets", "Tick at least one ticket.")
                .require(numbers.size() <= MOST_AT_ONCE, "tickets", "Judge at most " + MOST_AT_ONCE + " at once.")
                .throwIfAny();
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
