package org.benchtrail.ticket.mending;

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
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedFile;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.ticket.TicketMending;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.server.multipart.MultipartFormDataInput;

/** Where an administrator and a supervisor mend a ticket whose trail was found broken. */
@Path("/tickets/{number}/mending")
@Authenticated
public class MendingPage {
    private final TicketMending mending;
    private final Directory people;
    private final CurrentActor current;

    MendingPage(TicketMending mending, Directory people, CurrentActor current) {
        this.mending = mending;
        this.people = people;
        this.current = current;
    }

    @CheckedTemplate(basePath = "ticket/mending")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance mending(MendingView v, FormValues fill, List<Invalid.Problem> problems);
    }

    @GET
    @Blocking
    public Response mending(@RestPath String number) {
        Permissions.require(Permission.MEND_TRAILS, current.actor());
        return Html.ok(page(TicketNumber.parse(number), new FormValues(), List.of()));
    }

    private TemplateInstance page(TicketNumber number, FormValues fill, List<Invalid.Problem> problems) {
        TicketMending.Standing standing = mending.look(number, current.actor());
        return Templates.mending(
                MendingView.of(standing, people.names(), current.actor().account(), current.zone()), fill, problems);
    }

    @POST
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @Blocking
    public Response propose(@RestPath String number, MultipartFormDataInput sent) {
        Permissions.require(Permission.MEND_TRAILS, current.actor());
        TicketNumber ticket = TicketNumber.parse(number);
        PostedForm form = PostedForm.of(sent);
        return Refusal.answer(
                () -> {
                    byte[] file = form.file("file").map(PostedFile::bytes).orElse(new byte[0]);
                    mending.propose(ticket, form.read(TicketMending.Wanted.class), file, current.actor());
                    return goOn(ticket);
                },
                refusal -> page(ticket, new FormValues().typed(form, refusal), refusal.problems()));
    }

    @POST
    @Path("{id}/agreement")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response agree(@RestPath String number, @RestPath long id, MultivaluedMap<String, String> typed) {
        Permissions.require(Permission.MEND_TRAILS, current.actor());
        TicketNumber ticket = TicketNumber.parse(number);
        return decided(ticket, () -> mending.agree(ticket, id, current.actor()));
    }

    @POST
    @Path("{id}/withdrawal")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response withdraw(@RestPath String number, @RestPath long id, MultivaluedMap<String, String> typed) {
        Permissions.require(Permission.MEND_TRAILS, current.actor());
        TicketNumber ticket = TicketNumber.parse(number);
        return decided(ticket, () -> mending.withdraw(ticket, id, current.actor()));
    }

    private Response decided(TicketNumber ticket, Runnable act) {
        return Refusal.answer(
                () -> {
                    act.run();
                    return goOn(ticket);
                },
                refusal -> page(ticket, new FormValues(), refusal.problems()));
    }

    private static Response goOn(TicketNumber ticket) {
        return Html.goTo("/tickets/" + ticket + "/mending");
    }
}
