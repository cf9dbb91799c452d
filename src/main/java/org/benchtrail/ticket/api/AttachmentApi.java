package org.benchtrail.ticket.api;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.NeedsPermission;
import org.benchtrail.people.Permission;
import org.benchtrail.platform.description.AnswersWith;
import org.benchtrail.platform.repeat.Repeats;
import org.benchtrail.ticket.attachment.AttachmentActs;
import org.benchtrail.ticket.attachment.AttachmentQueries;
import org.benchtrail.ticket.attachment.NewFile;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** The files beside a ticket, for programs. */
@Path("/api/tickets/{number}/attachments")
@Authenticated
@Produces(MediaType.APPLICATION_JSON)
@Blocking
@Tag(name = "Tickets")
public class AttachmentApi {
    private final AttachmentActs acts;
    private final AttachmentQueries queries;
    private final TicketAnswers answers;
    private final CurrentActor current;
    private final Repeats repeats;

    AttachmentApi(
            AttachmentActs acts,
            AttachmentQueries queries,
            TicketAnswers answers,
            CurrentActor current,
            Repeats repeats) {
        this.repeats = repeats;
        this.acts = acts;
        this.queries = queries;
        this.answers = answers;
        this.current = current;
    }

    @NeedsPermission(Permission.WORK_TICKETS)
    @AnswersWith(value = SheetJson.class, versioned = true, once = true)
    @POST
    @Consumes(MediaType.WILDCARD)
    @Operation(summary = "Attach a file: its bytes are the body, its media type the Content-Type")
    public Response attach(
            @RestPath String number,
            @HeaderParam("If-Match") @Nullable String version,
            @HeaderParam("Content-Type") @DefaultValue("application/octet-stream") String mediaType,
            @RestQuery @DefaultValue("") String fileName,
            @RestQuery @DefaultValue("") String shows,
            byte[] content) {
        TicketNumber ticket = TicketNumber.parse(number);
        int seen = TicketAnswers.version(version);
        NewFile file = new NewFile(fileName, mediaType, content, shows).noted(null, current.zone());
        return repeats.once(
                seen + " " + Repeats.fingerprint(content) + " " + mediaType + " " + fileName + " " + shows,
                () -> answers.after(acts.attach(ticket, seen, file, current.actor())));
    }

    @AnswersWith(byte[].class)
    @GET
    @Path("{sha256}")
    @Produces(MediaType.WILDCARD)
    @Operation(summary = "The bytes of an attached file, or a part of them by Range")
    public Response file(@RestPath String number, @RestPath String sha256, HttpHeaders asked) {
        return queries.answer(TicketNumber.parse(number), sha256, current.actor())
                .to(asked);
    }
}
