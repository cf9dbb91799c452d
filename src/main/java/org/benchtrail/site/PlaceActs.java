package org.benchtrail.site;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.site.SiteRules;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.Stale;
import org.jspecify.annotations.Nullable;

/** Keeps places and teams; every change is noted. */
@ApplicationScoped
@Transactional
public class PlaceActs {
    private static final int LONGEST = 200;

    private final PlaceRows places;
    private final Teams teams;
    private final SiteChanges changes;
    private final Directory people;

    PlaceActs(PlaceRows places, Teams teams, SiteChanges changes, Directory people) {
        this.places = places;
        this.teams = teams;
        this.changes = changes;
        this.people = people;
    }

    /**
     * A place as typed.
     *
     * @param name its whole name, from the largest to the smallest part, such as "Main house, floor 2, room 14"
     * @param mains nominal voltage where it is not the site's: 100, 120 or 230; empty if it is
     * @param closed whether it is no longer offered
     */
    public record PlaceText(String name, String mains, boolean closed) {
        public PlaceText {
            name = PlainText.line(name);
            mains = PlainText.line(mains);
        }
    }

    /** A place as it is shown. */
    public record PlaceView(long id, String name, String mains, boolean closed, int version) {}

    /**
     * A team as typed.
     *
     * @param members accounts of people who work on tickets
     */
    public record TeamText(String name, List<String> members, boolean closed) {
        public TeamText {
            name = PlainText.line(name);
            members = members.stream().map(String::strip).distinct().sorted().toList();
        }
    }

    /**
     * A team as it is shown.
     *
     * @param names of its members, joined
     */
    public record TeamView(long id, String name, List<String> members, String names, boolean closed, int version) {}

    public List<PlaceView> places(Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        return places.all().stream().map(PlaceActs::view).toList();
    }

    public List<TeamView> teams(Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        List<Team> all = teams.all();
        Map<String, String> names =
                people.names(all.stream().flatMap(t -> Stream.of(t.members)).collect(Collectors.toSet()));
        return all.stream().map(t -> view(t, names)).toList();
    }

    /** @throws Invalid if the name is missing or taken */
    public PlaceView addPlace(PlaceText typed, Actor actor) {
        Permissions.require(Permission.KEEP_SITE, actor);
        return keep(new PlaceRow(), typed, Map.of(), actor);
    }

    /**
     * @throws Stale if somebody changed it meanwhile
     * @throws Invalid if the name is missing or taken
     */
    public PlaceView changePlace(long id, PlaceText typed, int version, Actor actor) {
        Permissions.require(Permission.KEEP_SITE, actor);
        PlaceRow place = places.findByIdOptional(id).orElseThrow(() -> new NotFound("place " + id));
        if (place.version != version) {
            throw new Stale(place.version);
        }
        return keep(place, typed, fields(place), actor);
    }

    private PlaceView keep(PlaceRow place, PlaceText typed, Map<String, String> before, Actor actor) {
        Optional<PlaceRow> same = places.named(typed.name());
        name(typed.name(), same.map(p -> p.id).orElse(null), place.id, "place")
                .require(
                        typed.mains().isEmpty() || SiteRules.MAINS.contains(typed.mains()),
                        "mains",
                        "Choose 100, 120 or 230 V, or the site's.")
                .throwIfAny();
        place.name = typed.name();
        place.mains = typed.mains().isEmpty() ? null : typed.mains();
        place.closed = typed.closed();
        place.version += before.isEmpty() ? 0 : 1;
        places.persistAndFlush(place);
        changes.note(SiteChange.Kind.PLACE, place.id, before, fields(place), actor);
        return view(place);
    }

    /** @throws Invalid if the name is missing or taken, or somebody does not work on tickets */
    public TeamView addTeam(TeamText typed, Actor actor) {
        Permissions.require(Permission.KEEP_SITE, actor);
        return keep(new Team(), typed, Map.of(), actor);
    }

    /**
     * @throws Stale if somebody changed it meanwhile
     * @throws Invalid as {@link #addTeam}
     */
    public TeamView changeTeam(long id, TeamText typed, int version, Actor actor) {
        Permissions.require(Permission.KEEP_SITE, actor);
        Team team = teams.findByIdOptional(id).orElseThrow(() -> new NotFound("team " + id));
        if (team.version != version) {
            throw new Stale(team.version);
        }
        return keep(team, typed, fields(team), actor);
    }

    private TeamView keep(Team team, TeamText typed, Map<String, String> before, Actor actor) {
        Optional<Team> same = teams.named(typed.name());
        List<String> workers = people.workers().stream().map(Actor::account).toList();
        List<String> kept = List.of(team.members);
        name(typed.name(), same.map(t -> t.id).orElse(null), team.id, "team")
                .require(
                        typed.members().stream().allMatch(m -> workers.contains(m) || kept.contains(m)),
                        "members",
                        "Choose from those who work on tickets.")
                .throwIfAny();
        team.name = typed.name();
        team.members = typed.members().toArray(String[]::new);
        team.closed = typed.closed();
        team.version += before.isEmpty() ? 0 : 1;
        teams.persistAndFlush(team);
        changes.note(SiteChange.Kind.TEAM, team.id, before, fields(team), actor);
        return view(team, people.names(List.of(team.members)));
    }

    private static Invalid.Collector name(String name, @Nullable Long same, @Nullable Long own, String what) {
        return new Invalid.Collector()
                .require(
                        !name.isEmpty() && name.length() <= LONGEST,
                        "name",
                        "Name the " + what + " in at most 200 characters.")
                .require(PlainText.isText(name), "name", PlainText.WHAT_TO_DO)
                .require(same == null || same.equals(own), "name", "There is a " + what + " of this name already.");
    }

    private static Map<String, String> fields(PlaceRow place) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("name", place.name);
        fields.put("mains", place.mains == null ? "" : place.mains + " V");
        fields.put("closed", place.closed ? "yes" : "");
        return fields;
    }

    private static Map<String, String> fields(Team team) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("name", team.name);
        fields.put("members", String.join(", ", team.members));
        fields.put("closed", team.closed ? "yes" : "");
        return fields;
    }

    private static PlaceView view(PlaceRow p) {
        return new PlaceView(p.id == null ? 0 : p.id, p.name, p.mains == null ? "" : p.mains, p.closed, p.version);
    }

    private static TeamView view(Team t, Map<String, String> names) {
        String joined = Stream.of(t.members).map(m -> names.getOrDefault(m, m)).collect(Collectors.joining(", "));
        return new TeamView(t.id == null ? 0 : t.id, t.name, List.of(t.members), joined, t.closed, t.version);
    }
}
