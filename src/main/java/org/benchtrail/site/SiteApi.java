package org.benchtrail.site;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.NeedsPermission;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.IfMatch;
import org.benchtrail.platform.description.AnswersWith;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Devices, places and what the site decided, for programs. */
@Path("/")
@Authenticated
@Blocking
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Site")
public class SiteApi {
    private static final int MOST = 200;

    private final DeviceBook devices;
    private final PlaceActs places;
    private final SiteActs acts;
    private final SiteBook book;
    private final CurrentActor current;

    SiteApi(DeviceBook devices, PlaceActs places, SiteActs acts, SiteBook book, CurrentActor current) {
        this.devices = devices;
        this.places = places;
        this.acts = acts;
        this.book = book;
        this.current = current;
    }

    /** What counts now, and the number of the latest decision. */
    public record Policies(int version, RulesText rules) {}

    /** A decision, from a moment on; empty for at once. */
    public record NewPolicies(
            @Nullable RulesText rules,
            @Nullable String inForce,
            @Nullable String note) {}

    /** The number of a decision. */
    public record Decided(int version) {}

    @AnswersWith(value = DeviceView.class, list = true, paged = true)
    @GET
    @Path("api/devices")
    @Operation(summary = "The devices by label, a stretch at a time; a Link header leads to the next page")
    public Response devices(
            @RestQuery @DefaultValue("") String words,
            @RestQuery @DefaultValue("") String after,
            @RestQuery @DefaultValue("50") int limit) {
        new Invalid.Collector()
                .require(limit >= 1 && limit <= MOST, "limit", "Ask for 1 to 200 devices at a time.")
                .throwIfAny();
        DeviceBook.Part part = devices.page(words, after, limit, current.actor());
        Response.ResponseBuilder answer = Response.ok(part.devices());
        if (!part.next().isEmpty()) {
            answer.link(
                    UriBuilder.fromPath("/api/devices")
                            .queryParam("words", "{words}")
                            .queryParam("after", "{after}")
                            .queryParam("limit", limit)
                            .build(words, part.next()),
                    "next");
        }
        return answer.build();
    }

    @NeedsPermission(Permission.ADD_DEVICES)
    @AnswersWith(value = DeviceView.class, status = 201, versioned = true)
    @POST
    @Path("api/devices")
    @Operation(summary = "Adds a device")
    public Response addDevice(DeviceText device) {
        DeviceView made = devices.add(device, current.actor());
        return tagged(
                Response.created(UriBuilder.fromPath("/api/devices/{label}").build(made.label())), made);
    }

    @AnswersWith(value = DeviceView.class, versioned = true)
    @GET
    @Path("api/devices/{label}")
    @Operation(summary = "A device")
    public Response device(@RestPath String label) {
        return tagged(Response.ok(), devices.device(label, current.actor()));
    }

    @NeedsPermission(Permission.KEEP_SITE)
    @AnswersWith(value = DeviceView.class, versioned = true)
    @PUT
    @Path("api/devices/{label}")
    @Operation(summary = "Changes a device; all but its label")
    public Response changeDevice(
            @RestPath String label, @HeaderParam("If-Match") @Nullable String version, DeviceText device) {
        return tagged(
                Response.ok(), devices.change(label, device, IfMatch.version(version, "device"), current.actor()));
    }

    private static Response tagged(Response.ResponseBuilder answer, DeviceView device) {
        return answer.entity(device)
                .header("ETag", "\"" + device.version() + "\"")
                .build();
    }

    @GET
    @Path("api/places")
    @Operation(summary = "The places of the site")
    public List<PlaceActs.PlaceView> places() {
        return places.places(current.actor());
    }

    @NeedsPermission(Permission.KEEP_SITE)
    @AnswersWith(value = PlaceActs.PlaceView.class, status = 201)
    @POST
    @Path("api/places")
    @Operation(summary = "Adds a place")
    public Response addPlace(PlaceActs.PlaceText place) {
        PlaceActs.PlaceView made = places.addPlace(place, current.actor());
        return Response.created(UriBuilder.fromPath("/api/places/{id}").build(made.id()))
                .entity(made)
                .build();
    }

    @NeedsPermission(Permission.KEEP_SITE)
    @PUT
    @Path("api/places/{id}")
    @Operation(summary = "Changes a place")
    public PlaceActs.PlaceView changePlace(
            @RestPath long id, @HeaderParam("If-Match") @Nullable String version, PlaceActs.PlaceText place) {
        return places.changePlace(id, place, IfMatch.version(version, "place"), current.actor());
    }

    @GET
    @Path("api/site/policies")
    @Operation(summary = "Calendar, times by priority and policies as they count now")
    public Policies policies() {
        Permissions.require(Permission.SEE_TICKETS, current.actor());
        return new Policies(book.history().latest(), RulesText.of(book.rules()));
    }

    @NeedsPermission(Permission.SET_POLICIES)
    @POST
    @Path("api/site/policies")
    @Operation(summary = "Decides about calendar, times and policies from a moment on")
    public Decided decide(@HeaderParam("If-Match") @Nullable String version, NewPolicies decided) {
        RulesText rules = decided.rules();
        if (rules == null) {
            throw new Invalid("rules", "Give calendar, times and policies as they are to be; GET tells how they are.");
        }
        SiteActs.Decision decision = new SiteActs.Decision(
                decided.inForce() == null ? "" : decided.inForce(), decided.note() == null ? "" : decided.note());
        return new Decided(acts.decide(rules, decision, IfMatch.version(version, "site"), current.actor()));
    }
}
