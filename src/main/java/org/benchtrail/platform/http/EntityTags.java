package org.benchtrail.platform.http;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import org.benchtrail.platform.RequestKind;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;
import org.jspecify.annotations.Nullable;

/**
 * What a program reads has a tag, and is not sent again to whom it has not changed for (RFC 9110, section 13.1.2). The tag is made
 * of what is answered: a job sheet of the same version says something else once a soak time is over. Where there is a version it
 * comes first, as in {@code "27-Nx3..."}, so that the tag also serves as If-Match.
 */
public class EntityTags {
    private static final int HASH_BYTES = 12;
    private static final MediaType JSON = MediaType.APPLICATION_JSON_TYPE.withCharset("UTF-8");

    private final ObjectMapper mapper;

    EntityTags(ObjectMapper mapper) {
        this.mapper = mapper;
    }

    @ServerResponseFilter
    public void tag(ContainerRequestContext request, ContainerResponseContext answer, RoutingContext routing)
            throws JsonProcessingException {
        boolean read = request.getMethod().equals("GET") || request.getMethod().equals("HEAD");
        // an answer that names none gets what its endpoint produces
        MediaType type = answer.getMediaType() == null ? JSON : answer.getMediaType();
        if (!read
                || !RequestKind.isApi(routing)
                || answer.getStatus() != 200
                || !answer.hasEntity()
                || answer.getEntity() instanceof byte[]
                || !type.isCompatible(MediaType.APPLICATION_JSON_TYPE)) {
            return;
        }
        String text = answer.getEntity() instanceof String said ? said : mapper.writeValueAsString(answer.getEntity());
        String version = answer.getHeaderString(HttpHeaders.ETAG);
        String tag = "\"" + (version == null ? "" : version.replace("\"", "") + "-") + hash(text) + "\"";
        answer.getHeaders().putSingle(HttpHeaders.ETAG, tag);
        if (isSame(request.getHeaderString(HttpHeaders.IF_NONE_MATCH), tag)) {
            answer.setStatus(304);
            answer.setEntity(null);
        } else {
            answer.setEntity(text, null, type);
        }
    }

    /** Whether the header names that tag; weak ones count (RFC 9110, section 13.1.2). */
    static boolean isSame(@Nullable String ifNoneMatch, String tag) {
        return ifNoneMatch != null
                && (ifNoneMatch.strip().equals("*")
                        || Arrays.stream(ifNoneMatch.split(","))
                                .map(String::strip)
                                .map(one -> one.startsWith("W/") ? one.substring(2) : one)
                                .anyMatch(List.of(tag)::contains));
    }

    private static String hash(String text) {
        try {
            byte[] whole = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return Base64.getUrlEncoder().withoutPadding().encodeToString(Arrays.copyOf(whole, HASH_BYTES));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
