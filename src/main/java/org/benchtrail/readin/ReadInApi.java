package org.benchtrail.readin;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReadingVerdict;
import org.benchtrail.core.readin.About;
import org.benchtrail.core.readin.Kind;
import org.benchtrail.core.readin.ReadIn;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.NotFound;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Reading in for programs; nothing is recorded. */
@Path("/api/read-in")
@Authenticated
@Produces(MediaType.APPLICATION_JSON)
@Blocking
@Tag(name = "Read in")
public class ReadInApi {
    private final CurrentActor current;

    ReadInApi(CurrentActor current) {
        this.current = current;
    }

    /**
     * What was found. With their kind, {@code reading-recorded} and {@code finding-recorded}, the facts can be posted to a ticket.
     *
     * @param skipped what did not become a reading, with the reason
     */
    public record Preview(String kind, List<Judged> readings, List<Found> findings, List<String> skipped) {
        static Preview of(ReadIn found) {
            return new Preview(
                    found.kind().id(),
                    found.readings().stream().map(Judged::of).toList(),
                    found.findings().stream().map(Found::of).toList(),
                    found.skipped());
        }
    }

    /** A finding as it would be recorded. */
    public record Found(String text, boolean driveFailure) {
        static Found of(FindingRecorded f) {
            return new Found(f.text(), f.driveFailure());
        }
    }

    /** A reading as it would be recorded, and its verdict. */
    public record Judged(
            ReadingVerdict verdict,
            String quantity,
            String value,
            String unit,
            String point,
            String instrument,
            @Nullable String lower,
            @Nullable String upper,
            String limitSource) {
        static Judged of(ReadingRecorded r) {
            return new Judged(
                    r.verdict(),
                    r.quantity(),
                    r.value(),
                    r.unit(),
                    r.point(),
                    r.instrument(),
                    r.lower(),
                    r.upper(),
                    r.limitSource());
        }
    }

    @POST
    @Path("{kind}")
    @Consumes(MediaType.WILDCARD)
    @Operation(
            summary = "What a device said, read by its published layout; nothing is recorded",
            description =
                    "The body is the thing itself: the raw bytes of a drive's page, or a text in UTF-8. Kinds: nvme-page, ata-page,"
                            + " ata-rows, redfish, ups-mib, series (with unit). What is malformed is answered 422 with its offset, row or path.")
    @Blocking
    public Preview preview(
            @RestPath String kind,
            @RestQuery @DefaultValue("") String device,
            @RestQuery @DefaultValue("") String quantity,
            @RestQuery @DefaultValue("") String unit,
            byte[] body) {
        Permissions.require(Permission.SEE_TICKETS, current.actor());
        Kind known = Kind.find(kind).orElseThrow(() -> new NotFound("kind '" + kind + "': there are " + all()));
        return Preview.of(RawReport.sent(known, body, "").read(new About(device, quantity, unit)));
    }

    private static String all() {
        return Arrays.stream(Kind.values()).map(Kind::id).collect(Collectors.joining(", "));
    }
}
