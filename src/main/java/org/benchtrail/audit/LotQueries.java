package org.benchtrail.audit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.AuditLot.Turn;
import org.benchtrail.core.audit.AuditRules;
import org.benchtrail.core.audit.Outlook;
import org.benchtrail.core.audit.Stratum;
import org.benchtrail.core.audit.Take;
import org.benchtrail.core.method.Actor;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.NotFound;
import org.benchtrail.seal.Heads;
import org.benchtrail.seal.PaperHead;

/** What the pages of audits show, each read in one transaction. */
@ApplicationScoped
@Transactional
class LotQueries {
    private static final long LOOKED_BACK_DAYS = 31;
    private static final int MOST_COUNTED = 2000;

    private final LotRows rows;
    private final AuditedTickets tickets;
    private final Directory people;
    private final Heads heads;
    private final DrawChecks checks;
    private final Clock clock;

    LotQueries(LotRows rows, AuditedTickets tickets, Directory people, Heads heads, DrawChecks checks, Clock clock) {
        this.rows = rows;
        this.tickets = tickets;
        this.people = people;
        this.heads = heads;
        this.checks = checks;
        this.clock = clock;
    }

    /** A lot in the list of all. */
    public record LotLine(String id, String period, String progress, int own, boolean open) {}

    List<LotLine> lots(Actor viewer, ZoneId zone) {
        Permissions.require(Permission.REVIEW, viewer);
        return rows.lots().stream().map(id -> line(rows.lot(id), viewer, zone)).toList();
    }

    private static LotLine line(AuditLot lot, Actor viewer, ZoneId zone) {
        int own = (int) lot.reviews().stream()
                .filter(r -> !r.signed() && r.reviewer().equals(viewer.account()))
                .count();
        try {
            return new LotLine(
                    lot.id(),
                    Moments.text(lot.plan().from(), zone) + " to "
                            + Moments.text(lot.plan().until(), zone),
                    LotViews.progress(lot),
                    own,
                    lot.state() != AuditLot.State.CONCLUDED);
        } catch (Invalid altered) { // one that cannot be read hides no other
            return new LotLine(lot.id(), "not known", altered.problems().get(0).sentence(), own, true);
        }
    }

    /** A lot, and the head of the log that its report names. */
    record LotReport(LotView view, PaperHead head) {}

    LotReport report(String id, Actor viewer, ZoneId zone) {
        return new LotReport(lot(id, viewer, zone), heads.onPaper(zone));
    }

    LotView lot(String id, Actor viewer, ZoneId zone) {
        Permissions.require(Permission.REVIEW, viewer);
        AuditLot lot = rows.lot(id);
        return new LotViews(
                        lot,
                        viewer,
                        zone,
                        people.names(),
                        people.allowed(Permission.REVIEW),
                        rows.addenda(id),
                        clock.instant(),
                        rows.before(lot.plan().from()),
                        SignalViews.of(lot, viewer, rows),
                        stuck(lot),
                        checks.faults(lot))
                .view();
    }

    /** @throws NotFound before the draw */
    String list(String id, Actor viewer) {
        Permissions.require(Permission.REVIEW, viewer);
        AuditLot lot = rows.lot(id);
        if (lot.seed().isEmpty()) {
            throw new NotFound("list of lot " + id + " before it is drawn");
        }
        return LotList.csv(lot);
    }

    /** Reviews that were declined and that nobody who may review is left for. */
    private List<Turn> stuck(AuditLot lot) {
        if (lot.state() != AuditLot.State.DRAWN || lot.declined().isEmpty()) {
            return List.of();
        }
        List<Actor> reviewers = people.allowed(Permission.REVIEW);
        return Giving.open(lot).stream()
                .filter(turn -> lot.declined().stream().anyMatch(d -> d.ticket().equals(turn.ticket())))
                .filter(turn -> reviewers.stream()
                        .filter(a -> AuditActs.mayTurnTo(lot, turn, a))
                        .noneMatch(a -> tickets.reasons(lot, turn.ticket(), a).isEmpty()))
                .toList();
    }

    /** Lots for which the next plan draws twice as many. */
    List<AuditLot> doublingDue(Actor viewer) {
        Permissions.require(Permission.PLAN_AUDITS, viewer);
        return rows.notAccepted().stream().filter(AuditRules::isDoublingDue).toList();
    }

    /** When the latest period that there is a lot of ends. */
    Optional<Instant> lastEnd(Actor viewer) {
        Permissions.require(Permission.PLAN_AUDITS, viewer);
        return rows.lastEnd();
    }

    /**
     * What a plan would look at.
     *
     * @param items of the last 31 days by stratum
     * @param witnesses whose signature the draw can wait for
     */
    record Before(Map<Stratum, Integer> items, List<String> witnesses) {}

    Before before(Actor viewer) {
        Permissions.require(Permission.PLAN_AUDITS, viewer);
        Instant now = clock.instant();
        List<LotRows.Ended> ended = rows.ended(now.minus(java.time.Duration.ofDays(LOOKED_BACK_DAYS)), now);
        Map<Stratum, Integer> items = new EnumMap<>(Stratum.class);
        tickets.items(ended.subList(Math.max(0, ended.size() - MOST_COUNTED), ended.size()))
                .forEach(item -> items.merge(item.stratum(), 1, Integer::sum));
        return new Before(items, heads.witnesses());
    }

    /** Which tickets would belong to no lot if the next one began then. */
    String gap(Instant from, Actor viewer, ZoneId zone) {
        Permissions.require(Permission.PLAN_AUDITS, viewer);
        return LotViews.gap(rows.before(from), from, zone);
    }

    /** What such a plan would have shown of the last 31 days, of each random stratum that had any ticket. */
    static List<LotView.Shown> shown(Map<Stratum, Integer> items, Map<Stratum, Take> takes, int acceptance) {
        List<LotView.Shown> shown = new ArrayList<>();
        items.forEach((stratum, count) -> {
            int looked = Objects.requireNonNull(takes.get(stratum)).of(count);
            if (looked < count) {
                Outlook outlook = Outlook.of(count, looked, acceptance);
                shown.add(new LotView.Shown(stratum.title(), outlook, LotViews.curve(outlook)));
            }
        });
        return shown;
    }
}
