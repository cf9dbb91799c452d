package org.benchtrail.exports;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import jakarta.ws.rs.core.UriInfo;
import java.time.YearMonth;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Csv;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.Moments;
import org.jboss.resteasy.reactive.RestPath;

/** The event log of each month, as a file for other programs. */
@Path("/exports")
@Authenticated
public class ExportsPage {
    private final EventLog log;
    private final CurrentActor current;

    ExportsPage(EventLog log, CurrentActor current) {
        this.log = log;
        this.current = current;
    }

    @CheckedTemplate(basePath = "exports")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance exports(EventLog.Exports v);
    }

    @GET
    @Blocking
    public Response exports() {
        return Html.ok(Templates.exports(log.exports(current.actor(), current.zone())));
    }

    @GET
    @Path("{month}.xes")
    @Blocking
    public Response xes(@RestPath String month, UriInfo address) {
        return file(month, "XES", XesFormat.MEDIA_TYPE, new XesFormat(), address);
    }

    @GET
    @Path("{month}.csv")
    @Blocking
    public Response csv(@RestPath String month, UriInfo address) {
        return file(month, "CSV", Csv.MEDIA_TYPE, new CsvFormat(), address);
    }

    @GET
    @Path("{month}.jsonl")
    @Blocking
    public Response jsonLines(@RestPath String month, UriInfo address) {
        return file(month, "JSON Lines", JsonLinesFormat.MEDIA_TYPE, new JsonLinesFormat(), address);
    }

    /** What the keys of our own in an event log mean. */
    @GET
    @Path("benchtrail.xesext")
    @Blocking
    public Response ownKeys(UriInfo address) {
        Permissions.require(Permission.SEE_FIGURES, current.actor());
        return Response.ok(XesFormat.OWN_KEYS.formatted(XesFormat.escape(ownAddress(address))), XesFormat.MEDIA_TYPE)
                .build();
    }

    private static String ownAddress(UriInfo address) {
        return address.getBaseUri().resolve("exports/benchtrail.xesext").toString();
    }

    private Response file(String asked, String name, String type, EventFormat format, UriInfo address) {
        Permissions.require(Permission.SEE_FIGURES, current.actor());
        YearMonth month = Moments.month(asked);
        EventFormat.About about =
                new EventFormat.About(month.toString(), ownAddress(address), log.give(month, name, current.actor()));
        StreamingOutput events = out -> log.write(month, format, about, out);
        String file = address.getPath().substring(address.getPath().lastIndexOf('/') + 1);
        return Response.ok(events, type)
                .header("Content-Disposition", "attachment; filename=\"events-" + file + "\"")
                .build();
    }
}
