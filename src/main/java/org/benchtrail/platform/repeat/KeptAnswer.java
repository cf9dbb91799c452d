package org.benchtrail.platform.repeat;

import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.util.Objects;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

/**
 * An answer as it is kept.
 *
 * @param asked SHA-256 of what was asked
 * @param location empty if it leads nowhere
 * @param etag empty if it names no version
 * @param media empty if it has no body
 * @param body compressed
 */
record KeptAnswer(byte[] asked, int status, String location, String etag, String media, byte[] body) {

    static KeptAnswer of(byte[] asked, Response answer, byte[] body) {
        return new KeptAnswer(
                asked,
                answer.getStatus(),
                Objects.requireNonNullElse(answer.getHeaderString(HttpHeaders.LOCATION), ""),
                Objects.requireNonNullElse(answer.getHeaderString(HttpHeaders.ETAG), ""),
                body.length == 0
                        ? ""
                        : answer.getMediaType() == null
                                ? "application/json;charset=UTF-8"
                                : answer.getMediaType().toString(),
                compressed(body));
    }

    Response again() {
        Response.ResponseBuilder answer = Response.status(status);
        if (!location.isEmpty()) {
            answer.location(URI.create(location));
        }
        if (!etag.isEmpty()) {
            answer.header(HttpHeaders.ETAG, etag);
        }
        if (!media.isEmpty()) {
            answer.type(media).entity(expanded(body));
        }
        return answer.build();
    }

    private static byte[] compressed(byte[] plain) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(bytes)) {
            out.write(plain);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return bytes.toByteArray();
    }

    private static byte[] expanded(byte[] small) {
        try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(small))) {
            return in.readAllBytes();
        } catch (IOException damaged) {
            throw new UncheckedIOException(damaged);
        }
    }
}
