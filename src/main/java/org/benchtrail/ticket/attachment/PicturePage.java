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
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.platform.repeat.Repeats;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.form.FormActs;
import org.jboss.resteasy.reactive.RestPath;

/** A picture shown large, on which something can be marked. */
@Path("/tickets/{number}/pictures/{entry}")
@Authenticated
public class PicturePage {
    private static final Problem STALE =
            new Problem("picture", "Somebody else wrote on this sheet meanwhile: look again, then send.");

    private final AttachmentQueries queries;
    private final FormActs acts;
    private final CurrentActor current;
    private final Repeats repeats;

    PicturePage(AttachmentQueries queries, FormActs acts, CurrentActor current, Repeats repeats) {
        this.queries = queries;
        this.acts = acts;
        this.current = current;
        this.repeats = repeats;
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
        PostedForm posted = new PostedForm(typed);
        return Refusal.answer(
                () -> repeats.once(posted, () -> after(acts.perform(ticket, MarkForm.FORM, posted), entry, typed)),
                refusal -> page(ticket, entry, typed, refusal.isStale() ? List.of(STALE) : atThePicture(refusal)));
    }

    private Response after(Outcome outcome, int entry, Map<String, List<String>> typed) {
        if (!outcome.refused()) {
            return Html.goTo("/tickets/" + outcome.number() + "/pictures/" + entry);
        }
        Refusal refusal = Refusal.unmet(outcome.missing().stream()
                .map(m -> new Problem("picture", m.sentence()))
                .toList());
        return refusal.on(page(outcome.number(), entry, typed, refusal.problems()));
    }

    /** The picture itself has no field: what is wrong with it is told where it stands. */
    private static List<Problem> atThePicture(Refusal refusal) {
        return refusal.problems().stream()
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
