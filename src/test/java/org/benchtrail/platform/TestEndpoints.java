package org.benchtrail.platform;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.benchtrail.core.Invalid;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jboss.resteasy.reactive.server.multipart.MultipartFormDataInput;

/** Endpoints that exist only in tests: forms of every shape, and failures of every kind. */
@Path("/")
@PermitAll
public class TestEndpoints {
    /** A page endpoint that takes whatever fields the form has. */
    @POST
    @Path("test-forms/any")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public String any(MultivaluedMap<String, String> form) {
        return new TreeMap<>(form).toString();
    }

    /** The same without saying what it consumes. */
    @POST
    @Path("test-forms/unconstrained")
    @Blocking
    public String unconstrained(String body) {
        return "reached with " + body.length();
    }

    @POST
    @Path("test-forms/nothing")
    @Blocking
    public String nothing() {
        return "reached";
    }

    @POST
    @Path("test-forms/file")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @Blocking
    public String file(@RestForm String note, @RestForm FileUpload picture) throws IOException {
        return note + ": " + Files.size(picture.uploadedFile());
    }

    @POST
    @Path("test-forms/parts")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @Blocking
    public String parts(MultipartFormDataInput form) {
        return new TreeMap<>(form.getValues()).keySet().toString();
    }

    /** A body for JSON errors. */
    public record Reading(String point, double volts, List<Inner> inner) {}

    /** A nested value. */
    public record Inner(int number) {}

    @POST
    @Path("api/test-problems/json")
    @Consumes(MediaType.APPLICATION_JSON)
    @Blocking
    public Map<String, Object> json(Reading reading) {
        return Map.of("volts", reading.volts());
    }

    @POST
    @Path("api/test-problems/bytes")
    @Consumes(MediaType.WILDCARD)
    @Blocking
    public String bytes(byte[] body) {
        return "bytes " + body.length;
    }

    @GET
    @Path("api/test-problems/{kind}")
    @Blocking
    public String api(@RestPath String kind) {
        return fail(kind);
    }

    @GET
    @Path("test-problems/{kind}")
    @Blocking
    public String page(@RestPath String kind) {
        return fail(kind);
    }

    private static String fail(String kind) {
        throw switch (kind) {
            case "invalid" ->
                new Invalid(List.of(
                        new Invalid.Problem("loads[1].watts", "Enter at least 0 W, not <-3>."),
                        new Invalid.Problem("hours", "Enter the hours.")));
            case "not-found" -> new NotFound("ticket \"<b>7</b>\"");
            case "forbidden" -> new Forbidden("Only a supervisor may do this.");
            case "stale" -> new Stale(new Inner(42));
            case "optimistic" -> new jakarta.persistence.OptimisticLockException("row 7 of table secret");
            case "failed" -> new IllegalStateException("the inner secret of the server");
            case "too-many" -> new TooMany(7);
            case "teapot" -> new jakarta.ws.rs.ClientErrorException(418);
            default -> new IllegalArgumentException(kind);
        };
    }
}
