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
import jakarta.ws.rs.core.Response;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.platform.Html;
import org.jboss.resteasy.reactive.RestForm;
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
                NewAccount typed,
                List<Invalid.Problem> problems);

        static native TemplateInstance account(Line account, List<RoleBox> boxes, List<Invalid.Problem> problems);
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
        static List<RoleBox> of(Set<Role> ticked) {
            return Arrays.stream(Role.values())
                    .map(role -> new RoleBox(RoleNames.of(role), ticked.contains(role)))
                    .toList();
        }
    }

    /** What was typed into the form for a new account; not the password, which is typed again. */
    record NewAccount(String login, String name, List<RoleBox> boxes) {
        static NewAccount empty() {
            return new NewAccount("", "", RoleBox.of(EnumSet.noneOf(Role.class)));
        }

        static NewAccount of(String login, String name, @Nullable List<String> roles) {
            List<String> names = roles == null ? List.of() : roles;
            return new NewAccount(
                    login,
                    name,
                    Arrays.stream(Role.values())
                            .map(RoleNames::of)
                            .map(role -> new RoleBox(role, names.contains(role)))
                            .toList());
        }
    }

    @GET
    @Blocking
    public Response list(@RestQuery @Nullable String search, @RestQuery @Nullable String after) {
        return Html.ok(listed(text(search), text(after), NewAccount.empty(), List.of()));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response create(
            @RestForm @Nullable String login,
            @RestForm @Nullable String name,
            @RestForm @Nullable List<String> roles,
            @RestForm @Nullable String password) {
        Actor by = current.actor();
        try {
            acts.createAccount(by, text(login), text(name), RoleNames.parse(roles), text(password));
        } catch (Invalid e) {
            NewAccount typed = NewAccount.of(text(login), text(name), roles);
            return Html.status(422, listed("", "", typed, e.problems()));
        }
        return Html.goTo("/people/" + login);
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
    public Response setRoles(@RestPath String login, @RestForm @Nullable List<String> roles) {
        return afterwards(login, () -> acts.setRoles(current.actor(), login, RoleNames.parse(roles)));
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
    public Response resetPassword(@RestPath String login, @RestForm @Nullable String password) {
        return afterwards(login, () -> acts.resetPassword(current.actor(), login, text(password)));
    }

    private Response afterwards(String login, Runnable act) {
        try {
            act.run();
        } catch (Invalid e) {
            return Html.status(422, shown(login, e.problems()));
        }
        return Html.goTo("/people/" + login);
    }

    private TemplateInstance listed(String search, String after, NewAccount typed, List<Invalid.Problem> problems) {
        AccountsView found = acts.list(current.actor(), search, after, PER_PAGE);
        List<Line> lines = found.accounts().stream().map(Line::of).toList();
        return Templates.people(lines, search, found.next(), typed, problems);
    }

    private TemplateInstance shown(String login, List<Invalid.Problem> problems) {
        AccountView account = acts.account(current.actor(), login);
        return Templates.account(Line.of(account), RoleBox.of(account.roles()), problems);
    }

    private static String text(@Nullable String typed) {
        return typed == null ? "" : typed;
    }
}
