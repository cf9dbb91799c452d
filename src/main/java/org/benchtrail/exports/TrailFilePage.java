package org.benchtrail.exports;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.NotFound;
import org.benchtrail.seal.TrailFile;
import org.benchtrail.seal.TrailFiles;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.trail.TrailEntry;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** The trail of a ticket as a file, each entry with the proof that it is in the log, for whoever checks it elsewhere. */
@Path("/tickets/{number}/trail.jsonl")
@Authenticated
public class TrailFilePage {
    private final TicketQueries tickets;
    private final TrailFiles files;
    private final TicketsGiven given;
    private final CurrentActor current;

    TrailFilePage(TicketQueries tickets, TrailFiles files, TicketsGiven given, CurrentActor current) {
        this.tickets = tickets;
        this.files = files;
        this.given = given;
        this.current = current;
    }

    /**
     * By the newest head, or as a paper names it.
     *
     * @param leaves of the head that whoever asks holds
     * @param entries how many the ticket had then; all that it has without it
     */
    @GET
    @Blocking
    @Transactional
    public Response file(
            @RestPath String number, @RestQuery @Nullable String leaves, @RestQuery @Nullable String entries) {
        TicketNumber ticket = TicketNumber.parse(number);
        List<TrailEntry> all = tickets.trail(ticket, current.actor());
        List<TrailEntry> trail =
                entries == null ? all : all.subList(0, (int) number(entries, 1, all.size(), "entries"));
        TrailFile file = (leaves == null
                        ? files.newest(ticket.toString(), trail)
                        : files.at(number(leaves, 1, Long.MAX_VALUE, "leaves"), ticket.toString(), trail))
                .orElseThrow(
                        () -> new NotFound(leaves == null ? "proof: nothing was sealed yet" : "head of " + leaves));
        given.note(ticket, "trail with proofs", current.actor());
        return Response.ok(file.text(), JsonLinesFormat.MEDIA_TYPE)
                .header(
                        "Content-Disposition",
                        "attachment; filename=\"" + ticket + "-trail" + (leaves == null ? "" : "-" + leaves)
                                + ".jsonl\"")
                .build();
    }

    private static long number(String typed, long least, long most, String what) {
        if (!typed.matches("[1-9][0-9]{0,17}") || Long.parseLong(typed) < least || Long.parseLong(typed) > most) {
            throw new NotFound(what + " " + typed);
        }
        return Long.parseLong(typed);
    }
}
