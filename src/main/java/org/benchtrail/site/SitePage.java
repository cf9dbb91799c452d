package org.benchtrail.site;

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
import org.benchtrail.core.method.Actor;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.Option;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.jboss.resteasy.reactive.RestPath;

/** The site: its places and teams. */
@Path("/site")
@Authenticated
public class SitePage {
    private final PlaceActs acts;
    private final Directory people;
    private final CurrentActor current;

    SitePage(PlaceActs acts, Directory people, CurrentActor current) {
        this.acts = acts;
        this.people = people;
        this.current = current;
    }

    /**
     * What the page shows.
     *
     * @param keeping whether the viewer may change places and teams
     * @param workers who can be a member of a team
     */
    public record View(
            List<PlaceActs.PlaceView> places, List<PlaceActs.TeamView> teams, boolean keeping, List<Option> workers) {}

    @CheckedTemplate(basePath = "site")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance site(View v, FormValues place, FormValues team, List<Invalid.Problem> problems);
    }

    @GET
    @Blocking
    public Response site() {
        return Html.ok(page(new FormValues(), new FormValues(), List.of()));
    }

    private TemplateInstance page(FormValues place, FormValues team, List<Invalid.Problem> problems) {
        Actor actor = current.actor();
        List<Option> workers = people.workers().stream()
                .map(w -> new Option(w.account(), w.name()))
                .toList();
        View view = new View(acts.places(actor), acts.teams(actor), current.may(Permission.KEEP_SITE), workers);
        return Templates.site(view, place, team, problems);
    }

    @POST
    @Path("places")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response addPlace(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> {
                    acts.addPlace(place(form), current.actor());
                    return Html.goTo("/site");
                },
                refusal -> page(new FormValues().typed(form, refusal), new FormValues(), refusal.problems()));
    }

    @POST
    @Path("places/{id}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response changePlace(@RestPath long id, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> {
                    acts.changePlace(id, place(form), form.version(), current.actor());
                    return Html.goTo("/site");
                },
                refusal -> page(new FormValues(), new FormValues(), told(refusal)));
    }

    @POST
    @Path("teams")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response addTeam(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> {
                    acts.addTeam(team(form), current.actor());
                    return Html.goTo("/site#teams");
                },
                refusal -> page(new FormValues(), new FormValues().typed(form, refusal), refusal.problems()));
    }

    @POST
    @Path("teams/{id}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response changeTeam(@RestPath long id, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> {
                    acts.changeTeam(id, team(form), form.version(), current.actor());
                    return Html.goTo("/site#teams");
                },
                refusal -> page(new FormValues(), new FormValues(), told(refusal)));
    }

    private static PlaceActs.PlaceText place(PostedForm form) {
        return new PlaceActs.PlaceText(form.text("name"), form.text("mains"), form.has("closed"));
    }

    private static PlaceActs.TeamText team(PostedForm form) {
        return new PlaceActs.TeamText(form.text("name"), form.all("members"), form.has("closed"));
    }

    /** What a page tells that does not show again what was typed. */
    static List<Invalid.Problem> told(Refusal refusal) {
        return refusal.isStale()
                ? List.of(new Invalid.Problem(
                        "version", "Somebody else changed this meanwhile. Look at it and change it again."))
                : refusal.problems();
    }
}
