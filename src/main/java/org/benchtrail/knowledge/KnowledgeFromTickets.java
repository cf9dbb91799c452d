package org.benchtrail.knowledge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Lesson;
import org.benchtrail.core.method.document.Sureness;
import org.benchtrail.ticket.TicketChanged;
import org.benchtrail.ticket.WordsErased;
import org.jspecify.annotations.Nullable;

/**
 * Writes knowledge while tickets are closed: nobody has to write it a second time, and using it again is its review. The
 * practice is that of knowledge-centred service as published.
 */
@ApplicationScoped
class KnowledgeFromTickets {
    private final CauseRows causes;
    private final CauseAuthors authors;
    private final Confirmations confirmations;
    private final ClosedCases cases;
    private final FindingWords words;

    KnowledgeFromTickets(
            CauseRows causes,
            CauseAuthors authors,
            Confirmations confirmations,
            ClosedCases cases,
            FindingWords words) {
        this.causes = causes;
        this.authors = authors;
        this.confirmations = confirmations;
        this.cases = cases;
        this.words = words;
    }

    /** Inside the transaction of the act: both stand, or neither. */
    void follow(@Observes TicketChanged changed) {
        for (Entry entry : changed.entries()) {
            check(entry.fact());
            if (entry.fact() instanceof Closed) {
                closed(changed, entry.stamp());
            } else if (entry.fact() instanceof Reopened reopened) {
                reopened(changed.number(), entry.stamp(), reopened.reason());
            }
        }
    }

    /** The case of a ticket forgets words that are erased; a known cause that was made of them has its own, and stays. */
    void forget(@Observes WordsErased gone) {
        gone.sheet()
                .latest(CauseNamed.class)
                .ifPresent(named -> cases.rewrite(gone.number(), gone.sheet(), named.fact()));
        cases.forget(gone.words());
    }

    /** @throws Invalid if a known cause is named that is not there, or not shown any more */
    private void check(Fact fact) {
        if (fact instanceof Corrected corrected && corrected.replacement() != null) {
            check(corrected.replacement());
        } else if (fact instanceof KnowledgeLinked linked && linked.known() != null) {
            Optional<KnownCause> named = causes.findByIdOptional(linked.known());
            if (named.isEmpty() || (named.get().state == CauseState.RETIRED && named.get().mergedInto == null)) {
                throw new Invalid("knowledge.known", "There is no known cause " + linked.known() + " to confirm.");
            }
        }
    }

    private void closed(TicketChanged changed, Stamp stamp) {
        Optional<CauseNamed> named =
                changed.sheet().latestOfRound(CauseNamed.class).map(n -> n.fact());
        if (named.isEmpty()) {
            return;
        }
        KnownCause known = changed.sheet()
                .latestOfRound(KnowledgeLinked.class)
                .map(n -> learned(changed, n.fact(), named.get(), stamp))
                .orElse(null);
        cases.put(
                changed.number(),
                changed.sheet(),
                named.get(),
                known == null ? null : known.number(),
                stamp.by(),
                stamp.at());
    }

    private @Nullable KnownCause learned(TicketChanged changed, KnowledgeLinked linked, CauseNamed named, Stamp stamp) {
        if (linked.learned() == Lesson.PROPOSED) {
            return proposed(changed, named, stamp);
        }
        if (linked.known() == null) {
            return null;
        }
        KnownCause known = causes.standing(linked.known());
        confirm(known, changed, named, stamp);
        return known;
    }

    /** A draft; if there is one of that name already, this is a further case of it. */
    private KnownCause proposed(TicketChanged changed, CauseNamed named, Stamp stamp) {
        int serial = changed.number().serial();
        CauseText draft = SheetDigest.draft(changed.sheet(), named, words);
        Optional<KnownCause> same = causes.named(draft.title(), draft.category());
        if (same.isPresent()) {
            KnownCause known = causes.locked(same.get().number());
            if (known.ticket != null && known.ticket == serial) {
                again(known, draft, changed, stamp);
            } else {
                confirm(known, changed, named, stamp);
            }
            return known;
        }
        KnownCause made = causes.add(
                new KnownCause(draft, serial, stamp.by(), stamp.at()),
                new CauseHistory.Ground(stamp.by(), stamp.at(), CauseEvent.PROPOSED, "", serial));
        authors.add(made, hands(changed, stamp));
        return made;
    }

    /** Its own ticket was opened again and came to the same end: what the second round adds is taken over. */
    private void again(KnownCause own, CauseText draft, TicketChanged ticket, Stamp stamp) {
        CauseImage before = own.image();
        if (own.confirmations == 0) {
            own.write(draft);
        }
        authors.add(own, hands(ticket, stamp));
        own.state = Confirmations.settled(own);
        String reason = "The ticket closed again with the same cause.";
        causes.changed(own, before, ground(stamp.by(), stamp.at(), CauseEvent.CORRECTED, reason, ticket.number()));
    }

    /** A ticket on which anybody worked who wrote the words is one more case of it, and no confirmation. */
    private void confirm(KnownCause known, TicketChanged ticket, CauseNamed named, Stamp stamp) {
        if (authors.any(known, who -> who.equals(stamp.by()) || ticket.sheet().isHand(who))) {
            return;
        }
        CauseImage before = known.image();
        boolean measured = named.sureness() == Sureness.MEASURED;
        confirmations.add(known, ticket.number().serial(), stamp.by(), stamp.at(), measured);
        if (known.state == CauseState.DRAFT) {
            known.state = Confirmations.settled(known);
        }
        causes.changed(known, before, ground(stamp.by(), stamp.at(), CauseEvent.CONFIRMED, "", ticket.number()));
    }

    /** All who worked on the ticket, and who closed it. */
    private static Set<String> hands(TicketChanged ticket, Stamp stamp) {
        Set<String> hands = new TreeSet<>(ticket.sheet().hands());
        hands.add(stamp.by());
        return hands;
    }

    /** What a ticket seemed to show when it closed no longer holds. */
    private void reopened(TicketNumber number, Stamp stamp, String reason) {
        cases.reopen(number);
        Optional<KnownCause> confirmed = confirmations.of(number.serial()).map(causes::locked);
        if (confirmed.isPresent()) {
            withdraw(confirmed.get(), number, stamp, reason);
        }
        causes.draftsOf(number.serial()).forEach(draft -> flag(draft, number, stamp, reason));
    }

    private void withdraw(KnownCause known, TicketNumber number, Stamp stamp, String reason) {
        CauseImage before = known.image();
        confirmations.withdraw(known, number.serial());
        if (known.state == CauseState.CONFIRMED) {
            known.state = Confirmations.settled(known);
        }
        causes.changed(known, before, ground(stamp.by(), stamp.at(), CauseEvent.WITHDRAWN, opened(reason), number));
    }

    private void flag(KnownCause draft, TicketNumber number, Stamp stamp, String reason) {
        CauseImage before = draft.image();
        draft.state = CauseState.FLAGGED;
        causes.changed(draft, before, ground(stamp.by(), stamp.at(), CauseEvent.FLAGGED, opened(reason), number));
    }

    private static String opened(String reason) {
        return "The ticket was opened again: " + reason;
    }

    private static CauseHistory.Ground ground(
            String who, Instant at, CauseEvent what, String reason, TicketNumber ticket) {
        return new CauseHistory.Ground(who, at, what, reason, ticket.serial());
    }
}
