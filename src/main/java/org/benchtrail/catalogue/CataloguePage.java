package org.benchtrail.catalogue;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Learned;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.Option;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.proposals.ProposalView;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** The cause catalogue to read, its versions, and the supervisor's page to edit it. */
@Path("/catalogue")
@Authenticated
public class CataloguePage {
    private static final int LINES = 25;
    private static final int MOST_SHOWN = 200;

    private final CatalogueActs acts;
    private final Catalogues catalogues;
    private final CurrentActor current;
    private final Directory people;
    private final CauseDoor door;

    CataloguePage(CatalogueActs acts, Catalogues catalogues, CurrentActor current, Directory people, CauseDoor door) {
        this.door = door;
        this.acts = acts;
        this.catalogues = catalogues;
        this.current = current;
        this.people = people;
    }

    @CheckedTemplate(basePath = "catalogue")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance catalogue(ShownCategory v);

        static native TemplateInstance edit(Editing v);

        static native TemplateInstance versions(Listed v);
    }

    /** A version as a line of text. */
    public record VersionLine(int number, String made, String by, String note, String origin, boolean inForce) {}

    /**
     * One category of a version.
     *
     * @param at where the page of the version is
     * @param newest number of the version in force, on which a going back builds
     */
    public record ShownCategory(
            VersionLine version,
            String at,
            int newest,
            List<Option> categories,
            CategoryView category,
            boolean mayEdit,
            List<Invalid.Problem> problems) {}

    /**
     * The text being edited.
     *
     * @param draft null before it is checked
     * @param hidden differences that are not shown, because they are too many
     */
    public record Editing(
            int base,
            String text,
            String note,
            CatalogueActs.@Nullable CheckedText draft,
            List<EntryChange> changes,
            List<ShiftLine> shifts,
            int hidden,
            boolean delivered,
            List<Invalid.Problem> problems) {}

    public record Listed(List<VersionLine> lines, @Nullable Integer next, boolean mayEdit, boolean offered) {}

    @GET
    @Blocking
    public Response catalogue(@RestQuery @Nullable String category) {
        return Html.ok(shown(catalogues.inForce().number(), "/catalogue", category, List.of()));
    }

    @GET
    @Path("versions/{version}")
    @Blocking
    public Response version(@RestPath int version, @RestQuery @Nullable String category) {
        return Html.ok(shown(version, at(version), category, List.of()));
    }

    private static String at(int version) {
        return "/catalogue/versions/" + version;
    }

    private TemplateInstance shown(int number, String at, @Nullable String category, List<Invalid.Problem> problems) {
        VersionView view = acts.version(number, current.actor());
        CatalogueVersion version = catalogues.version(number);
        String id = category == null || category.isBlank()
                ? version.figures().keySet().stream().sorted().findFirst().orElseThrow()
                : category;
        Learned figures = version.figures().get(id);
        if (figures == null) {
            throw new NotFound("category " + id + " in version " + number);
        }
        door.pass(id, current.actor());
        int newest = catalogues.inForce().number();
        List<Option> categories = version.figures().values().stream()
                .map(f -> new Option(f.category().id(), f.category().title()))
                .sorted(Comparator.comparing(Option::words))
                .toList();
        return Templates.catalogue(new ShownCategory(
                line(view, people.names(), newest),
                at,
                newest,
                categories,
                CategoryView.of(figures, version.model(id).orElseThrow()),
                current.mayKeepCatalogue(),
                problems));
    }

    private VersionLine line(VersionView v, Map<String, String> names, int newest) {
        String origin = v.restores() == null ? v.origin().words() : "version " + v.restores() + " restored";
        return new VersionLine(
                v.number(),
                Moments.text(v.madeAt(), current.zone()),
                names.getOrDefault(v.madeBy(), v.madeBy())
                        + (v.confirmedBy() == null
                                ? ""
                                : ", confirmed by " + names.getOrDefault(v.confirmedBy(), v.confirmedBy())),
                v.note(),
                origin,
                v.number() == newest);
    }

    @GET
    @Path("versions")
    @Blocking
    public Response versions(@RestQuery @Nullable Integer before) {
        int from = before == null ? Integer.MAX_VALUE : before;
        List<VersionView> found = acts.versions(from, LINES + 1, current.actor());
        List<VersionView> page = found.size() > LINES ? found.subList(0, LINES) : found;
        Map<String, String> names = people.names();
        int newest = catalogues.inForce().number();
        boolean mayEdit = current.mayKeepCatalogue();
        return Html.ok(Templates.versions(new Listed(
                page.stream().map(v -> line(v, names, newest)).toList(),
                found.size() > LINES ? page.get(LINES - 1).number() : null,
                mayEdit,
                mayEdit && acts.offered(current.actor()).isPresent())));
    }

    /** The practice catalogue of a version as a file. */
    @GET
    @Path("versions/{version}.yaml")
    @Produces("application/yaml")
    @Blocking
    public Response yaml(@RestPath int version) {
        door.pass("", current.actor());
        return Response.ok(acts.text(version, current.actor()).getBytes(StandardCharsets.UTF_8))
                .type("application/yaml;charset=UTF-8")
                .header("Content-Disposition", "attachment; filename=\"catalogue-" + version + ".yaml\"")
                .build();
    }

    @POST
    @Path("versions/{version}/restoration")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response restore(@RestPath int version, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> {
                    ProposalView proposal =
                            acts.restore(form.number("base").orElse(0), version, form.text("note"), current.actor());
                    return Html.goTo("/proposals/" + proposal.id());
                },
                refusal -> shown(version, at(version), null, refusal.problems()));
    }

    /** @param from {@code delivered} begins with the catalogue of this release */
    @GET
    @Path("edit")
    @Blocking
    public Response edit(@RestQuery @Nullable String from) {
        Permissions.require(Permission.KEEP_CATALOGUE, current.actor());
        int base = catalogues.inForce().number();
        if ("delivered".equals(from)) {
            String text =
                    acts.offered(current.actor()).orElseThrow(() -> new NotFound("other catalogue in this release"));
            return looked(new Edited(base, text, "The catalogue of this release"));
        }
        return Html.ok(Templates.edit(new Editing(
                base, acts.text(base, current.actor()), "", null, List.of(), List.of(), 0, offered(), List.of())));
    }

    private boolean offered() {
        return acts.offered(current.actor()).isPresent();
    }

    /** A text as it stands in the editor, the version that it was begun from, and why it is to become one. */
    private record Edited(int base, String text, String note) {}

    /** What the text would change, or every fault in it. */
    private Response looked(Edited edited) {
        CatalogueActs.CheckedText checked = acts.check(edited.text(), current.actor());
        return Html.status(checked.acceptable() ? 200 : 422, page(edited, checked, List.of()));
    }

    private TemplateInstance page(Edited edited, CatalogueActs.CheckedText checked, List<Invalid.Problem> problems) {
        List<EntryChange> changes = first(checked.changes());
        List<ShiftLine> shifts = first(checked.shifts());
        int hidden = checked.changes().size() + checked.shifts().size() - changes.size() - shifts.size();
        return Templates.edit(new Editing(
                edited.base(), edited.text(), edited.note(), checked, changes, shifts, hidden, offered(), problems));
    }

    private static <T> List<T> first(List<T> all) {
        return all.subList(0, Math.min(MOST_SHOWN, all.size()));
    }

    /** @param act {@code save} to propose a version; anything else only looks what the text would change */
    @POST
    @Path("edit")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response edit(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        Edited edited = new Edited(form.number("base").orElse(0), form.asSent("text"), form.text("note"));
        if (!form.text("act").equals("save")) {
            return looked(edited);
        }
        return Refusal.answer(
                () -> {
                    ProposalView proposal = acts.save(edited.base(), edited.text(), edited.note(), current.actor());
                    return Html.goTo("/proposals/" + proposal.id());
                },
                refusal -> {
                    CatalogueActs.CheckedText checked = acts.check(edited.text(), current.actor());
                    // the faults of a text are told in a table of their own
                    return page(edited, checked, checked.acceptable() ? refusal.problems() : List.of());
                });
    }

    /** Takes a file instead of typed text, and shows what it would change. */
    @POST
    @Path("edit/file")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @Blocking
    public Response upload(@RestForm @Nullable Integer base, @RestForm("file") @Nullable FileUpload file)
            throws IOException {
        Permissions.require(Permission.KEEP_CATALOGUE, current.actor());
        byte[] content = file == null ? new byte[0] : Files.readAllBytes(file.uploadedFile());
        return looked(new Edited(base == null ? 0 : base, new String(content, StandardCharsets.UTF_8), ""));
    }
}
