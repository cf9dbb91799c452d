package org.benchtrail.proposals;

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
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Directory;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** The supervisors' pages: what waits for another of them, and one proposal. */
@Path("/proposals")
@Authenticated
public class ProposalsPage {
    private static final int MOST_SHOWN = 200;

    private final ProposalActs acts;
    private final CurrentActor current;
    private final Directory people;

    ProposalsPage(ProposalActs acts, CurrentActor current, Directory people) {
        this.acts = acts;
        this.current = current;
        this.people = people;
    }

    @CheckedTemplate(basePath = "proposals")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance proposals(List<Line> waiting, List<Line> decided);

        static native TemplateInstance proposal(Shown v, FormValues fill, List<Invalid.Problem> problems);
    }

    /**
     * A proposal in words.
     *
     * @param own whether the viewer proposed it
     */
    public record Line(ProposalView it, String proposed, String decided, boolean own) {
        public boolean open() {
            return it.state() == ProposalState.OPEN;
        }
    }

    /** @param hidden differences that are not shown, because they are too many */
    public record Shown(Line line, List<Difference> differences, int hidden, String obstacle) {}

    @GET
    @Blocking
    public Response proposals() {
        List<ProposalView> waiting = acts.waiting(current.actor());
        List<ProposalView> decided = acts.decided(current.actor());
        Map<String, String> names =
                names(Stream.concat(waiting.stream(), decided.stream()).toList());
        return Html.ok(Templates.proposals(
                waiting.stream().map(p -> line(p, names)).toList(),
                decided.stream().map(p -> line(p, names)).toList()));
    }

    @GET
    @Path("{id}")
    @Blocking
    public Response proposal(@RestPath long id) {
        return Html.ok(shown(id, new FormValues(), List.of()));
    }

    private TemplateInstance shown(long id, FormValues fill, List<Invalid.Problem> problems) {
        ProposalDetails details = acts.details(id, current.actor());
        List<Difference> all = details.differences();
        List<Difference> first = all.subList(0, Math.min(MOST_SHOWN, all.size()));
        Line line = line(details.proposal(), names(List.of(details.proposal())));
        return Templates.proposal(
                new Shown(line, first, all.size() - first.size(), details.obstacle()), fill, problems);
    }

    private Map<String, String> names(List<ProposalView> proposals) {
        return people.names(proposals.stream()
                .flatMap(p -> Stream.of(p.proposedBy(), p.decidedBy() == null ? "" : p.decidedBy()))
                .distinct()
                .toList());
    }

    private Line line(ProposalView p, Map<String, String> names) {
        return new Line(
                p,
                stamp(p.proposedBy(), p.proposedAt(), names),
                stamp(p.decidedBy(), p.decidedAt(), names),
                p.proposedBy().equals(current.actor().account()));
    }

    private String stamp(@Nullable String who, @Nullable Instant at, Map<String, String> names) {
        return who == null || at == null ? "" : names.getOrDefault(who, who) + ", " + Moments.text(at, current.zone());
    }

    @POST
    @Path("{id}/confirmation")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response confirm(@RestPath long id, MultivaluedMap<String, String> typed) {
        return afterwards(id, new PostedForm(typed), () -> acts.confirm(id, current.actor()));
    }

    @POST
    @Path("{id}/declining")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response decline(@RestPath long id, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return afterwards(id, form, () -> acts.decline(id, form.text("reason"), current.actor()));
    }

    @POST
    @Path("{id}/withdrawal")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response withdraw(@RestPath long id, MultivaluedMap<String, String> typed) {
        return afterwards(id, new PostedForm(typed), () -> acts.withdraw(id, current.actor()));
    }

    private Response afterwards(long id, PostedForm form, Runnable act) {
        return Refusal.answer(
                () -> {
                    act.run();
                    return Html.goTo("/proposals/" + id);
                },
                refusal -> shown(id, new FormValues().typed(form, refusal), refusal.problems()));
    }
}
