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
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.measure.LimitLibrary;
import org.benchtrail.core.measure.Provenance;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

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

    /** The form for a new one, with what was typed and what is wrong with it. */
    public record Form(Map<String, String> typed, Map<String, String> wrong) {
        public String value(String name) {
            return typed.getOrDefault(name, "");
        }

        public boolean wrong(String name) {
            return wrong.containsKey(name);
        }

        public String error(String name) {
            return wrong.getOrDefault(name, "");
        }
    }

    @CheckedTemplate(basePath = "limits")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance limits(
                List<Line> own, List<Line> published, boolean keeping, Form fill, List<Invalid.Problem> problems);
    }

    @GET
    @Blocking
    public Response limits() {
        return Html.ok(page(new Form(Map.of(), Map.of()), List.of()));
    }

    private TemplateInstance page(Form form, List<Invalid.Problem> problems) {
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
        try {
            book.add(
                    new LimitBook.Proposed(
                            text(typed, "id"),
                            text(typed, "quantity"),
                            text(typed, "unit"),
                            text(typed, "lower"),
                            text(typed, "upper"),
                            text(typed, "source"),
                            text(typed, "note")),
                    current.actor());
            return Html.goTo("/limits");
        } catch (Invalid e) {
            Map<String, String> kept = new java.util.HashMap<>();
            typed.forEach((name, values) -> kept.put(name, values.get(0)));
            Map<String, String> wrong = new java.util.HashMap<>();
            e.problems().forEach(p -> wrong.putIfAbsent(p.field(), p.sentence()));
            return Html.status(422, page(new Form(kept, wrong), e.problems()));
        }
    }

    private static String text(MultivaluedMap<String, String> typed, String name) {
        @Nullable String first = typed.getFirst(name);
        return first == null ? "" : first.strip();
    }

    /** Takes a limit of the shop out of what is offered, or back in. */
    @POST
    @Path("{id}/offer")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response offer(@RestPath String id, MultivaluedMap<String, String> typed) {
        book.offer(id, text(typed, "offered").equals("true"), current.actor());
        return Html.goTo("/limits");
    }
}
