package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import org.benchtrail.core.integrity.TilePath;
import org.benchtrail.people.CurrentActor;
import org.jboss.resteasy.reactive.RestPath;

/** The log for outsiders, by the paths and in the bytes of C2SP tlog-tiles: checkpoint, tiles, leaves. Read only. */
@Path("/log")
@PermitAll
@Blocking
public class LogApi {
    private final LogRows rows;
    private final LogFolder files;
    private final SealConfig config;
    private final CurrentActor current;

    LogApi(LogRows rows, LogFolder files, SealConfig config, CurrentActor current) {
        this.rows = rows;
        this.files = files;
        this.config = config;
        this.current = current;
    }

    @GET
    @Path("checkpoint")
    public Response checkpoint() {
        if (config.serve() == SealConfig.Serving.OFF) {
            return notThere();
        }
        return QuarkusTransaction.requiringNew()
                .call(rows::newestNote)
                .map(note -> Response.ok(note.bytes())
                        .type("text/plain; charset=utf-8")
                        .header("Cache-Control", "max-age=2")
                        .build())
                .orElseGet(LogApi::notThere);
    }

    /** A tile or its leaves; nothing beyond what is published, whatever the database holds already. */
    @GET
    @Path("tile/{path:.+}")
    public Response tile(@RestPath String path) {
        if (config.serve() == SealConfig.Serving.OFF) {
            return notThere();
        }
        if (config.serve() == SealConfig.Serving.TOKEN && !current.signedIn()) {
            return Response.status(Response.Status.UNAUTHORIZED)
                    .header("WWW-Authenticate", "Bearer")
                    .build();
        }
        return TilePath.parse("tile/" + path)
                .flatMap(tile -> QuarkusTransaction.requiringNew()
                        .call(() -> rows.newest()
                                .filter(signed -> tile.isWithin(signed.size()))
                                .map(signed -> files.content(tile))))
                .map(bytes -> Response.ok(bytes)
                        .type("application/octet-stream")
                        .header("Cache-Control", "private, max-age=31536000, immutable")
                        .build())
                .orElseGet(LogApi::notThere);
    }

    private static Response notThere() {
        return Response.status(Response.Status.NOT_FOUND).build();
    }
}
