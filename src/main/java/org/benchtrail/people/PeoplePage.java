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
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Role;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** The administrator's pages: everybody who has an account, and one account. */
@Path("/people")
@Authenticated
public class PeoplePage {
    private static final int PER_PAGE = 25;

    private final PeopleActs acts;
    private final CurrentActor current;

    PeoplePage(PeopleActs acts, CurrentActor current) {
        this.acts = acts;
        this.current = current;
    }

    @CheckedTemplate(basePath = "people")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance people(
                List<Line> accounts,
                String search,
                @Nullable String next,
                FormValues fill,
                List<RoleBox> boxes,
                List<Invalid.Problem> problems);

        static native TemplateInstance account(
                Line account, List<RoleBox> boxes, OpenWork.Part work, List<Invalid.Problem> problems);
    }

    /** One account as a line of text. */
    record Line(String login, String name, String roles, String state, boolean active) {
        static Line of(AccountView account) {
            String state = account.active() ? account.locked() ? "locked for now" : "active" : "closed";
            return new Line(account.login(), account.name(), RoleNames.join(account.roles()), state, account.active());
        }
    }

    /** A role to tick. */
    record RoleBox(String role, boolean ticked) {
        static List<RoleBox> of(Predicate<Role> ticked) {
            return Arrays.stream(Role.values())
                    .map(role -> new RoleBox(RoleNames.of(role), ticked.test(role)))
                    .toList();
        }
    }

    @GET
    @Blocking
    public Response list(@RestQuery @Nullable String search, @RestQuery @Nullable String after) {
        return Html.ok(listed(text(search), text(after), new FormValues(), List.of()));
    }

    /** What was typed is kept for another try; not the password, which is typed again. */
    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response create(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> {
                    AccountView made = acts.createAccount(
                            current.actor(),
                            form.text("login"),
                            form.text("name"),
                            RoleNames.parse(form.all("roles")),
                            form.asSent("password"));
                    return Html.goTo("/people/" + made.login());
                },
                refusal -> listed("", "", new FormValues().typed(form, refusal), refusal.problems()));
    }

    @GET
    @Path("{login}")
    @Blocking
    public Response account(@RestPath String login) {
        return Html.ok(shown(login, List.of()));
    }

    @POST
    @Path("{login}/roles")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response setRoles(@RestPath String login, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return afterwards(login, () -> acts.setRoles(current.actor(), login, RoleNames.parse(form.all("roles"))));
    }

    @POST
    @Path("{login}/deactivation")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response deactivate(@RestPath String login) {
        return afterwards(login, () -> acts.deactivate(current.actor(), login));
    }

    @POST
    @Path("{login}/reactivation")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response reactivate(@RestPath String login) {
        return afterwards(login, () -> acts.reactivate(current.actor(), login));
    }

    @POST
    @Path("{login}/password")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response resetPassword(@RestPath String login, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return afterwards(login, () -> acts.resetPassword(current.actor(), login, form.asSent("password")));
    }

    private Response afterwards(String login, Runnable act) {
        return Refusal.answer(
                () -> {
                    act.run();
                    return Html.goTo("/people/" + login);
                },
                refusal -> shown(login, refusal.problems()));
    }

    private TemplateInstance listed(String search, String after, FormValues fill, List<Invalid.Problem> problems) {
        AccountsView found = acts.list(current.actor(), search, after, PER_PAGE);
        List<Line> lines = found.accounts().stream().map(Line::of).toList();
        List<RoleBox> boxes = RoleBox.of(role -> fill.is("roles", RoleNames.of(role)));
        return Templates.people(lines, search, found.next(), fill, boxes, problems);
    }

    private TemplateInstance shown(String login, List<Invalid.Problem> problems) {
        AccountView account = acts.account(current.actor(), login);
        OpenWork.Part work = acts.openWork(current.actor(), login);
        return Templates.account(Line.of(account), RoleBox.of(account.roles()::contains), work, problems);
    }

    private static String text(@Nullable String typed) {
        return typed == null ? "" : typed;
    }
}
