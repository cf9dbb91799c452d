package org.benchtrail.platform;

import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;

/** Answers for people, rendered before the method returns, so that nothing is read after the transaction. */
public final class Html {
    static final String MEDIA_TYPE = MediaType.TEXT_HTML + ";charset=UTF-8";

    private Html() {}

    public static Response ok(TemplateInstance page) {
        return status(200, page);
    }

    public static Response status(int status, TemplateInstance page) {
        return status(status, page.render());
    }

    /** A page that is rendered already. */
    public static Response status(int status, String page) {
        return Response.status(status).entity(page).type(MEDIA_TYPE).build();
    }

    /** After a form: the browser fetches {@code path} anew, so that reloading does not send the form twice. */
    public static Response goTo(String path) {
        return Response.seeOther(URI.create(LocalPath.orElse(path, "/"))).build();
    }
}
