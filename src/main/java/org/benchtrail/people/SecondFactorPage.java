package org.benchtrail.people;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;

/** The second factor of one's own account: begun, confirmed by a first code, ended. */
@Path("/me/second-factor")
@Authenticated
public class SecondFactorPage {
    private final SecondFactors factors;
    private final CurrentActor current;

    SecondFactorPage(SecondFactors factors, CurrentActor current) {
        this.factors = factors;
        this.current = current;
    }

    @CheckedTemplate(basePath = "people")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance factor(FactorView v);
    }

    /**
     * What the page shows.
     *
     * @param login as an app names the account
     * @param secret to be put into an app, until it is confirmed; empty otherwise
     * @param codes for when the device is lost, just made; empty otherwise
     */
    record FactorView(
            String login,
            boolean on,
            boolean demanded,
            String secret,
            long codesLeft,
            List<String> codes,
            List<Invalid.Problem> problems) {
        /** An address that an app on the same device opens. */
        public String link() {
            return "otpauth://totp/Benchtrail:" + login + "?secret=" + secret.replace(" ", "") + "&issuer=Benchtrail";
        }
    }

    @GET
    @Blocking
    public Response show() {
        return Html.ok(page(List.of(), List.of()));
    }

    @POST
    @Path("begin")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response begin(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> {
                    factors.begin(current.actor(), form.asSent("present"));
                    return Html.goTo("/me/second-factor");
                },
                refusal -> page(List.of(), refusal.problems()));
    }

    /** Answers with the page itself and not with a redirect: the codes are shown this once. */
    @POST
    @Path("confirm")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response confirm(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> Html.ok(page(factors.confirm(current.actor(), form.text("code")), List.of())),
                refusal -> page(List.of(), refusal.problems()));
    }

    @POST
    @Path("end")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response end(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> {
                    factors.end(current.actor(), form.asSent("present"));
                    return Html.goTo("/me/second-factor");
                },
                refusal -> page(List.of(), refusal.problems()));
    }

    private TemplateInstance page(List<String> codes, List<Invalid.Problem> problems) {
        Actor person = current.actor();
        Optional<SecondFactors.Factor> factor = factors.of(person.account());
        boolean on = factor.filter(SecondFactors.Factor::confirmed).isPresent();
        return Templates.factor(new FactorView(
                person.account(),
                on,
                factors.isDemanded(person),
                on ? "" : factor.map(SecondFactors.Factor::typed).orElse(""),
                factor.map(SecondFactors.Factor::codesLeft).orElse(0L),
                codes,
                problems));
    }
}
