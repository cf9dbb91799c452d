package org.benchtrail.ticket.entry;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.ticket.form.EntryForms;
import org.benchtrail.ticket.form.SheetForm;
import org.jboss.resteasy.reactive.RestPath;

/** One entry of a ticket, which can be put right or struck out. */
@Path("/tickets/{number}/entries/{entry}")
@Authenticated
public class EntryPage {
    private final EntryQueries queries;
    private final EntryForms forms;
    private final CurrentActor current;

    EntryPage(EntryQueries queries, EntryForms forms, CurrentActor current) {
        this.queries = queries;
        this.forms = forms;
        this.current = current;
    }

    @CheckedTemplate(basePath = "ticket/entry")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance entry(EntryView e, FormValues fill, List<Problem> problems);
    }

    @GET
    @Blocking
    public Response entry(@RestPath String number, @RestPath int entry) {
        return Html.ok(page(TicketNumber.parse(number), entry, Map.of(), List.of()));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response correct(@RestPath String number, @RestPath int entry, MultivaluedMap<String, String> typed) {
        TicketNumber ticket = TicketNumber.parse(number);
        SheetForm form = "strike".equals(typed.getFirst("answer")) ? CorrectionForms.STRIKE : CorrectionForms.CORRECT;
        typed.putSingle(form.name() + ".entry", Integer.toString(entry));
        typed.putSingle(form.name() + ".reason", String.valueOf(typed.getFirst("reason")));
        return forms.send(
                ticket,
                form,
                new PostedForm(typed),
                "entry",
                "/tickets/" + ticket + "#step",
                problems -> page(ticket, entry, typed, problems));
    }

    private TemplateInstance page(
            TicketNumber ticket, int entry, Map<String, List<String>> typed, List<Problem> problems) {
        EntryView view = queries.entry(ticket, entry, current.actor(), current.zone());
        FormValues values = new FormValues().put(CorrectionForms.NEW, view.standing());
        return Templates.entry(view, values.typed(typed, problems), problems);
    }
}
