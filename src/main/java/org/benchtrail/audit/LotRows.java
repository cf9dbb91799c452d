package org.benchtrail.audit;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.audit.AuditAct;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.AuditPlan;
import org.benchtrail.core.audit.Signal;
import org.benchtrail.core.audit.SignalKind;
import org.benchtrail.core.audit.SignalWorth;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;

/** The rows of audits; everything within the running transaction. */
@Startup
@ApplicationScoped
class LotRows {
    private final EntityManager database;
    private final SqlText text;

    LotRows(EntityManager database) {
        this.database = database;
        text = SqlText.of(LotRows.class)
                .having(
                        "state",
                        "overlapping",
                        "lock",
                        "unfinished",
                        "lots",
                        "concluded between",
                        "acts",
                        "append",
                        "renew",
                        "drop reviews",
                        "add review",
                        "ask addendum",
                        "answer addenda",
                        "close addendum",
                        "addenda",
                        "wanted",
                        "judges",
                        "accepted by",
                        "ended",
                        "before",
                        "last end",
                        "holders",
                        "open",
                        "reviews waiting",
                        "addenda waiting",
                        "reviewed lots of",
                        "add signals",
                        "signals",
                        "measure",
                        "worth",
                        "switched off",
                        "not accepted");
    }

    private Sql of(String statement) {
        return Sql.of(database, text.statement(statement));
    }

    void add(AuditPlan plan) {
        of("state")
                .with("id", plan.lot())
                .with("begins", plan.from())
                .with("ends", plan.until())
                .with("state", AuditLot.State.STATED.name())
                .run();
    }

    List<String> overlapping(Instant begins, Instant ends) {
        return of("overlapping").with("begins", begins).with("ends", ends).values(String.class);
    }

    /** Lets nobody else act on the lot until the transaction ends. */
    void lock(String id) {
        if (of("lock").with("id", id).values(String.class).isEmpty()) {
            throw new NotFound("lot " + id);
        }
    }

    /** @param stated whether it is to be frozen; else it is to be drawn */
    record Unfinished(String id, boolean stated) {}

    /** Lots that are to be frozen or drawn: whose period had ended by that moment. */
    List<Unfinished> unfinished(Instant ended) {
        return of("unfinished").with("ended", ended).rows(Unfinished.class);
    }

    /** The newest first. */
    List<String> lots() {
        return of("lots").values(String.class);
    }

    /** Concluded lots whose period ended in that one, the latest first, at most so many. */
    List<String> lotsBetween(Instant begins, Instant ends, int most) {
        return of("concluded between")
                .with("begins", begins)
                .with("ends", ends)
                .with("most", most)
                .values(String.class);
    }

    private record ActRow(long place, Instant at, String by, String what, String body, String remark) {}

    /** @throws NotFound if there is no such lot */
    AuditLot lot(String id) {
        List<AuditAct.Entry> acts = of("acts").with("lot", id).rows(ActRow.class).stream()
                .map(r -> new AuditAct.Entry(r.place(), r.at(), r.by(), ActJson.read(r.what(), r.body(), r.remark())))
                .toList();
        if (acts.isEmpty()) {
            throw new NotFound("lot " + id);
        }
        return AuditLot.of(id, acts);
    }

    void append(String lot, AuditAct.Entry entry) {
        of("append")
                .with("lot", lot)
                .with("place", entry.place())
                .with("at", entry.at())
                .with("by", entry.by())
                .with("what", AuditAct.name(entry.act().getClass()))
                .with("body", ActJson.body(entry.act()))
                .with("remark", entry.act().remark())
                .run();
    }

    /** Makes the images of a lot anew. */
    void renew(AuditLot lot) {
        boolean drawn = lot.state() == AuditLot.State.DRAWN;
        of("renew")
                .with("id", lot.id())
                .with("state", lot.state().name())
                .with("toGive", drawn ? Giving.open(lot).size() : 0)
                .with("toSettle", drawn ? lot.differences().size() : 0)
                .run();
    }

    void renewReviews(AuditLot lot) {
        of("drop reviews").with("lot", lot.id()).run();
        lot.reviews()
                .forEach(r -> of("add review")
                        .with("lot", lot.id())
                        .with("ticket", TicketNumber.parse(r.turn().ticket()).serial())
                        .with("turn", r.turn().turn())
                        .with("reviewer", r.reviewer())
                        .with("signed", r.signed())
                        .run());
    }

    /**
     * @param entry of the ticket that answers; null until there is one
     * @param closed whether nobody waits for it any more
     */
    record AddendumRow(
            int ticket,
            String requirement,
            String askedOf,
            Instant due,
            @Nullable Integer entry,
            boolean closed) {
        boolean isAbout(String number, String asked) {
            return requirement.equals(asked)
                    && new TicketNumber(ticket).toString().equals(number);
        }
    }

    void ask(String lot, AuditAct.AddendumAsked asked, String of) {
        of("ask addendum")
                .with("lot", lot)
                .with("ticket", TicketNumber.parse(asked.ticket()).serial())
                .with("requirement", asked.requirement())
                .with("askedOf", of)
                .with("due", asked.due())
                .run();
    }

