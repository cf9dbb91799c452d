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
import java.util.Map;
import java.util.function.Consumer;
import org.benchtrail.core.Invalid.Problem;
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
            List<Row<PlaceActs.PlaceView>> places,
            Row<String> newPlace,
            List<Row<PlaceActs.TeamView>> teams,
            Row<String> newTeam,
            boolean keeping,
            List<Option> workers,
            List<Problem> problems) {}

    /**
     * A row with the form that changes it, or the form that adds one.
     *
     * @param at what stands before the ids of its fields
     * @param fill what they hold
     * @param open whether it is the form that was refused
     */
    public record Row<T>(T it, String at, FormValues fill, boolean open) {}

    /** The form that was refused; {@code at} tells which. */
    private record Refused(String at, PostedForm form, Refusal refusal) {
        <T> Row<T> row(T it, String of, FormValues stored) {
            return new Row<>(it, of, of.equals(at) ? stored.typed(form, refusal) : stored, of.equals(at));
        }

        List<Problem> problems() {
            return told(refusal).stream()
                    .map(p -> new Problem(at + (p.field().equals(VERSION) ? "name" : p.field()), p.sentence()))
                    .toList();
        }
    }

    private static final Refused NOTHING = new Refused("", new PostedForm(Map.of()), Refusal.unmet(List.of()));
    private static final String VERSION = "version";
    private static final String NEW_PLACE = "new-place-";
    private static final String NEW_TEAM = "new-team-";

    @CheckedTemplate(basePath = "site")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance site(View v);
    }

    @GET
    @Blocking
    public Response site() {
        return Html.ok(page(NOTHING));
    }

    private TemplateInstance page(Refused refused) {
        Actor actor = current.actor();
        return Templates.site(new View(
                acts.places(actor).stream()
                        .map(p -> refused.row(p, placeAt(p.id()), new FormValues().put("", p)))
                        .toList(),
                refused.row("", NEW_PLACE, new FormValues()),
                acts.teams(actor).stream()
                        .map(t -> refused.row(t, teamAt(t.id()), new FormValues().put("", t)))
                        .toList(),
                refused.row("", NEW_TEAM, new FormValues()),
                current.may(Permission.KEEP_SITE),
                people.workers().stream()
                        .map(w -> new Option(w.account(), w.name()))
                        .toList(),
                refused.problems()));
    }

    private static String placeAt(long id) {
        return "place-" + id + "-";
    }

    private static String teamAt(long id) {
        return "team-" + id + "-";
    }

    private Response kept(String at, String back, MultivaluedMap<String, String> typed, Consumer<PostedForm> act) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> {
                    act.accept(form);
                    return Html.goTo(back);
                },
                refusal -> page(new Refused(at, form, refusal)));
    }

    @POST
    @Path("places")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response addPlace(MultivaluedMap<String, String> typed) {
        return kept(NEW_PLACE, "/site", typed, form -> acts.addPlace(place(form), current.actor()));
    }

    @POST
    @Path("places/{id}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response changePlace(@RestPath long id, MultivaluedMap<String, String> typed) {
        return kept(
                placeAt(id),
                "/site",
                typed,
                form -> acts.changePlace(id, place(form), form.version(), current.actor()));
    }

    @POST
    @Path("teams")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response addTeam(MultivaluedMap<String, String> typed) {
        return kept(NEW_TEAM, "/site#teams", typed, form -> acts.addTeam(team(form), current.actor()));
    }

    @POST
    @Path("teams/{id}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response changeTeam(@RestPath long id, MultivaluedMap<String, String> typed) {
        return kept(
                teamAt(id),
                "/site#teams",
                typed,
                form -> acts.changeTeam(id, team(form), form.version(), current.actor()));
    }

    private static PlaceActs.PlaceText place(PostedForm form) {
        return new PlaceActs.PlaceText(form.text("name"), form.text("mains"), form.has("closed"));
    }

    private static PlaceActs.TeamText team(PostedForm form) {
        return new PlaceActs.TeamText(form.text("name"), form.all("members"), form.has("closed"));
    }

    /** What a page tells that does not show again what was typed. */
    static List<Problem> told(Refusal refusal) {
        return refusal.isStale()
                ? List.of(new Problem(VERSION, "Somebody else changed this meanwhile. Look at it and change it again."))
                : refusal.problems();
    }
}
