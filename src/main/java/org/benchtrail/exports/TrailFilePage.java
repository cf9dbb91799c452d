package org.benchtrail.exports;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.NotFound;
import org.benchtrail.seal.TrailProofs;
import org.benchtrail.seal.offline.TrailLines;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.trail.TrailEntry;
import org.jboss.resteasy.reactive.RestPath;

/** The trail of a ticket as a file, each entry with the proof that it is in the log, for whoever checks it elsewhere. */
@Path("/tickets/{number}/trail.jsonl")
@Authenticated
public class TrailFilePage {
    private final TicketQueries tickets;
    private final TrailProofs proofs;
    private final CurrentActor current;

    TrailFilePage(TicketQueries tickets, TrailProofs proofs, CurrentActor current) {
        this.tickets = tickets;
        this.proofs = proofs;
        this.current = current;
    }

    @GET
    @Blocking
    @Transactional
    public Response file(@RestPath String number) {
        TicketNumber ticket = TicketNumber.parse(number);
        List<TrailEntry> trail = tickets.trail(ticket, current.actor());
        TrailProofs.Proven proven =
                proofs.of(ticket.toString()).orElseThrow(() -> new NotFound("proof: nothing was sealed yet"));
        StringBuilder file = new StringBuilder();
        file.append(TrailLines.first(ticket.toString(), proven.head())).append('\n');
        for (TrailEntry entry : trail) {
            // what the reader may not know of is not what was hashed
            boolean whole = HashChain.hash(entry.canonical()).equals(entry.hash());
            file.append(TrailLines.entry(
                            whole ? new String(entry.canonical(), StandardCharsets.UTF_8) : null,
                            entry.hash(),
                            proven.byEntry().get((long) entry.entry())))
                    .append('\n');
            proven.holes().stream()
                    .filter(lost -> lost.hole().first() == entry.entry() + 1)
                    .forEach(lost -> file.append(
                                    TrailLines.hole(new String(lost.record(), StandardCharsets.UTF_8), lost.proof()))
                            .append('\n'));
        }
        return Response.ok(file.toString(), JsonLinesFormat.MEDIA_TYPE)
                .header("Content-Disposition", "attachment; filename=\"" + ticket + "-trail.jsonl\"")
                .build();
    }
}