    /** What was asked of that person about that requirement of that ticket, and is open, is answered by that entry. */
    void answered(TicketNumber ticket, String by, String requirement, int entry) {
        of("answer addenda")
                .with("ticket", ticket.serial())
                .with("by", by)
                .with("requirement", requirement)
                .with("entry", entry)
                .run();
    }

    /** Whether it was open until now; once the transaction ends nothing answers it any more. */
    boolean close(String lot, AddendumRow row) {
        return of("close addendum")
                        .with("lot", lot)
                        .with("ticket", row.ticket())
                        .with("requirement", row.requirement())
                        .run()
                == 1;
    }

    List<AddendumRow> addenda(String lot) {
        return of("addenda").with("lot", lot).rows(AddendumRow.class);
    }

    /**
     * An addendum that was asked for.
     *
     * @param written when it was; null if it was not
     */
    record WantedRow(
            String requirement,
            int ticket,
            Instant due,
            @Nullable Instant written,
            boolean countersigned) {}

    /** Of the lots that ended in a period. */
    List<WantedRow> wanted(Instant begins, Instant ends) {
        return of("wanted").with("begins", begins).with("ends", ends).rows(WantedRow.class);
    }

    List<String> judges(TicketNumber ticket) {
        return of("judges").with("ticket", ticket.serial()).values(String.class);
    }

    Set<String> acceptedBy(TicketNumber ticket) {
        return Set.copyOf(of("accepted by").with("ticket", ticket.serial()).values(String.class));
    }

    /** The last ending of a ticket within a period. */
    record Ended(int ticket, int entry, String hash, boolean incident) {}

    List<Ended> ended(Instant begins, Instant ends) {
        return of("ended").with("begins", begins).with("ends", ends).rows(Ended.class);
    }

    /** @param since end of the lot before; null if there is none */
    record Gap(@Nullable Instant since, long tickets) {}

    /** What ended before a lot begins and after the one before it ended. */
    Gap before(Instant begins) {
        return of("before").with("begins", begins).row(Gap.class).orElseThrow();
    }

    /** When the latest period that there is a lot of ends. */
    Optional<Instant> lastEnd() {
        return of("last end").values(Instant.class).stream().findFirst();
    }

    record Holder(String lot, String reviewer) {}

    /** Who has a review that is not signed, in lots that go on. */
    List<Holder> holders() {
        return of("holders").rows(Holder.class);
    }

    /** How many tickets were open at a moment, and since when the oldest. */
    record Open(long tickets, @Nullable Instant oldest) {}

    Open open(Instant ends) {
        return of("open").with("ends", ends).row(Open.class).orElseThrow();
    }

    record Waiting(long own, long toGive, long toSettle) {}

    Waiting waiting(String account) {
        return of("reviews waiting").with("account", account).row(Waiting.class).orElseThrow();
    }

    long addendaWaiting(String account) {
        return of("addenda waiting").with("account", account).value(Long.class);
    }

    record ReviewedOf(String lot, int ticket) {}

    /** The tickets that the person worked on and whose first review is signed. */
    List<ReviewedOf> reviewedOf(String account) {
        return of("reviewed lots of").with("account", account).rows(ReviewedOf.class);
    }

    /** Keeps what was seen when a lot was frozen. */
    void add(String lot, List<Signal> signals) {
        of("add signals")
                .with("lot", lot)
                .with(
                        "tickets",
                        signals.stream()
                                .map(s -> TicketNumber.parse(s.ticket()).serial())
                                .toArray(Integer[]::new))
                .with("kinds", signals.stream().map(s -> s.kind().name()).toArray(String[]::new))
                .with("details", signals.stream().map(Signal::detail).toArray(String[]::new))
                .run();
    }

    private record SignalRow(int ticket, String kind, String detail) {}

    /** Whoever asks sees to it that they are not shown before all marks of the lot are final. */
    List<Signal> signals(String lot) {
        return of("signals").with("lot", lot).rows(SignalRow.class).stream()
                .map(r -> new Signal(new TicketNumber(r.ticket()).toString(), SignalKind.valueOf(r.kind()), r.detail()))
                .toList();
    }

    void measured(String lot, SignalKind kind, SignalWorth worth) {
        of("measure")
                .with("lot", lot)
                .with("kind", kind.name())
                .with("hits", worth.hits())
                .with("marked", worth.with())
                .with("baseHits", worth.baseHits())
                .with("base", worth.base())
                .run();
    }

    private record WorthRow(String kind, long hits, long marked, long baseHits, long base) {}

    /** Over so many concluded lots, the latest. */
    Map<SignalKind, SignalWorth> worth(int lots) {
        return of("worth").with("lots", lots).rows(WorthRow.class).stream()
                .collect(Collectors.toMap(
                        r -> SignalKind.valueOf(r.kind()),
                        r -> new SignalWorth(r.hits(), r.marked(), r.baseHits(), r.base())));
    }

    Set<SignalKind> switchedOff() {
        return of("switched off").values(String.class).stream()
                .map(SignalKind::valueOf)
                .collect(Collectors.toSet());
    }

    /** Lots that were concluded as not accepted since the last plan was stated. */
    List<AuditLot> notAccepted() {
        return of("not accepted").values(String.class).stream().map(this::lot).toList();
    }
}
