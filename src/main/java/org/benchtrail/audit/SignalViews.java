package org.benchtrail.audit;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.AuditRules;
import org.benchtrail.core.audit.Signal;
import org.benchtrail.core.audit.SignalKind;
import org.benchtrail.core.audit.SignalWorth;
import org.benchtrail.core.method.Actor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;

/** The signals of a lot as pages show them: none before all its marks are final, and each with what it has been worth. */
public final class SignalViews {
    private static final int LOTS = 12;

    private SignalViews() {}

    /**
     * A signal and the tickets of the lot that show it.
     *
     * @param question what was seen, by which rule, and what it leaves open
     * @param worth how often it was right when reviewers looked
     * @param advice what follows from that; empty while nothing is known
     * @param shown whether its tickets are shown, or it was switched off
     * @param offered whether the viewer is asked to switch it
     * @param reviewed tickets that were looked at
     * @param left tickets that were not, and may be chosen
     */
    public record SignalLine(
            SignalKind kind,
            String question,
            String worth,
            String advice,
            boolean shown,
            boolean offered,
            List<Signal> reviewed,
            List<Signal> left) {
        public int tickets() {
            return reviewed.size() + left.size();
        }
    }

    static List<SignalLine> of(AuditLot lot, Actor viewer, LotRows rows) {
        if (!AuditRules.mayShowSignals(lot)) {
            return List.of();
        }
        List<Signal> signals = rows.signals(lot.id());
        Map<SignalKind, SignalWorth> worth = rows.worth(LOTS);
        Set<SignalKind> off = rows.switchedOff();
        Set<String> reviewed = reviewed(lot);
        boolean decides = Permissions.allow(Permission.PLAN_AUDITS, viewer);
        return Arrays.stream(SignalKind.values())
                .map(kind -> line(
                        reviewed,
                        kind,
                        kind.question(lot.signalNumbers()),
                        signals.stream().filter(s -> s.kind() == kind).toList(),
                        worth.getOrDefault(kind, SignalWorth.NONE),
                        !off.contains(kind),
                        decides))
                .toList();
    }

    private static SignalLine line(
            Set<String> reviewed,
            SignalKind kind,
            String question,
            List<Signal> signals,
            SignalWorth worth,
            boolean shown,
            boolean decides) {
        boolean nothing = worth.standing() == SignalWorth.Standing.TELLS_NOTHING;
        return new SignalLine(
                kind,
                question,
                words(worth),
                advice(worth.standing(), shown),
                shown,
                decides && (nothing || !shown),
                signals.stream().filter(s -> reviewed.contains(s.ticket())).toList(),
                signals.stream().filter(s -> !reviewed.contains(s.ticket())).toList());
    }

    /** Tickets of the lot that somebody looks at. */
    private static Set<String> reviewed(AuditLot lot) {
        Set<String> tickets = new HashSet<>(lot.drawnTickets());
        lot.chosen().forEach(c -> tickets.add(c.ticket()));
        return tickets;
    }

    /** A signal of a ticket, in words. */
    public record Shown(String title, String detail, String question) {}

    /** Those of a ticket that are shown. */
    static List<Shown> shown(AuditLot lot, String ticket, LotRows rows) {
        if (!AuditRules.mayShowSignals(lot)) {
            return List.of();
        }
        Set<SignalKind> off = rows.switchedOff();
        return rows.signals(lot.id()).stream()
                .filter(s -> s.ticket().equals(ticket) && !off.contains(s.kind()))
                .map(s -> new Shown(s.kind().title(), s.detail(), s.kind().question(lot.signalNumbers())))
                .toList();
    }

    static String words(SignalWorth worth) {
        if (worth.standing() == SignalWorth.Standing.NOT_YET_KNOWN) {
            return "Not yet known: " + worth.with() + " tickets with it and " + worth.base()
                    + " without it were reviewed, and it takes " + SignalWorth.ENOUGH + " of each.";
        }
        return "Of " + worth.with() + " reviewed tickets with it " + worth.hits() + " had such a defect: "
                + Shares.of(worth.hits(), worth.with(), worth.precision()) + ". Of " + worth.base()
                + " drawn without it "
                + worth.baseHits() + ": " + Shares.of(worth.baseHits(), worth.base(), worth.without()) + ".";
    }

    private static String advice(SignalWorth.Standing standing, boolean shown) {
        return switch (standing) {
            case NOT_YET_KNOWN -> "";
            case TELLS -> "It tells something: the one range lies above the other.";
            case TELLS_NOTHING ->
                "The one range does not lie above the other: it may tell nothing"
                        + (shown ? ", and can be switched off." : ".");
        };
    }
}
