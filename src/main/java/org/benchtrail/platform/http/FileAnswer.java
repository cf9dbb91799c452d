package org.benchtrail.platform.http;

import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;

/**
 * A kept file as it is given out: with its name and tag, as a part where one is asked for, and not again to whom has it. Always as a
 * download: an attached page must not run as one of ours.
 *
 * @param tag what its bytes have alone, such as their hash
 */
public record FileAnswer(String name, String mediaType, byte[] content, String tag) {
    /** As bytes that are nothing in particular, for a browser, which guesses no kind of its own. */
    public FileAnswer untyped() {
        return new FileAnswer(name, MediaType.APPLICATION_OCTET_STREAM, content, tag);
    }

    /** As {@code asked} asks for it. */
    public Response to(HttpHeaders asked) {
        String quoted = "\"" + tag + "\"";
        if (EntityTags.isSame(asked.getHeaderString(HttpHeaders.IF_NONE_MATCH), quoted)) {
            return dressed(Response.notModified(), quoted).build();
        }
        String onlyIf = asked.getHeaderString("If-Range");
        Optional<ByteRange> part = onlyIf == null || onlyIf.strip().equals(quoted)
                ? ByteRange.of(asked.getHeaderString("Range"), content.length)
                : Optional.empty();
        return part.map(range -> part(range, quoted))
                .orElseGet(() -> typed(dressed(Response.ok(content), quoted)).build());
    }

    private Response part(ByteRange range, String quoted) {
        if (!range.isThere()) {
            return Response.status(Response.Status.REQUESTED_RANGE_NOT_SATISFIABLE)
                    .header("Content-Range", "bytes */" + content.length)
                    .build();
        }
        return typed(dressed(Response.status(206), quoted))
                .entity(Arrays.copyOfRange(content, range.from(), range.to()))
                .header("Content-Range", "bytes " + range.from() + "-" + (range.to() - 1) + "/" + content.length)
                .build();
    }

    private static Response.ResponseBuilder dressed(Response.ResponseBuilder answer, String quoted) {
        return answer.header(HttpHeaders.ETAG, quoted).header("Accept-Ranges", "bytes");
    }

    private Response.ResponseBuilder typed(Response.ResponseBuilder answer) {
        return answer.type(readable(mediaType)).header("Content-Disposition", "attachment; " + named(name));
    }

    /** A media type as it was told may be none. */
    private static MediaType readable(String told) {
        try {
            return MediaType.valueOf(told);
        } catch (IllegalArgumentException none) {
            return MediaType.APPLICATION_OCTET_STREAM_TYPE;
        }
    }

    /** In letters of every language (RFC 8187). */
    private static String named(String name) {
        String encoded = URLEncoder.encode(name, StandardCharsets.UTF_8)
                .replace("+", "%20")
                .replace("*", "%2A");
        return "filename*=UTF-8''" + encoded;
    }
}
