package org.benchtrail.ticket.form;

import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.function.Function;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.platform.repeat.Repeats;
import org.benchtrail.ticket.Outcome;

/** Records what the form of a page about one entry says, and answers: on to the next page, or the same page with what is wrong. */
@ApplicationScoped
public class EntryForms {
    private static final String STALE = "Somebody else wrote on this sheet meanwhile: look again, then send.";

    private final FormActs acts;
    private final Repeats repeats;

    EntryForms(FormActs acts, Repeats repeats) {
        this.acts = acts;
        this.repeats = repeats;
    }

    /**
     * @param place on the page to which that leads which no field can cure
     * @param next address of the page that follows
     * @param again the page as it was sent, with what is wrong
     */
    public Response send(
            TicketNumber ticket,
            SheetForm form,
            PostedForm posted,
            String place,
            String next,
            Function<List<Problem>, TemplateInstance> again) {
        return Refusal.answer(
                () -> repeats.once(posted, () -> after(acts.perform(ticket, form, posted), place, next, again)),
                refusal -> again.apply(refusal.isStale() ? List.of(new Problem(place, STALE)) : refusal.problems()));
    }

    private static Response after(
            Outcome outcome, String place, String next, Function<List<Problem>, TemplateInstance> again) {
        if (!outcome.refused()) {
            return Html.goTo(next);
        }
        Refusal refusal = Refusal.unmet(outcome.missing().stream()
                .map(m -> new Problem(place, m.sentence()))
                .toList());
        return refusal.on(again.apply(refusal.problems()));
    }
}
