package org.benchtrail.people;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Optional;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.LocalPath;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Coming in and going out. */
@Path("/")
public class SignInPage {
    private static final String START = "/";

    private final SignIn signIn;
    private final SecondFactors factors;
    private final Sessions sessions;

    SignInPage(SignIn signIn, SecondFactors factors, Sessions sessions) {
        this.signIn = signIn;
        this.factors = factors;
        this.sessions = sessions;
    }

    @CheckedTemplate(basePath = "people")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance signIn(String login, String to, String error);

        static native TemplateInstance code(String to, String error);
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
        Optional<SignedIn> person = signIn.byPassword(typed, password == null ? "" : password, sessions.visit(request));
        if (person.isEmpty()) {
            return Html.status(401, Templates.signIn(PlainText.isText(typed) ? typed : "", next, SignIn.REFUSED));
        }
        if (factors.isAsked(person.get())) {
            sessions.beginAwaiting(person.get(), request);
            return Html.ok(Templates.code(next, ""));
        }
        sessions.begin(person.get(), request);
        return Html.goTo(next);
    }

    /** After the password: the code of the second factor, or one of those kept for when it is lost. */
    @POST
    @Path("sign-in/code")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermitAll
    @Blocking
    public Response code(@RestForm @Nullable String code, @RestForm @Nullable String to, RoutingContext request) {
        String next = LocalPath.orElse(to, START);
        Optional<String> login = sessions.awaiting(request);
        if (login.isEmpty()) {
            return Html.status(401, Templates.signIn("", next, "That took too long: give your password once more."));
        }
        if (!factors.takes(login.get(), code == null ? "" : code)) {
            return Html.status(401, Templates.code(next, SecondFactors.REFUSED));
        }
        sessions.begin(signIn.again(login.get()), request);
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
}
