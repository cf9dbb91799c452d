package org.benchtrail.catalogue;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Map;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.NeedsPermission;
import org.benchtrail.people.Permission;
import org.benchtrail.platform.description.AnswersWith;
import org.benchtrail.proposals.ProposalApi;
import org.benchtrail.proposals.ProposalView;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** The cause catalogue for programs. */
@Path("/api/catalogue")
@Authenticated
@Produces(MediaType.APPLICATION_JSON)
@Blocking
@Tag(name = "Catalogue")
public class CatalogueApi {
    private static final int LINES = 50;

    private final CatalogueActs acts;
    private final Catalogues catalogues;
    private final CurrentActor current;
    private final CauseDoor door;

    CatalogueApi(CatalogueActs acts, Catalogues catalogues, CurrentActor current, CauseDoor door) {
        this.door = door;
        this.acts = acts;
        this.catalogues = catalogues;
        this.current = current;
    }

    /** A version with all its figures. */
    public record WholeVersion(VersionView version, List<CategoryView> categories) {}

    /**
     * A practice catalogue to be made a version.
     *
     * @param base version that it was begun from
     * @param text YAML
     */
    public record NewVersion(
            @Nullable Integer base,
            @Nullable String note,
            @Nullable String text) {}

    /** A text to be looked at. */
    public record Text(@Nullable String text) {}

    /** Why to go back, and from which version. */
    public record Return(@Nullable Integer base, @Nullable String note) {}

    @GET
    @Operation(
            summary = "The catalogue in force: every probability, where it comes from, how many cases stand behind it")
    public WholeVersion catalogue() {
        return whole(catalogues.inForce().number());
    }

    @AnswersWith(value = VersionView.class, list = true, paged = true)
    @GET
    @Path("versions")
    @Operation(summary = "Versions, newest first; a Link header leads to older ones")
    public Response versions(@RestQuery @Nullable Integer before) {
        List<VersionView> found =
                acts.versions(before == null ? Integer.MAX_VALUE : before, LINES + 1, current.actor());
        if (found.size() <= LINES) {
            return Response.ok(found).build();
        }
        List<VersionView> page = found.subList(0, LINES);
        String next = "/api/catalogue/versions?before=" + page.get(LINES - 1).number();
        return Response.ok(page).link(URI.create(next), "next").build();
    }

    @GET
    @Path("versions/{version}")
    @Operation(summary = "One version with all its figures")
    public WholeVersion version(@RestPath int version) {
        return whole(version);
    }

    private WholeVersion whole(int number) {
        door.pass("", current.actor());
        VersionView view = acts.version(number, current.actor());
        CatalogueVersion version = catalogues.version(number);
        return new WholeVersion(
                view,
                version.figures().entrySet().stream()
                        .sorted(Map.Entry.comparingByKey())
                        .map(f -> CategoryView.of(
                                f.getValue(), version.model(f.getKey()).orElseThrow()))
                        .toList());
    }

    @NeedsPermission(Permission.KEEP_CATALOGUE)
    @POST
    @Path("checks")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "What a text would change, or every fault in it by row; nothing is stored")
    public CatalogueActs.CheckedText check(Text text) {
        return acts.check(text.text() == null ? "" : text.text(), current.actor());
    }

    @NeedsPermission(Permission.KEEP_CATALOGUE)
    @AnswersWith(value = ProposalView.class, status = 202)
    @POST
    @Path("versions")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Propose a version of a text; another supervisor confirms it under /api/proposals")
    public Response save(NewVersion asked) {
        return ProposalApi.proposed(acts.save(
                asked.base() == null ? 0 : asked.base(),
                asked.text() == null ? "" : asked.text(),
                asked.note() == null ? "" : asked.note(),
                current.actor()));
    }

    @NeedsPermission(Permission.KEEP_CATALOGUE)
    @AnswersWith(value = ProposalView.class, status = 202)
    @POST
    @Path("versions/{version}/restoration")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Propose to go back: a version that says what this one said; another supervisor confirms it"
                    + " under /api/proposals")
    public Response restore(@RestPath int version, Return asked) {
        return ProposalApi.proposed(acts.restore(
                asked.base() == null ? 0 : asked.base(),
                version,
                asked.note() == null ? "" : asked.note(),
                current.actor()));
    }
}
