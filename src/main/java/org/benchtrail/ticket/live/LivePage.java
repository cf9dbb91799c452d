package org.benchtrail.ticket.live;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Multi;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestStreamElementType;

/** Tells an open job sheet that it changed, as server-sent events. */
@Path("/tickets/{number}/live")
@Authenticated
public class LivePage {
    private final OpenSheets sheets;
    private final CurrentActor current;

    LivePage(OpenSheets sheets, CurrentActor current) {
        this.sheets = sheets;
        this.current = current;
    }

    @GET
    @Produces(MediaType.SERVER_SENT_EVENTS)
    @RestStreamElementType(MediaType.APPLICATION_JSON)
    @Blocking
    public Multi<SheetState> live(@RestPath String number) {
        return sheets.watched(TicketNumber.parse(number), current.actor());
    }
}
