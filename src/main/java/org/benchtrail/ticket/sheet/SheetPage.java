package org.benchtrail.ticket.sheet;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.platform.form.SignedOut;
import org.benchtrail.platform.repeat.Repeats;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.draft.Drafts;
import org.benchtrail.ticket.form.FormActs;
import org.benchtrail.ticket.form.SheetForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** The job sheet, on which a ticket is worked. */
@Path("/tickets/{number}")
public class SheetPage {
    private static final String STALE =
            "Somebody else wrote on this sheet meanwhile. What you typed is kept below: read what is"
                    + " new, then send it again.";

    private final FormActs acts;
    private final SheetScreen screen;
    private final Drafts drafts;
    private final CurrentActor current;
    private final Repeats repeats;

    SheetPage(FormActs acts, SheetScreen screen, Drafts drafts, CurrentActor current, Repeats repeats) {
        this.repeats = repeats;
        this.acts = acts;
        this.screen = screen;
        this.drafts = drafts;
        this.current = current;
    }

    /**
     * @param seen version that the reader has seen, where what others did since is to be told; 0 if nothing is
     * @param answers code of the requirement about which a review asked, where the reader comes to add to the papers
     */
    @GET
    @Authenticated
    @Blocking
    public Response show(@RestPath String number, @RestQuery int seen, @RestQuery @DefaultValue("") String answers) {
        return screen.show(TicketNumber.parse(number), seen, answers);
    }

    /** One of the forms of the sheet. Open to all, so that what a signed-out person typed can be given back to them. */
    @POST
    @Path("{form}")
    @PermitAll
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response act(@RestPath String number, @RestPath String form, MultivaluedMap<String, String> typed) {
        if (!current.signedIn()) {
            return SignedOut.resend("/tickets/" + number + "/" + form, typed);
        }
        SheetForm named = SheetForms.find(form).orElseThrow(() -> new NotFound("form '" + form + "'"));
        TicketNumber ticket = TicketNumber.parse(number);
        PostedForm posted = new PostedForm(typed);
        Actor person = current.actor();
        return Refusal.answer(
                () -> repeats.once(posted, () -> {
                    Outcome outcome = acts.perform(ticket, named, posted);
                    if (outcome.recorded().isEmpty()) {
                        drafts.keep(ticket, person, named, posted.version(), typed);
                    } else {
                        drafts.sent(ticket, person, named, posted.version(), typed);
                    }
                    return screen.after(outcome, typed);
                }),
                refusal -> {
                    drafts.keep(ticket, person, named, posted.version(), typed);
                    return screen.again(ticket, form, typed, refusal, posted.version(), STALE);
                });
    }
}
