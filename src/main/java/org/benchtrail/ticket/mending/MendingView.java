package org.benchtrail.ticket.mending;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.integrity.Hole;
import org.benchtrail.ticket.TicketMending;
import org.benchtrail.ticket.Times;
import org.benchtrail.trail.Mendings.Outcome;
import org.benchtrail.trail.Mendings.Proposal;
import org.benchtrail.trail.Mendings.Way;
import org.jspecify.annotations.Nullable;

/**
 * How a broken ticket can be mended.
 *
 * @param fault what does not hold; empty if nothing is to be mended
 * @param lost which entries are lost; empty if none is
 * @param next number of the next entry, whichever way is taken
 * @param stuck why neither way is open
 * @param holes after which the ticket went on
 * @param waiting what another person has to agree to; null if nothing is
 * @param before what was proposed earlier, the newest first
 */
public record MendingView(
        String number,
        String title,
        String fault,
        String lost,
        int next,
        boolean opening,
        String stuck,
        List<String> holes,
        @Nullable Line waiting,
        List<Line> before) {

    /** A proposal. */
    public record Line(long id, String what, String reason, String by, boolean own, String when, String ended) {}

    static MendingView of(TicketMending.Standing standing, Map<String, String> names, String viewer, ZoneId zone) {
        List<Line> lines = standing.proposals().stream()
                .map(proposal -> line(proposal, names, viewer, zone))
                .toList();
        boolean waits =
                !standing.proposals().isEmpty() && standing.proposals().get(0).outcome() == null;
        return new MendingView(
                standing.number(),
                standing.title(),
                standing.fault(),
                entries(standing.first(), standing.last()),
                standing.last() + 1,
                standing.first() <= 1,
                standing.stuck(),
                standing.holes().stream().map(Hole::sentence).toList(),
                waits ? lines.get(0) : null,
                waits ? lines.subList(1, lines.size()) : lines);
    }

    private static String entries(int first, int last) {
        if (first > last) {
            return "";
        }
        return first == last ? "entry " + first : "entries " + first + " to " + last;
    }

    private static Line line(Proposal proposal, Map<String, String> names, String viewer, ZoneId zone) {
        return new Line(
                proposal.id(),
                what(proposal),
                proposal.reason(),
                names.getOrDefault(proposal.by(), proposal.by()),
                proposal.by().equals(viewer),
                Times.text(proposal.proposed(), zone),
                ended(proposal, names));
    }

    private static String what(Proposal proposal) {
        String lost = entries(proposal.first(), proposal.last());
        if (proposal.way() == Way.GO_ON) {
            return "Go on after the hole, without " + lost + ": the next one is entry " + (proposal.last() + 1);
        }
        return lost.isEmpty() ? "Go on with what is here, which is whole again" : "Put back " + lost;
    }

    private static String ended(Proposal proposal, Map<String, String> names) {
        Outcome outcome = proposal.outcome();
        String account = proposal.endedBy();
        if (outcome == null || account == null) {
            return "waits";
        }
        String by = names.getOrDefault(account, account);
        return switch (outcome) {
            case AGREED -> "agreed to by " + by;
            case WITHDRAWN -> "withdrawn by " + by;
            case LAPSED -> "lapsed, because what is stored had changed when " + by + " agreed";
        };
    }
}
