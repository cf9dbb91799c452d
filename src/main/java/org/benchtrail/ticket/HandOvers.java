package org.benchtrail.ticket;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.HandOverOffered;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.RecordBroken;
import org.benchtrail.platform.Stale;

/**
 * Several tickets given to one person. Each is an act of its own, with its own transaction and its own entry: what one of them
 * is refused for keeps none of the others.
 */
@ApplicationScoped
public class HandOvers {
    /** In one go. */
    public static final int MOST = 200;

    private final TicketActs acts;
    private final TicketListQueries lists;

    HandOvers(TicketActs acts, TicketListQueries lists) {
        this.acts = acts;
        this.lists = lists;
    }

    /** A ticket as somebody saw it in a list. */
    public record Seen(TicketNumber number, int version) {
        /** As a field of a form holds it, such as {@code 40718-6/12}. */
        public String token() {
            return number + "/" + version;
        }

        /** @throws Invalid if the text is no such token */
        public static Seen parse(String token) {
            int slash = token.indexOf('/');
            if (slash < 0 || !token.substring(slash + 1).matches("\\d{1,9}")) {
                throw new Invalid("ticket", "Tick the tickets in the list.");
            }
            return new Seen(
                    TicketNumber.parse(token.substring(0, slash)), Integer.parseInt(token.substring(slash + 1)));
        }
    }

    /** @param sentence what was done, or why it was not */
    public record Result(String number, boolean done, String sentence) {}

    /** Every open ticket of an account, at most {@link #MOST}. */
    public List<Seen> openWith(String account, Actor by) {
        return seen(QueueFilter.of(Standing.OPEN).assignee(account).lines(MOST), by);
    }

    /** Every ticket that a filter fits, at most as many as it has lines. */
    public List<Seen> seen(QueueFilter filter, Actor by) {
        return lists.queue(filter, by).tickets().stream()
                .map(t -> new Seen(new TicketNumber(t.serial()), t.version()))
                .toList();
    }

    /**
     * Gives the tickets to {@code to}: outright if {@code by} is a supervisor or takes them, else as an offer.
     *
     * @throws Invalid if none or too many are named, or nobody to take them
     */
    public List<Result> give(List<Seen> tickets, String to, String note, Actor by) {
        Permissions.require(Permission.WORK_TICKETS, by);
        new Invalid.Collector()
                .require(!tickets.isEmpty(), "ticket", "Tick the tickets to hand over.")
                .require(tickets.size() <= MOST, "ticket", "Hand over at most " + MOST + " tickets in one go.")
                .require(!to.isEmpty(), "to", "Choose who takes them.")
                .throwIfAny();
        List<Result> results = new ArrayList<>();
        for (Seen ticket : tickets) {
            results.add(give(ticket, to, note, by));
        }
        return results;
    }

    private Result give(Seen ticket, String to, String note, Actor by) {
        boolean outright = by.is(Role.SUPERVISOR) || to.equals(by.account());
        MoveFact move = outright ? new HandedOver(to, Set.of(), note) : new HandOverOffered(to, note);
        String number = ticket.number().toString();
        try {
            Outcome outcome = acts.perform(ticket.number(), ticket.version(), sheet -> new Work(List.of(), move), by);
            return outcome.refused()
                    ? new Result(number, false, sentences(outcome.missing()))
                    : new Result(number, true, outright ? "Handed over." : "Offered.");
        } catch (Invalid e) {
            return new Result(number, false, e.problems().get(0).sentence());
        } catch (Stale e) {
            return new Result(number, false, "Somebody else changed it meanwhile: look at it again.");
        } catch (NotFound | RecordBroken e) {
            return new Result(number, false, String.valueOf(e.getMessage()));
        }
    }

    private static String sentences(List<Missing> missing) {
        return missing.stream().map(Missing::sentence).collect(Collectors.joining(" "));
    }
}
