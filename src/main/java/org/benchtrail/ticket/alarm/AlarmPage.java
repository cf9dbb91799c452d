package org.benchtrail.ticket.alarm;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.Html;
import org.jboss.resteasy.reactive.RestPath;

/** What was found not to hold, for those who have to see to it. */
@Path("/alarms")
@Authenticated
public class AlarmPage {
    private final AlarmActs acts;
    private final CurrentActor current;

    AlarmPage(AlarmActs acts, CurrentActor current) {
        this.acts = acts;
        this.current = current;
    }

    @CheckedTemplate(basePath = "ticket/alarm")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance alarms(AlarmView v);
    }

    @GET
    @Blocking
    public Response alarms() {
        return Html.ok(Templates.alarms(acts.view(current.actor(), current.zone())));
    }

    @POST
    @Path("{number}/check")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response checkAgain(@RestPath String number) {
        acts.checkAgain(TicketNumber.parse(number), current.actor());
        return Html.goTo("/alarms");
    }
}
