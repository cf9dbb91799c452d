package org.benchtrail.audit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.benchtrail.core.audit.AuditAct.AddendumClosed;
import org.benchtrail.core.audit.AuditAct.Marked;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.AuditLot.Review;
import org.benchtrail.core.audit.AuditLot.Turn;
import org.benchtrail.core.audit.LotResult;
import org.benchtrail.core.audit.Mark;
import org.benchtrail.core.audit.ReviewSheet;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.DefectClass;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.Option;
import org.benchtrail.site.SiteBook;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.ticket.record.RecordView;
import org.jspecify.annotations.Nullable;

/** What the pages of one review show, each read in one transaction. */
@ApplicationScoped
@Transactional
class ReviewQueries {
    private static final String ANOTHER = "another person";

    private final LotRows rows;
    private final AuditedTickets tickets;
    private final SiteBook site;
    private final ReviewCoaching coaching;
    private final Clock clock;

    ReviewQueries(LotRows rows, AuditedTickets tickets, SiteBook site, ReviewCoaching coaching, Clock clock) {
        this.coaching = coaching;
        this.rows = rows;
        this.tickets = tickets;
        this.site = site;
        this.clock = clock;
    }

    /**
     * A review as its reviewer sees it; as anybody who reviews does, once no review of the ticket is open any more.
     *
     * @param asked code of the requirement to show; empty for the next that is not marked
     * @throws NotFound if it was given to nobody, or is not that viewer's to read
     */
    ReviewView review(String id, Turn turn, String asked, Actor viewer, ZoneId zone) {
        Permissions.require(Permission.REVIEW, viewer);
        AuditLot lot = rows.lot(id);
        Review review = lot.review(turn.ticket(), turn.turn())
                .filter(r -> r.reviewer().equals(viewer.account()) || lot.isReadable(turn.ticket()))
                .orElseThrow(() -> new NotFound("review of ticket " + turn.ticket() + " that is yours to read"));
        AuditedTickets.Frozen frozen = tickets.frozen(lot.item(turn.ticket()).orElseThrow(), viewer);
        ReviewSheet sheet = frozen.review();
        Viewing viewing = viewing(frozen, viewer, zone);
        Optional<ReviewSheet.Row> now = now(review, sheet, asked);
        return new ReviewView(
                id,
                turn.ticket(),
                turn.turn(),
                frozen.sheet().opened().title(),
                frozen.wentOn(),
                review.despite(),
                review.signed(),
                review.marks().size(),
                sheet.rows().stream()
                        .map(row -> new ReviewView.Row(
                                row.code(),
                                row.requirement().step().title(),
                                row.requirement().title(),
                                ReviewView.words(review.marks(), row.code()),
                                remark(review.marks().get(row.code())),
                                now.filter(n -> n == row).isPresent()))
                        .toList(),
                now.map(row -> shown(row, viewing)).orElse(null),
                review.signed() ? List.of() : notAsked(sheet.open(review)),
                SignalViews.shown(lot, turn.ticket(), rows),
                review.signed()
                        ? RecordView.of(frozen.traced(), viewing)
                        : RecordView.closed(frozen.traced(), viewing));
    }

    private static List<ReviewView.NotAsked> notAsked(List<ReviewSheet.Row> open) {
        return open.stream()
                .filter(row -> !row.unasked().isEmpty())
                .map(row -> new ReviewView.NotAsked(row.requirement().title(), row.unasked()))
                .toList();
    }

    private static String remark(@Nullable Marked marked) {
        return marked == null ? "" : marked.remark();
    }

    private static Optional<ReviewSheet.Row> now(Review review, ReviewSheet sheet, String asked) {
        if (review.signed()) {
            return Optional.empty();
        }
        return sheet.row(asked).or(() -> sheet.open(review).stream().findFirst());
    }

    private static ReviewView.Now shown(ReviewSheet.Row row, Viewing viewing) {
        Map<Integer, StandingFact<?>> facts = new HashMap<>();
        viewing.sheet().facts().forEach(f -> facts.put(f.entry(), f));
        return new ReviewView.Now(
                row.code(),
                row.requirement().title(),
                row.unasked().isEmpty() ? gate(row.gate()) : "The gate did not ask for it: " + row.unasked(),
                row.question().question(),
                row.question().usual().name(),
                row.cited().stream()
                        .map(e -> viewing.line(Objects.requireNonNull(facts.get(e))))
                        .toList(),
                ReviewView.marks(),
                Arrays.stream(DefectClass.values())
                        .filter(c -> c.insteadOf(row.question().usual()))
                        .map(c -> new Option(c.name(), c.words()))
                        .toList());
    }

