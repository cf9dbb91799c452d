package org.benchtrail.search;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.core.method.Standing;
import org.benchtrail.knowledge.SearchResults;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.TicketLine;
import org.benchtrail.ticket.TicketSearch;

/**
 * What a search found.
 *
 * @param typed what was looked for
 * @param meant number of the ticket that a wrong check digit was typed for; empty if there is none
 * @param spelling words that tickets were looked for by in place of mistyped ones; empty if none were
 * @param loose whether no ticket has every word
 * @param reported tickets by who reported them
 * @param forecast number of the ticket on which the viewer forecasts before known causes are shown; empty if none is due
 */
public record FoundView(
        String typed,
        String meant,
        List<Line> tickets,
        String spelling,
        boolean loose,
        List<Device> devices,
        List<Line> reported,
        List<SearchResults.CauseHit> causes,
        String forecast,
        List<Problem> problems) {

    /**
     * A ticket in words.
     *
     * @param state the open step and who has it; of an ended ticket, how it ended and its last act
     */
    public record Line(String number, String title, String device, String place, String state) {
        static Line of(TicketLine ticket, Map<String, String> names, ZoneId zone) {
            return new Line(
                    ticket.number(), ticket.title(), ticket.device(), ticket.place(), state(ticket, names, zone));
        }

        private static String state(TicketLine ticket, Map<String, String> names, ZoneId zone) {
            if (ticket.standing() != Standing.OPEN) {
                return Option.words(ticket.standing()) + ", " + day(ticket.touched(), zone);
            }
            String assignee = ticket.assignee();
            return ticket.step().title() + ", "
                    + (assignee == null ? "not assigned" : "with " + names.getOrDefault(assignee, assignee));
        }

        private static String day(Instant at, ZoneId zone) {
            return "last act " + Moments.text(at, zone);
        }
    }

    /** @param query how the queue is asked for its tickets */
    public record Device(String label, String query, long open, long closed) {
        static Device of(TicketSearch.OfDevice device) {
            return new Device(device.label(), "device=" + inAddress(device.label()), device.open(), device.closed());
        }
    }

    /** What was typed, as it stands in an address. */
    public String encoded() {
        return inAddress(typed);
    }

    private static String inAddress(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    static FoundView refused(String typed, List<Problem> problems) {
        return new FoundView(typed, "", List.of(), "", false, List.of(), List.of(), List.of(), "", problems);
    }

    /** Whether something was looked for and nothing found. */
    public boolean nothing() {
        return !typed.isEmpty()
                && problems.isEmpty()
                && meant.isEmpty()
                && tickets.isEmpty()
                && devices.isEmpty()
                && reported.isEmpty()
                && causes.isEmpty()
                && forecast.isEmpty();
    }
}
