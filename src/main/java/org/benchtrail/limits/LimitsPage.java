package org.benchtrail.limits;

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
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.measure.LimitLibrary;
import org.benchtrail.core.measure.Provenance;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.proposals.ProposalView;
import org.jboss.resteasy.reactive.RestPath;

/** The library of limits for people. */
@Path("/limits")
@Authenticated
@Blocking
public class LimitsPage {
    private final LimitBook book;
    private final CurrentActor current;

    LimitsPage(LimitBook book, CurrentActor current) {
        this.book = book;
        this.current = current;
    }

    /** A limit as a row of a table. */
    public record Line(
            String id, String quantity, String limit, String source, String standing, String note, boolean offered) {

        static Line of(LimitLibrary.Row row) {
            String edition = row.edition().equals("-") ? "" : ", " + row.edition();
            String standing = row.provenance() == Provenance.GIVEN
                    ? "the shop's own"
                    : row.provenance().words();
            return new Line(
                    row.id(),
                    row.quantity(),
                    row.limit().words(),
                    row.limit().source() + edition,
                    standing,
                    row.note(),
                    true);
        }

        static Line of(LimitBook.Added added) {
            Line line = of(added.row());
            return new Line(
                    line.id,
                    line.quantity,
                    line.limit,
                    line.source,
                    "added by " + added.addedBy() + (added.retired() == null ? "" : ", no longer offered"),
                    line.note,
                    added.retired() == null);
        }
    }

    @CheckedTemplate(basePath = "limits")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance limits(
                List<Line> own, List<Line> published, boolean keeping, FormValues fill, List<Invalid.Problem> problems);
    }

    @GET
    @Blocking
    public Response limits() {
        return Html.ok(page(new FormValues(), List.of()));
    }

    private TemplateInstance page(FormValues form, List<Invalid.Problem> problems) {
        return Templates.limits(
                book.ofTheShop(current.actor()).stream().map(Line::of).toList(),
                LimitLibrary.published().rows().stream().map(Line::of).toList(),
                Permissions.allow(Permission.KEEP_LIMITS, current.actor()),
                form,
                problems);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response add(MultivaluedMap<String, String> typed) {
        Permissions.require(Permission.KEEP_LIMITS, current.actor());
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> {
                    LimitBook.Proposed proposed = form.read(LimitBook.Proposed.class);
                    return goOn(book.add(proposed, current.actor()));
                },
                refusal -> page(new FormValues().typed(form, refusal), refusal.problems()));
    }

    /** Takes a limit of the shop out of what is offered, or back in. */
    @POST
    @Path("{id}/offer")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response offer(@RestPath String id, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> goOn(book.offer(id, form.text("offered").equals("true"), current.actor())),
                refusal -> page(new FormValues(), refusal.problems()));
    }

    private static Response goOn(Optional<ProposalView> proposal) {
        return Html.goTo(proposal.map(p -> "/proposals/" + p.id()).orElse("/limits"));
    }
}