    private static String gate(Requirement.State state) {
        return switch (state) {
            case MET -> "The gate found it answered.";
            case WAIVED -> "It was waived.";
            case MISSING -> "The gate found it open.";
        };
    }

    /** What marks a requirement got, and what to fill a form for it with. */
    Optional<Marked> marked(String id, Turn turn, String requirement) {
        return rows.lot(id)
                .review(turn.ticket(), turn.turn())
                .map(r -> r.marks().get(requirement));
    }

    /** People stand by the part that they had, so that the work is judged and not the person. */
    private Viewing viewing(AuditedTickets.Frozen frozen, Actor viewer, ZoneId zone) {
        JobSheet sheet = frozen.sheet();
        Map<String, String> parts = new Parts();
        for (String account : RecordView.accounts(frozen.traced())) {
            boolean assignee = account.equals(sheet.course().assignee());
            parts.put(account, assignee ? "assignee" : sheet.isJudge(account) ? "who judged it" : part(sheet, account));
        }
        return new Viewing(
                sheet,
                viewer,
                zone,
                clock.instant(),
                frozen.policy(),
                site.history().workingTime(),
                parts);
    }

    private static String part(JobSheet sheet, String account) {
        return sheet.isHand(account) ? "another who worked on it" : ANOTHER;
    }

    /** People's parts by account. Whom an entry names although they did nothing, such as who was offered the ticket, is folded as well. */
    private static final class Parts extends HashMap<String, String> {
        private static final long serialVersionUID = 1L;

        @Override
        public String getOrDefault(Object account, String otherwise) {
            return account.equals(Stamp.SERVER) ? otherwise : super.getOrDefault(account, ANOTHER);
        }
    }

    /** A signed review as those read it who did the work. */
    public record Signed(String lot, String ticket, String title, List<Line> lines, List<Asked> asked) {
        /** How many of what was asked have no answer yet. */
        public long open() {
            return asked.stream().filter(Asked::isOpen).count();
        }
    }

    /** @param asked an addendum that was asked for, or empty */
    public record Line(String title, String mark, String remark, boolean fault) {}

    /**
     * @param code of the requirement that it is about
     * @param closed why nobody waits for it any more; empty while somebody does
     */
    public record Asked(
            String code,
            String title,
            String words,
            String due,
            @Nullable Integer entry,
            String closed) {
        public boolean isOpen() {
            return entry == null && closed.isEmpty();
        }
    }

    /** @param signed reviews of tickets that the viewer worked on */
    public record OwnReviews(List<Signed> signed, ReviewCoaching.Own coaching) {}

    OwnReviews ofOwnWork(Actor viewer, ZoneId zone) {
        List<ReviewCoaching.Found> works = coaching.works(viewer);
        List<Signed> signed = works.stream()
                .map(w -> signed(w, viewer, zone))
                .sorted(Comparator.comparing(Signed::lot).reversed().thenComparing(Signed::ticket))
                .toList();
        return new OwnReviews(signed, coaching.own(works, viewer, zone));
    }

    private Signed signed(ReviewCoaching.Found found, Actor viewer, ZoneId zone) {
        AuditLot lot = found.work().lot();
        String ticket = found.work().ticket();
        List<Line> lines = LotResult.counting(lot, ticket).stream()
                .map(m -> new Line(
                        LotViews.title(m.requirement()),
                        LotViews.words(m),
                        m.remark(),
                        m.mark() == Mark.NOT_SATISFIED || m.mark() == Mark.CANNOT_TELL))
                .toList();
        List<Asked> asked = rows.addenda(lot.id()).stream()
                .filter(a -> a.askedOf().equals(viewer.account()) && a.isAbout(ticket, a.requirement()))
                .map(a -> new Asked(
                        a.requirement(),
                        LotViews.title(a.requirement()),
                        words(lot, ticket, a),
                        Moments.text(a.due(), zone),
                        a.entry(),
                        lot.addendumClosed(ticket, a.requirement())
                                .map(AddendumClosed::remark)
                                .orElse("")))
                .toList();
        return new Signed(lot.id(), ticket, found.title(), lines, asked);
    }

    private static String words(AuditLot lot, String ticket, LotRows.AddendumRow row) {
        return lot.addendaAsked().stream()
                .filter(a -> a.ticket().equals(ticket) && a.requirement().equals(row.requirement()))
                .map(a -> a.remark())
                .findFirst()
                .orElse("");
    }
}
