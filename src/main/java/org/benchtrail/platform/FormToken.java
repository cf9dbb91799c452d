package org.benchtrail.platform;

import io.quarkus.csrf.reactive.runtime.CsrfTokenParameterProvider;
import io.vertx.core.http.Cookie;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import jakarta.inject.Named;

/**
 * The value of the hidden field that proves a form came from one of our own pages. A problem page can be drawn before the
 * framework's filter has run; then the browser's present cookie is the token, or there is none.
 */
@RequestScoped
@Named("formToken")
public class FormToken {
    @Inject
    CsrfTokenParameterProvider made;

    @Inject
    RoutingContext request;

    public String field() {
        return made.getParameterName();
    }

    public String value() {
        try {
            return made.getToken();
        } catch (IllegalStateException filterHasNotRun) {
            Cookie present = request.request().getCookie(made.getCookieName());
            return present == null ? "" : present.getValue();
        }
    }
}
