package org.benchtrail.readin;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.readin.ReadIn;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.readin.ReadInView.Notice;
import org.benchtrail.readin.ReadInView.Shown;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.attachment.AttachmentActs;
import org.benchtrail.ticket.attachment.NewFile;
import org.jboss.resteasy.reactive.RestQuery;
import org.jboss.resteasy.reactive.server.multipart.MultipartFormDataInput;
import org.jspecify.annotations.Nullable;

/**
 * Reading in for people. Nothing is kept between looking and recording: the form carries the text, and what is recorded is read
 * from it once more.
 */
@Path("/read-in")
@Authenticated
@Blocking
public class ReadInPage {
    private final CurrentActor current;
    private final AttachmentActs acts;
    private final TicketQueries look;

    ReadInPage(CurrentActor current, AttachmentActs acts, TicketQueries look) {
        this.current = current;
        this.acts = acts;
        this.look = look;
    }

    @CheckedTemplate(basePath = "readin")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance readIn(ReadInView v);
    }

    @GET
    @Blocking
    public Response form(@RestQuery @DefaultValue("") String kind, @RestQuery @DefaultValue("") String ticket) {
        Permissions.require(Permission.SEE_TICKETS, current.actor());
        ReadInForm asked = new ReadInForm(new PostedForm(Map.of("kind", List.of(kind), "ticket", List.of(ticket))));
        return page(200, asked, asked.text("text"), "", Notice.NONE, null);
    }

    /** What is found, and what would be recorded. */
    @POST
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @Blocking
    public Response preview(MultipartFormDataInput sent) {
        Permissions.require(Permission.SEE_TICKETS, current.actor());
        return preview(200, new ReadInForm(PostedForm.of(sent)), Notice.NONE, null);
    }

    /** Records the ticked lines, if what is sent is what was shown. */
    @POST
    @Path("record")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @Blocking
    public Response record(MultipartFormDataInput sent) {
        Permissions.require(Permission.WORK_TICKETS, current.actor());
        ReadInForm form = new ReadInForm(PostedForm.of(sent));
        return Refusal.respond(
                () -> recorded(form), refusal -> preview(refusal.kind().status(), form, notice(refusal), form.taken()));
    }

    private static Notice notice(Refusal refusal) {
        return refusal.isStale()
                ? notice(
                        "Somebody else wrote on the ticket meanwhile, and nothing was recorded. Read what is new there, then"
                                + " record it again.")
                : new Notice("Nothing was recorded. Put this right:", refusal.problems(), List.of());
    }

    private Response recorded(ReadInForm form) {
        RawReport report = form.report();
        ReadIn found = report.read(form.about());
        if (!form.print(report).equals(form.text("seen"))) {
            String changed = "Something was changed since it was shown. Look again, then record it.";
            return preview(409, form, notice(changed), null);
        }
        Outcome outcome = record(form, report, found);
        return outcome.refused()
                ? preview(409, form, new Notice("Not recorded. First:", List.of(), outcome.missing()), form.taken())
                : Html.goTo("/tickets/" + outcome.number() + "#step");
    }

    private Outcome record(ReadInForm form, RawReport report, ReadIn found) {
        Set<String> taken = form.taken();
        List<Act> chosen = ReadInView.acts(found, taken);
        List<NewFile> files = taken.contains(ReadInView.ORIGINAL) ? List.of(report.file()) : List.of();
        if (chosen.isEmpty()) {
            throw new Invalid("take", "Tick at least one reading or finding to record.");
        }
        return acts.performWithFiles(form.ticket(), form.sent().version(), files, chosen, current.actor());
    }

    /** The page with what is found in what was sent; if that is malformed, with the reasons and the text as it was. */
    private Response preview(int status, ReadInForm form, Notice notice, @Nullable Set<String> taken) {
        return Refusal.respond(
                () -> preview(status, form, form.report(), notice, taken),
                refusal -> malformed(form, form.text("text"), form.text("fileName"), notice, refusal));
    }

    private Response preview(
            int status, ReadInForm form, RawReport report, Notice notice, @Nullable Set<String> taken) {
        return Refusal.respond(
                () -> page(status, form, report.text(), report.name(), notice, shown(form, report, taken)),
                refusal -> malformed(form, report.text(), report.name(), notice, refusal));
    }

    private static Response malformed(ReadInForm form, String text, String fileName, Notice notice, Refusal refusal) {
        Notice refused = new Notice("Nothing was read in. Put this right:", refusal.problems(), List.of());
        return page(422, form, text, fileName, notice.problems().isEmpty() ? refused : notice, null);
    }

    private Shown shown(ReadInForm form, RawReport report, @Nullable Set<String> taken) {
        ReadIn found = report.read(form.about());
        String number = "";
        int version = 0;
        if (!form.text("ticket").isEmpty()) {
            TicketNumber ticket = form.ticket();
            number = ticket.toString();
            version = version(ticket);
        }
        boolean recording = current.may(Permission.WORK_TICKETS);
        return ReadInView.shown(found, form.print(report), number, version, recording, taken);
    }

    private int version(TicketNumber ticket) {
        try {
            return look.ticket(ticket, current.actor()).sheet().entries();
        } catch (NotFound e) {
            throw new Invalid("ticket", "There is no ticket " + ticket + ": correct the number, or leave it out.");
        }
    }

    private static Notice notice(String words) {
        return new Notice(words, List.of(), List.of());
    }

    private static Response page(
            int status, ReadInForm form, String text, String fileName, Notice notice, @Nullable Shown shown) {
        ReadInView.Typed typed = new ReadInView.Typed(
                text, form.text("device"), form.text("quantity"), form.text("unit"), form.text("ticket"), fileName);
        return Html.status(
                status, Templates.readIn(new ReadInView(ReadInView.kinds(form.text("kind")), typed, notice, shown)));
    }
}
