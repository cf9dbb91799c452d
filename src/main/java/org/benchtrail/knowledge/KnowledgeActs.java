package org.benchtrail.knowledge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Stale;

/** What people do to known causes. Each act renews the row and adds an entry to its history, or leaves no trace. */
@ApplicationScoped
public class KnowledgeActs {
    private final CauseRows causes;
    private final CauseAuthors authors;
    private final Confirmations confirmations;
    private final ClosedCases cases;
    private final Clock clock;

    KnowledgeActs(CauseRows causes, CauseAuthors authors, Confirmations confirmations, ClosedCases cases, Clock clock) {
        this.causes = causes;
        this.authors = authors;
        this.confirmations = confirmations;
        this.cases = cases;
        this.clock = clock;
    }

    /**
     * Does one act.
     *
     * @param version that the actor has seen
     * @return the number of the known cause to look at afterwards
     * @throws Stale if somebody else changed it meanwhile
     * @throws Invalid if the act does not fit how it stands
     */
    @Transactional
    public long perform(long id, int version, KnowledgeAct act, Actor actor) {
        Permissions.require(act.permission(), actor);
        if (act instanceof KnowledgeAct.Merge merge && merge.into() < id) {
            // always the lower number first, so that two merges the other way round do not lock each other out
            causes.locked(merge.into());
        }
        KnownCause cause = causes.locked(id);
        if (cause.version != version) {
            throw new Stale(CauseJson.of(cause));
        }
        // the sealed list of acts is complete: an act without a branch here would be a fault of ours
        if (act instanceof KnowledgeAct.Confirm confirm) {
            confirm(cause, confirm, actor);
        } else if (act instanceof KnowledgeAct.RaiseFlag flag) {
            flag(cause, flag, actor);
        } else if (act instanceof KnowledgeAct.Correct correct) {
            correct(cause, correct, actor);
        } else if (act instanceof KnowledgeAct.Retire retire) {
            retire(cause, retire, actor);
        } else if (act instanceof KnowledgeAct.BringBack back) {
            bringBack(cause, back, actor);
        } else if (act instanceof KnowledgeAct.Merge merge) {
            return merge(cause, merge, actor);
        } else if (act instanceof KnowledgeAct.Split split) {
            return split(cause, split, actor);
        }
        return id;
    }

    private void confirm(KnownCause cause, KnowledgeAct.Confirm act, Actor actor) {
        requireShown(cause);
        new Invalid.Collector()
                .require(
                        !authors.any(cause, actor.account()::equals),
                        "confirm",
                        "You wrote words of this one, or worked on the ticket that it came from: somebody else has to find it true.")
                .require(
                        !confirmations.confirmers(cause.number()).contains(actor.account()),
                        "confirm",
                        "You confirmed this one already: find it true on another ticket, or leave it to somebody else.")
                .throwIfAny();
        CauseImage before = cause.image();
        Instant now = clock.instant();
        confirmations.add(cause, null, actor.account(), now, false);
        cause.state = Confirmations.settled(cause);
        causes.changed(cause, before, ground(actor, now, CauseEvent.CONFIRMED, String.valueOf(act.note())));
    }

    private void flag(KnownCause cause, KnowledgeAct.RaiseFlag act, Actor actor) {
        requireShown(cause);
        CauseImage before = cause.image();
        cause.state = CauseState.FLAGGED;
        causes.changed(cause, before, ground(actor, clock.instant(), CauseEvent.FLAGGED, act.reason()));
    }

    private void correct(KnownCause cause, KnowledgeAct.Correct act, Actor actor) {
        requireShown(cause);
        if (cause.state == CauseState.CONFIRMED) {
            Permissions.require(Permission.CURATE_KNOWLEDGE, actor);
        }
        CauseImage before = cause.image();
        if (act.text().equals(cause.text())) {
            new Invalid.Collector()
                    .require(
                            cause.state == CauseState.FLAGGED,
                            "correct",
                            "Nothing was changed, so there is nothing to keep.")
                    .throwIfAny();
            cause.state = Confirmations.settled(cause);
        } else {
            cause.write(act.text());
            authors.add(cause, Set.of(actor.account()));
            confirmations.beginAnew(cause);
            cause.state = CauseState.DRAFT;
        }
        causes.changed(
                cause, before, ground(actor, clock.instant(), CauseEvent.CORRECTED, String.valueOf(act.reason())));
    }

