package org.benchtrail.ticket.sheet;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.ticket.draft.Drafts;
import org.benchtrail.ticket.form.SheetForm;
import org.jboss.resteasy.reactive.RestPath;

/** Where a job sheet sends what is typed while it is typed. */
@Path("/tickets/{number}/draft")
@Authenticated
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
public class DraftPage {
    private final Drafts drafts;
    private final CurrentActor current;

    DraftPage(Drafts drafts, CurrentActor current) {
        this.drafts = drafts;
        this.current = current;
    }

    /** @param typed what the form of that name holds */
    @POST
    @Path("keep/{form}")
    @Blocking
    public Response keep(@RestPath String number, @RestPath String form, MultivaluedMap<String, String> typed) {
        SheetForm named = SheetForms.find(form).orElseThrow(() -> new NotFound("form '" + form + "'"));
        drafts.keep(TicketNumber.parse(number), current.actor(), named, new PostedForm(typed).version(), typed);
        return Response.noContent().build();
    }

    @POST
    @Path("discard")
    @Blocking
    public Response discard(@RestPath String number) {
        TicketNumber ticket = TicketNumber.parse(number);
        drafts.discard(ticket, current.actor());
        return Html.goTo("/tickets/" + ticket + "#step");
    }
}
