package org.benchtrail.knowledge;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Category;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.NeedsPermission;
import org.benchtrail.people.Permission;
import org.benchtrail.platform.IfMatch;
import org.benchtrail.platform.description.AnswersWith;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Known causes and cases for programs. */
@Path("/api/knowledge")
@Authenticated
@Produces(MediaType.APPLICATION_JSON)
@Blocking
@Tag(name = "Knowledge")
public class KnowledgeApi {
    private final KnowledgeSearch search;
    private final KnowledgeQueries queries;
    private final KnowledgeActs acts;
    private final CurrentActor current;
    private final ObjectMapper mapper;

    KnowledgeApi(
            KnowledgeSearch search,
            KnowledgeQueries queries,
            KnowledgeActs acts,
            CurrentActor current,
            ObjectMapper mapper) {
        this.search = search;
        this.queries = queries;
        this.acts = acts;
        this.current = current;
        this.mapper = mapper;
    }

    @AnswersWith(value = SearchResults.class, paged = true)
    @GET
    @Operation(
            summary = "Search known causes and cases by words; a Link header leads to the next page",
            description = "Each text comes in pieces, of which those with hit are what was found.")
    public Response find(
            @RestQuery @DefaultValue("") String q,
            @RestQuery @Nullable Category category,
            @RestQuery @DefaultValue("1") int page,
            UriInfo uri) {
        SearchResults found = search.find(q, category, page - 1, current.actor());
        Response.ResponseBuilder answer = Response.ok(found);
        if (found.more()) {
            URI next = uri.getRequestUriBuilder()
                    .replaceQueryParam("page", page + 1)
                    .build();
            answer.header("Link", "<" + next.getRawPath() + "?" + next.getRawQuery() + ">; rel=\"next\"");
        }
        return answer.build();
    }

    @AnswersWith(value = KnowledgeQueries.WholeCause.class, versioned = true)
    @GET
    @Path("{id}")
    @Operation(summary = "A known cause with its history, its cases, and the findings that tell it apart")
    public Response cause(@RestPath long id) {
        return answer(id);
    }

    @NeedsPermission(Permission.TEND_KNOWLEDGE)
    @AnswersWith(value = KnowledgeQueries.WholeCause.class, versioned = true, body = KnowledgeAct.class)
    @POST
    @Path("{id}/acts")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Confirm, flag, correct, retire, bring back, merge or split a known cause",
            description =
                    "The body is one act with its kind; If-Match names the version that it builds on. AnswersWith with the known cause"
                            + " to look at afterwards: after a merge the one it went into, after a split the second one.")
    public Response act(@RestPath long id, @HeaderParam("If-Match") @Nullable String version, @Nullable JsonNode body) {
        return answer(acts.perform(id, IfMatch.version(version, "known cause"), read(body), current.actor()));
    }

    private Response answer(long id) {
        KnowledgeQueries.WholeCause whole = queries.cause(id, current.actor());
        return Response.ok(whole)
                .header("ETag", "\"" + whole.cause().version() + "\"")
                .build();
    }

    private KnowledgeAct read(@Nullable JsonNode body) {
        if (body == null || !body.isObject() || !body.has("kind")) {
            throw new Invalid("kind", "Send one act as a JSON object that names its kind.");
        }
        try {
            return mapper.treeToValue(body, KnowledgeAct.class);
        } catch (JsonProcessingException e) {
            throw invalid(e);
        }
    }

    private static Invalid invalid(JsonProcessingException problem) {
        if (problem.getCause() instanceof Invalid own) {
            return own;
        }
        String path = problem instanceof JsonMappingException mapping
                ? mapping.getPath().stream()
                        .map(JsonMappingException.Reference::getFieldName)
                        .filter(java.util.Objects::nonNull)
                        .collect(Collectors.joining("."))
                : "";
        return path.isEmpty()
                ? new Invalid("kind", "There is no such act, or it has other parts.")
                : new Invalid(path, "This does not fit here.");
    }
}
