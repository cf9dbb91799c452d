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
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
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

    CataloguePage(CatalogueActs acts, Catalogues catalogues, CurrentActor current, Directory people) {
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
        return shown(200, catalogues.inForce().number(), "/catalogue", category, List.of());
    }

    @GET
    @Path("versions/{version}")
    @Blocking
    public Response version(@RestPath int version, @RestQuery @Nullable String category) {
        return shown(200, version, "/catalogue/versions/" + version, category, List.of());
    }

    private Response shown(
            int status, int number, String at, @Nullable String category, List<Invalid.Problem> problems) {
        VersionView view = acts.version(number, current.actor());
        CatalogueVersion version = catalogues.version(number);
        String id = category == null || category.isBlank()
                ? version.figures().keySet().stream().sorted().findFirst().orElseThrow()
                : category;
        Learned figures = version.figures().get(id);
        if (figures == null) {
            throw new NotFound("category " + id + " in version " + number);
        }
        int newest = catalogues.inForce().number();
        return Html.status(
                status,
                Templates.catalogue(new ShownCategory(
                        line(view, people.names(), newest),
                        at,
                        newest,
                        version.figures().values().stream()
                                .map(f -> new Option(
                                        f.category().id(), f.category().title()))
                                .sorted(java.util.Comparator.comparing(Option::words))
                                .toList(),
                        CategoryView.of(figures, version.model(id).orElseThrow()),
                        current.mayKeepCatalogue(),
                        problems)));
    }

    private VersionLine line(VersionView v, Map<String, String> names, int newest) {
        String origin = v.restores() == null ? v.origin().words() : "version " + v.restores() + " restored";
        return new VersionLine(
                v.number(),
                Moments.text(v.madeAt(), current.zone()),
                names.getOrDefault(v.madeBy(), v.madeBy()),
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
        return Response.ok(acts.text(version, current.actor()).getBytes(StandardCharsets.UTF_8))
                .type("application/yaml;charset=UTF-8")
                .header("Content-Disposition", "attachment; filename=\"catalogue-" + version + ".yaml\"")
                .build();
    }

    @POST
    @Path("versions/{version}/restoration")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response restore(@RestPath int version, @RestForm @Nullable Integer base, @RestForm @Nullable String note) {
        try {
            acts.restore(base == null ? 0 : base, version, text(note), current.actor());
        } catch (Invalid e) {
            return shown(422, version, "/catalogue/versions/" + version, null, e.problems());
        }
        return Html.goTo("/catalogue/versions");
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
            return checked(200, base, text, "The catalogue of this release", List.of());
        }
        return Html.ok(Templates.edit(new Editing(
                base, acts.text(base, current.actor()), "", null, List.of(), List.of(), 0, offered(), List.of())));
    }

    private boolean offered() {
        return acts.offered(current.actor()).isPresent();
    }

    private Response checked(int status, int base, String text, String note, List<Invalid.Problem> problems) {
        CatalogueActs.CheckedText draft = acts.check(text, current.actor());
        List<EntryChange> changes = first(draft.changes());
        List<ShiftLine> shifts = first(draft.shifts());
        int hidden = draft.changes().size() + draft.shifts().size() - changes.size() - shifts.size();
        int answer = draft.acceptable() ? status : 422;
        return Html.status(
                answer,
                Templates.edit(new Editing(base, text, note, draft, changes, shifts, hidden, offered(), problems)));
    }

    private static <T> List<T> first(List<T> all) {
        return all.subList(0, Math.min(MOST_SHOWN, all.size()));
    }

    /** @param act {@code save} to make a version; anything else only looks what the text would change */
    @POST
    @Path("edit")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response edit(
            @RestForm @Nullable Integer base,
            @RestForm @Nullable String text,
            @RestForm @Nullable String note,
            @RestForm @Nullable String act) {
        int on = base == null ? 0 : base;
        if (!"save".equals(act)) {
            return checked(200, on, text(text), text(note), List.of());
        }
        try {
            acts.save(on, text(text), text(note), current.actor());
        } catch (Invalid e) {
            boolean faulty = !acts.check(text(text), current.actor()).acceptable();
            return checked(422, on, text(text), text(note), faulty ? List.of() : e.problems());
        }
        return Html.goTo("/catalogue/versions");
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
        return checked(200, base == null ? 0 : base, new String(content, StandardCharsets.UTF_8), "", List.of());
    }

    private static String text(@Nullable String typed) {
        return typed == null ? "" : typed;
    }
}
