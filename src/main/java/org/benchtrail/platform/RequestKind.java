package org.benchtrail.platform;

import io.vertx.ext.web.RoutingContext;

/** What kind of request it is: for a page, for the API, for a file that is the same for everybody; over TLS or not. */
public final class RequestKind {
    private RequestKind() {}

    public static boolean isApi(RoutingContext request) {
        return isApi(request.normalizedPath());
    }

    public static boolean isApi(String path) {
        return path.equals("/api") || path.startsWith("/api/");
    }

    /** Where programs are known by their token: the API, and the log in its open formats. */
    public static boolean takesTokens(RoutingContext request) {
        return isApi(request) || request.normalizedPath().startsWith("/log/");
    }

    /** Files that are the same for everybody; nobody is looked up for them. */
    public static boolean isPublicFile(RoutingContext request) {
        String path = request.normalizedPath();
        return path.startsWith("/_static/")
                || path.startsWith("/q/")
                || path.startsWith("/css/")
                || path.startsWith("/webjars/")
                || path.matches("/[a-z]+\\.(js|svg)");
    }

    /** Whether the browser reached us over TLS, also when a trusted proxy in front ended it. */
    public static boolean isSecure(RoutingContext request) {
        return request.request().isSSL() || "https".equals(request.request().scheme());
    }

    /** The address asked for, without scheme and host. */
    public static String localAddress(RoutingContext request) {
        return request.request().uri();
    }
}
