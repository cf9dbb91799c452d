package org.benchtrail.readin;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.readin.ReadIn;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.Stale;
import org.benchtrail.readin.ReadInView.Notice;
import org.benchtrail.readin.ReadInView.Shown;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.attachment.NewFile;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.attachment.AttachmentActs;
import org.benchtrail.ticket.TicketQueries;
import org.jboss.resteasy.reactive.RestQuery;
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
        ReadInForm empty = new ReadInForm();
        empty.kind = kind;
        empty.ticket = ticket;
        return page(200, empty, "", Notice.NONE, null);
    }

    /** What is found, and what would be recorded. */
    @POST
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @Blocking
    public Response preview(@BeanParam ReadInForm form) {
        Permissions.require(Permission.SEE_TICKETS, current.actor());
        return preview(200, form, Notice.NONE, null);
    }

    /** Records the ticked lines, if what is sent is what was shown. */
    @POST
    @Path("record")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @Blocking
    public Response record(@BeanParam ReadInForm form) {
        Permissions.require(Permission.WORK_TICKETS, current.actor());
        Set<String> taken = form.take == null ? Set.of() : Set.copyOf(form.take);
        try {
            Source source = form.source();
            ReadIn found = source.read(form.about());
            if (!form.print(source).equals(ReadInForm.or(form.seen))) {
                return preview(
                        409,
                        form,
                        notice("Something was changed since it was shown. Look again, then record it."),
                        null);
            }
            Outcome outcome = record(form, source, found, taken);
            return outcome.refused()
                    ? preview(409, form, new Notice("Not recorded. First:", List.of(), outcome.missing()), taken)
                    : Html.goTo("/tickets/" + outcome.number() + "#step");
        } catch (Stale e) {
            return preview(
                    409,
                    form,
                    notice(
                            "Somebody else wrote on the ticket meanwhile, and nothing was recorded. Read what is new there, then"
                                    + " record it again."),
                    taken);
        } catch (Invalid e) {
            return preview(
                    422, form, new Notice("Nothing was recorded. Put this right:", e.problems(), List.of()), taken);
        }
    }

    private Outcome record(ReadInForm form, Source source, ReadIn found, Set<String> taken) {
        List<Act> chosen = ReadInView.acts(found, taken);
        List<NewFile> files = taken.contains(ReadInView.ORIGINAL) ? List.of(source.file()) : List.of();
        if (chosen.isEmpty()) {
            throw new Invalid("take", "Tick at least one reading or finding to record.");
        }
        return acts.performWithFiles(ticket(form), form.shownVersion(), files, chosen, current.actor());
    }

    /** @throws Invalid if it is no number of a ticket */
    private static TicketNumber ticket(ReadInForm form) {
        try {
            return TicketNumber.parse(ReadInForm.or(form.ticket));
        } catch (Invalid e) {
            throw new Invalid("ticket", e.problems().get(0).sentence());
        }
    }

    /** The page with what is found in what was sent; if that is malformed, with the reasons and the text as it was. */
    private Response preview(int status, ReadInForm form, Notice notice, @Nullable Set<String> taken) {
        String text = ReadInForm.or(form.text);
        try {
            Source source = form.source();
            text = source.text();
            form.fileName = source.name();
            Shown shown = shown(form, source, taken);
            return page(status, form, text, notice, shown);
        } catch (Invalid e) {
            Notice refused = new Notice("Nothing was read in. Put this right:", e.problems(), List.of());
            return page(422, form, text, notice.problems().isEmpty() ? refused : notice, null);
        }
    }

    private Shown shown(ReadInForm form, Source source, @Nullable Set<String> taken) {
        ReadIn found = source.read(form.about());
        String number = "";
        int version = 0;
        if (!ReadInForm.or(form.ticket).isEmpty()) {
            TicketNumber ticket = ticket(form);
            number = ticket.toString();
            version = version(ticket);
        }
        boolean recording = current.may(Permission.WORK_TICKETS);
        return ReadInView.shown(found, form.print(source), number, version, recording, taken);
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

    private static Response page(int status, ReadInForm form, String text, Notice notice, @Nullable Shown shown) {
        ReadInView.Typed typed = new ReadInView.Typed(
                text,
                ReadInForm.or(form.device),
                ReadInForm.or(form.quantity),
                ReadInForm.or(form.unit),
                ReadInForm.or(form.ticket),
                ReadInForm.or(form.fileName));
        return Html.status(
                status,
                Templates.readIn(new ReadInView(ReadInView.kinds(ReadInForm.or(form.kind)), typed, notice, shown)));
    }
}
