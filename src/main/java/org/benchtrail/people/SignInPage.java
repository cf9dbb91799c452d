package org.benchtrail.people;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.credential.PasswordCredential;
import io.quarkus.security.identity.IdentityProviderManager;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.UsernamePasswordAuthenticationRequest;
import io.smallrye.common.annotation.Blocking;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.LocalPath;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Coming in and going out. */
@Path("/")
public class SignInPage {
    private static final String START = "/";

    private final IdentityProviderManager identities;
    private final Sessions sessions;

    SignInPage(IdentityProviderManager identities, Sessions sessions) {
        this.identities = identities;
        this.sessions = sessions;
    }

    @CheckedTemplate(basePath = "people")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance signIn(String login, String to, String error);
    }

    /**
     * The form to sign in with.
     *
     * @param to the local path to show afterwards
     */
    @GET
    @Path("sign-in")
    @PermitAll
    @Blocking
    public Response form(@RestQuery @Nullable String to) {
        return Html.ok(Templates.signIn("", LocalPath.orElse(to, START), ""));
    }

    @POST
    @Path("sign-in")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermitAll
    @Blocking
    public Response signIn(
            @RestForm @Nullable String login,
            @RestForm @Nullable String password,
            @RestForm @Nullable String to,
            RoutingContext request) {
        String typed = login == null ? "" : login;
        String next = LocalPath.orElse(to, START);
        try {
            sessions.begin(identify(typed, password == null ? "" : password), request);
        } catch (AuthenticationFailedException refused) {
            return Html.status(401, Templates.signIn(typed, next, SignIn.REFUSED));
        }
        return Html.goTo(next);
    }

    @POST
    @Path("sign-out")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermitAll
    @Blocking
    public Response signOut(RoutingContext request) {
        sessions.end(request);
        return Html.goTo("/sign-in");
    }

    private SignedIn identify(String login, String password) {
        SecurityIdentity identity = identities.authenticateBlocking(
                new UsernamePasswordAuthenticationRequest(login, new PasswordCredential(password.toCharArray())));
        return identity.getAttribute(CurrentActor.ATTRIBUTE);
    }
}
