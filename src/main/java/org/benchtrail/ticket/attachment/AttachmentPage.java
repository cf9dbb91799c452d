package org.benchtrail.ticket.attachment;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.FormKey;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.platform.repeat.Repeats;
import org.benchtrail.ticket.sheet.SheetScreen;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** Files put beside a ticket by the form on its job sheet, and given out again. */
@Path("/tickets/{number}/attachments")
@Authenticated
public class AttachmentPage {
    private static final String GROUP = "attachment.";
    /** Points on the longer side. */
    private static final int SMALL = 320;

    private static final int LARGE = 1600;

    private static final String STALE =
            "Somebody else wrote on this sheet meanwhile: read what is new, then choose the file again.";

    private final AttachmentActs acts;
    private final AttachmentQueries queries;
    private final SheetScreen screen;
    private final CurrentActor current;
    private final Repeats repeats;

    AttachmentPage(
            AttachmentActs acts, AttachmentQueries queries, SheetScreen screen, CurrentActor current, Repeats repeats) {
        this.repeats = repeats;
        this.acts = acts;
        this.queries = queries;
        this.screen = screen;
        this.current = current;
    }

    @POST
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @Blocking
    public Response attach(
            @RestPath String number,
            @RestForm @Nullable String version,
            @RestForm @Nullable String shows,
            @RestForm @Nullable String deviceTime,
            @RestForm @Nullable String scaledFrom,
            @RestForm("head") @Nullable FileUpload head,
            @RestForm(FormKey.FIELD) @Nullable String key,
            @RestForm("file") @Nullable FileUpload file) {
        Permissions.require(Permission.WORK_TICKETS, current.actor());
        TicketNumber ticket = TicketNumber.parse(number);
        String said = shows == null ? "" : shows;
        PostedForm form = new PostedForm(typed(version, said, key, file));
        int seen = form.version();
        return Refusal.answer(
                () -> repeats.once(
                        form,
                        () -> screen.after(
                                acts.attach(
                                        ticket,
                                        seen,
                                        uploaded(file, said, moment(deviceTime), scaledFrom)
                                                .noted(head == null ? null : bytes(head), current.zone()),
                                        current.actor()),
                                Map.of())),
                refusal -> screen.again(
                        ticket, "attachments", Map.of(GROUP + "shows", List.of(said)), atItsFields(refusal), 0, STALE));
    }

    /** What tells one sending from another. */
    private static Map<String, List<String>> typed(
            @Nullable String version, String shows, @Nullable String key, @Nullable FileUpload file) {
        return Map.of(
                "version",
                version == null ? List.of() : List.of(version),
                "shows",
                List.of(shows),
                FormKey.FIELD,
                key == null ? List.of() : List.of(key),
                "file",
                file == null ? List.of() : List.of(file.fileName(), Repeats.fingerprint(bytes(file))));
    }

    private static NewFile uploaded(
            @Nullable FileUpload file, String shows, @Nullable Instant deviceTime, @Nullable String scaledFrom) {
        if (file == null || file.size() == 0) {
            throw new Invalid("file", "Choose the file to attach.");
        }
        String mediaType = file.contentType() == null ? MediaType.APPLICATION_OCTET_STREAM : file.contentType();
        return new NewFile(file.fileName(), mediaType, bytes(file), shows, deviceTime, scaledFrom);
    }

    private static byte[] bytes(FileUpload file) {
        try {
            return Files.readAllBytes(file.uploadedFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What the page's script read from the device; null if it told none. */
    private static @Nullable Instant moment(@Nullable String deviceTime) {
        try {
            return deviceTime == null || deviceTime.isBlank() ? null : Instant.parse(deviceTime);
        } catch (DateTimeParseException e) {
            throw new Invalid("file", "The time of the file cannot be read: choose the file again.");
        }
    }

    /** What nobody types is put right by choosing the file again. */
    private static Refusal atItsFields(Refusal refusal) {
        List<Problem> problems = refusal.problems().stream()
                .map(p -> new Problem(GROUP + (p.field().equals("shows") ? "shows" : "file"), p.sentence()))
                .toList();
        return new Refusal(refusal.kind(), problems);
    }

    @GET
    @Path("{sha256}")
    @Blocking
    public Response file(@RestPath String number, @RestPath String sha256, HttpHeaders asked) {
        return queries.answer(TicketNumber.parse(number), sha256, current.actor())
                .untyped()
                .to(asked);
    }

    /** A picture small enough to be shown beside what it tells; by its hash, so that it can be kept by the browser. */
    @GET
    @Path("{sha256}/picture")
    @Blocking
    public Response picture(@RestPath String number, @RestPath String sha256, @RestQuery @Nullable String size) {
        byte[] content = queries.file(TicketNumber.parse(number), sha256, current.actor());
        byte[] small = Pictures.small(content, "large".equals(size) ? LARGE : SMALL)
                .orElseThrow(() -> new NotFound("such picture on ticket " + number));
        return Response.ok(small, Pictures.MEDIA_TYPE)
                .header("Cache-Control", "private, max-age=604800, immutable")
                .build();
    }
}
