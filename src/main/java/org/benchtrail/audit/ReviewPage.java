package org.benchtrail.audit;

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
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.audit.AuditAct.Marked;
import org.benchtrail.core.audit.AuditLot.Turn;
import org.benchtrail.core.audit.Mark;
import org.benchtrail.core.method.DefectClass;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.NeedsPermission;
import org.benchtrail.people.Permission;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.AskedFor;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** One review: the next requirement beside its evidence, every mark saved as it is made. */
@Path("/audit/{lot}/reviews/{ticket}/{turn}")
@Authenticated
public class ReviewPage {
    private final AuditActs acts;
    private final ReviewQueries queries;
    private final CurrentActor current;

    ReviewPage(AuditActs acts, ReviewQueries queries, CurrentActor current) {
        this.acts = acts;
        this.queries = queries;
        this.current = current;
    }

    @CheckedTemplate(basePath = "audit")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance review(ReviewView v, FormValues fill, List<Invalid.Problem> problems);
    }

    /** The constant that was chosen in a field. */
    static <E extends Enum<E>> E chosen(Class<E> of, String field, String typed) {
        return Optional.ofNullable(AskedFor.choice(of, typed)).orElseThrow(() -> new Invalid(field, "Choose one."));
    }

    @GET
    @Blocking
    public Response review(
            @RestPath String lot, @RestPath String ticket, @RestPath int turn, @RestQuery @DefaultValue("") String of) {
        ReviewView view = queries.review(lot, new Turn(ticket, turn), of, current.actor(), current.zone());
        return Html.ok(Templates.review(view, filled(view), List.of()));
    }

    /** What was marked before, or the entries that the server found. */
    private FormValues filled(ReviewView view) {
        FormValues fill = new FormValues();
        ReviewView.Now now = view.now();
        if (now == null) {
            return fill;
        }
        queries.marked(view.lot(), new Turn(view.ticket(), view.turn()), now.code())
                .ifPresentOrElse(
                        marked -> fill.set("mark", marked.mark().name())
                                .set(
                                        "defect",
                                        marked.defect() == null
                                                ? ""
                                                : marked.defect().name())
                                .set("entries", numbers(marked.entries()))
                                .set("remark", marked.remark()),
                        () -> fill.set("defect", now.usual())
                                .set(
                                        "entries",
                                        numbers(now.evidence().stream()
                                                .map(e -> e.entry())
                                                .toList())));
        return fill;
    }

    private static String numbers(List<Integer> entries) {
        return entries.stream().map(String::valueOf).collect(Collectors.joining(", "));
    }

    @POST
    @Path("marks")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @NeedsPermission(Permission.REVIEW)
    @Blocking
    public Response mark(
            @RestPath String lot, @RestPath String ticket, @RestPath int turn, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return afterwards(lot, new Turn(ticket, turn), form, () -> {
            Mark mark = chosen(Mark.class, "mark", form.text("mark"));
            acts.mark(
                    lot,
                    new Marked(
                            ticket,
                            turn,
                            form.text("requirement"),
                            mark,
                            mark == Mark.NOT_SATISFIED
                                    ? chosen(DefectClass.class, "defect", form.text("defect"))
                                    : null,
                            entries(form.text("entries")),
                            form.text("remark")),
                    current.actor());
        });
    }

    /** Marks in one go what the gate did not ask for. */
    @POST
    @Path("not-asked")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @NeedsPermission(Permission.REVIEW)
    @Blocking
    public Response markNotAsked(
            @RestPath String lot, @RestPath String ticket, @RestPath int turn, MultivaluedMap<String, String> typed) {
        Turn of = new Turn(ticket, turn);
        return afterwards(lot, of, new PostedForm(typed), () -> acts.markNotAsked(lot, of, current.actor()));
    }

    private static List<Integer> entries(String typed) {
        if (!typed.matches("[0-9]{0,6}([ ,;]+[0-9]{1,6})*[ ,;]*")) {
            throw new Invalid("entries", "Give the numbers of entries with commas between, such as 12, 15.");
        }
        return Arrays.stream(typed.split("[ ,;]+"))
                .filter(n -> !n.isEmpty())
                .map(Integer::valueOf)
                .toList();
    }

    @POST
    @Path("signature")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @NeedsPermission(Permission.REVIEW)
    @Blocking
    public Response sign(
            @RestPath String lot, @RestPath String ticket, @RestPath int turn, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return leaving(
                lot, new Turn(ticket, turn), form, () -> acts.sign(lot, new Turn(ticket, turn), current.actor()));
    }

    @POST
    @Path("decline")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @NeedsPermission(Permission.REVIEW)
    @Blocking
    public Response decline(
            @RestPath String lot, @RestPath String ticket, @RestPath int turn, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return leaving(
                lot,
                new Turn(ticket, turn),
                form,
                () -> acts.decline(lot, new Turn(ticket, turn), form.text("why"), current.actor()));
    }

    private Response afterwards(String lot, Turn turn, PostedForm form, Runnable act) {
        return answer(lot, turn, form, act, "/audit/" + lot + "/reviews/" + turn.ticket() + "/" + turn.turn());
    }

    private Response leaving(String lot, Turn turn, PostedForm form, Runnable act) {
        return answer(lot, turn, form, act, "/audit/" + lot);
    }

    private Response answer(String lot, Turn turn, PostedForm form, Runnable act, String next) {
        return Refusal.answer(
                () -> {
                    act.run();
                    return Html.goTo(next);
                },
                refusal -> Templates.review(
                        queries.review(lot, turn, form.text("requirement"), current.actor(), current.zone()),
                        new FormValues().typed(form, refusal),
                        refusal.problems()));
    }
}
