package org.benchtrail.ticket.erasure;

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
import java.time.Duration;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.proposals.ProposalActs;
import org.benchtrail.ticket.GivenFiles;
import org.benchtrail.ticket.RequesterErasure;
import org.benchtrail.ticket.Times;
import org.jboss.resteasy.reactive.RestPath;

/** Where a supervisor proposes to erase who reported a ticket, and sees what goes and what stays. */
@Path("/tickets/{number}/erasing")
@Authenticated
public class ErasurePage {
    private static final int SHOWN = 30;

    private final RequesterErasure erasure;
    private final ErasureChange change;
    private final GivenFiles given;
    private final ProposalActs proposals;
    private final CurrentActor current;
    private final RequesterConfig config;

    ErasurePage(
            RequesterErasure erasure,
            ErasureChange change,
            GivenFiles given,
            ProposalActs proposals,
            CurrentActor current,
            RequesterConfig config) {
        this.erasure = erasure;
        this.change = change;
        this.given = given;
        this.proposals = proposals;
        this.current = current;
        this.config = config;
    }

    /**
     * What the page shows.
     *
     * @param erased when; empty if it is not
     * @param tickets some of them, the newest first
     * @param given files of the ticket that somebody took
     * @param keptForDays after how many days the server erases by itself; 0 if it does not
     */
    public record View(
            String number,
            RequesterErasure.Kept kept,
            String erased,
            List<String> tickets,
            List<GivenLine> given,
            long keptForDays) {
        public long more() {
            return kept.tickets() - tickets.size();
        }
    }

    @CheckedTemplate(basePath = "ticket/erasure")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance erasing(View v, FormValues fill, List<Invalid.Problem> problems);
    }

    @GET
    @Blocking
    public Response erasing(@RestPath String number) {
        Permissions.require(Permission.DECIDE_PROPOSALS, current.actor());
        return Html.ok(page(TicketNumber.parse(number), new FormValues(), List.of()));
    }

    private TemplateInstance page(TicketNumber number, FormValues fill, List<Invalid.Problem> problems) {
        RequesterErasure.Kept kept = erasure.kept(number);
        return Templates.erasing(
                new View(
                        number.toString(),
                        kept,
                        kept.erased() == null ? "" : Times.text(kept.erased(), current.zone()),
                        erasure.newest(number, SHOWN).stream()
                                .map(TicketNumber::toString)
                                .toList(),
                        GivenLine.of(given.of(number), current.zone()),
                        config.keptFor().map(Duration::toDays).orElse(0L)),
                fill,
                problems);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response propose(@RestPath String number, MultivaluedMap<String, String> typed) {
        Permissions.require(Permission.DECIDE_PROPOSALS, current.actor());
        TicketNumber ticket = TicketNumber.parse(number);
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> Html.goTo("/proposals/"
                        + proposals
                                .propose(
                                        change,
                                        new ErasureChange.OfTicket(ticket.toString()),
                                        form.text("reason"),
                                        current.actor())
                                .id()),
                refusal -> page(ticket, new FormValues().typed(form, refusal), refusal.problems()));
    }
}
