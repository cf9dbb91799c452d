package org.benchtrail.ticket.attachment;

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
import org.jboss.resteasy.reactive.RestPath;

/** A picture shown large, on which something can be marked. */
@Path("/tickets/{number}/pictures/{entry}")
@Authenticated
public class PicturePage {
    private final AttachmentQueries queries;
    private final EntryForms forms;
    private final CurrentActor current;

    PicturePage(AttachmentQueries queries, EntryForms forms, CurrentActor current) {
        this.queries = queries;
        this.forms = forms;
        this.current = current;
    }

    @CheckedTemplate(basePath = "ticket/attachment")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance picture(PictureView v, FormValues fill, List<Problem> problems);
    }

    @GET
    @Blocking
    public Response picture(@RestPath String number, @RestPath int entry) {
        return Html.ok(page(TicketNumber.parse(number), entry, Map.of(), List.of()));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response mark(@RestPath String number, @RestPath int entry, MultivaluedMap<String, String> typed) {
        TicketNumber ticket = TicketNumber.parse(number);
        typed.putSingle(MarkForm.GROUP + ".picture", Integer.toString(entry));
        return forms.send(
                ticket,
                MarkForm.FORM,
                new PostedForm(typed),
                "picture",
                "/tickets/" + ticket + "/pictures/" + entry,
                problems -> page(ticket, entry, typed, atThePicture(problems)));
    }

    /** The picture itself has no field: what is wrong with it is told where it stands. */
    private static List<Problem> atThePicture(List<Problem> problems) {
        return problems.stream()
                .map(p -> p.field().equals(MarkForm.GROUP + ".picture")
                                || p.field().equals("picture")
                        ? new Problem("picture", p.sentence())
                        : p)
                .toList();
    }

    private TemplateInstance page(
            TicketNumber ticket, int entry, Map<String, List<String>> typed, List<Problem> problems) {
        PictureView view = queries.picture(ticket, entry, current.actor(), current.zone());
        return Templates.picture(view, new FormValues().typed(typed, problems), problems);
    }
}