    private void retire(KnownCause cause, KnowledgeAct.Retire act, Actor actor) {
        requireShown(cause);
        CauseImage before = cause.image();
        cause.state = CauseState.RETIRED;
        causes.changed(cause, before, ground(actor, clock.instant(), CauseEvent.RETIRED, act.reason()));
    }

    private void bringBack(KnownCause cause, KnowledgeAct.BringBack act, Actor actor) {
        if (cause.state != CauseState.RETIRED) {
            throw new Invalid("bring-back", "It is not retired.");
        }
        CauseImage before = cause.image();
        cause.mergedInto = null;
        cause.state = Confirmations.settled(cause);
        causes.changed(cause, before, ground(actor, clock.instant(), CauseEvent.BROUGHT_BACK, act.reason()));
    }

    private long merge(KnownCause cause, KnowledgeAct.Merge act, Actor actor) {
        requireShown(cause);
        if (act.into() == cause.number()) {
            throw new Invalid("into", "Name another known cause: this one cannot be merged into itself.");
        }
        KnownCause target = causes.locked(act.into());
        requireShown(target);
        CauseImage before = cause.image();
        CauseImage targetBefore = target.image();
        Instant now = clock.instant();
        cases.move(cause, target);
        confirmations.move(cause, target);
        cause.state = CauseState.RETIRED;
        cause.mergedInto = target.number();
        if (target.state == CauseState.DRAFT) {
            target.state = Confirmations.settled(target);
        }
        causes.changed(cause, before, ground(actor, now, CauseEvent.MERGED, act.reason()));
        String taken = "Number " + cause.number() + ", " + cause.title + ". " + act.reason();
        causes.changed(target, targetBefore, ground(actor, now, CauseEvent.TOOK_IN, taken));
        return target.number();
    }

    private long split(KnownCause cause, KnowledgeAct.Split act, Actor actor) {
        requireShown(cause);
        List<Integer> moved = Objects.requireNonNullElse(act.cases(), List.<String>of()).stream()
                .map(number -> TicketNumber.parse(number).serial())
                .toList();
        CauseImage before = cause.image();
        Instant now = clock.instant();
        KnownCause second = causes.add(
                new KnownCause(act.text(), null, actor.account(), now),
                ground(
                        actor,
                        now,
                        CauseEvent.SPLIT_OFF,
                        "Number " + cause.number() + ", " + cause.title + ". " + act.reason()));
        authors.add(second, Set.of(actor.account()));
        for (int ticket : moved) {
            cases.move(ticket, cause, second);
            confirmations.move(ticket, second);
        }
        confirmations.recount(cause);
        CauseImage alone = second.image();
        confirmations.recount(second);
        if (second.confirmations > 0) {
            second.state = Confirmations.settled(second);
            causes.changed(second, alone, ground(actor, now, CauseEvent.CONFIRMED, "By the cases that came with it."));
        }
        String made = "The second one is number " + second.number() + ", " + second.title + ". " + act.reason();
        causes.changed(cause, before, ground(actor, now, CauseEvent.SPLIT, made));
        return second.number();
    }

    private static void requireShown(KnownCause cause) {
        if (cause.state == CauseState.RETIRED) {
            throw new Invalid("state", "Number " + cause.number() + " is retired: bring it back first.");
        }
    }

    private static CauseHistory.Ground ground(Actor actor, Instant at, CauseEvent what, String reason) {
        return new CauseHistory.Ground(actor.account(), at, what, reason, null);
    }
}
