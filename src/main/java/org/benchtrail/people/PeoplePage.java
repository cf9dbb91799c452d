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
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.platform.Forbidden;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.Option;
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
    private final AbsenceActs absences;
    private final Directory directory;
    private final CurrentActor current;

    PeoplePage(PeopleActs acts, AbsenceActs absences, Directory directory, CurrentActor current) {
        this.acts = acts;
        this.absences = absences;
        this.directory = directory;
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

        static native TemplateInstance account(AccountPageView v);
    }

    /** One account as a line of text. */
    record Line(String login, String name, String roles, String state, boolean active) {
        static Line of(AccountView account) {
            String state = account.active() ? account.locked() ? "locked for now" : "active" : "closed";
            return new Line(account.login(), account.name(), RoleNames.join(account.roles()), state, account.active());
        }
    }

    /**
     * One account and what can be done to it.
     *
     * @param mentors who can be the mentor of a trainee; empty if the account is no trainee's
     * @param delegates who can stand in for the account
     * @param assigning whether the viewer may hand its open tickets over
     * @param handed what became of those that were handed over just now
     */
    record AccountPageView(
            Line account,
            List<RoleBox> boxes,
            OpenWork.Part work,
            List<Option> mentors,
            List<Option> delegates,
            boolean assigning,
            List<OpenWork.Handed> handed,
            FormValues fill,
            List<Invalid.Problem> problems) {
        /** Whether the viewer can hand open tickets of the account over. */
        public boolean handing() {
            return assigning && work.total() > 0;
        }

        /** Of those that were handed over just now, how many were. */
        public long done() {
            return handed.stream().filter(OpenWork.Handed::done).count();
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
        return Html.ok(shown(login, List.of(), null, List.of()));
    }

    @POST
    @Path("{login}/roles")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response setRoles(@RestPath String login, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return afterwards(login, form, () -> acts.setRoles(current.actor(), login, RoleNames.parse(form.all("roles"))));
    }

    @POST
    @Path("{login}/deactivation")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response deactivate(@RestPath String login, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        String to = form.text("to");
        if (!to.isEmpty() && !current.actor().is(Role.SUPERVISOR)) {
            throw new Forbidden("Only a supervisor hands over the tickets of others.");
        }
        return Refusal.answer(
                () -> {
                    Actor by = current.actor();
                    acts.deactivate(by, login);
                    return to.isEmpty()
                            ? Html.goTo("/people/" + login)
                            : Html.ok(shown(login, acts.handOver(by, login, to), null, List.of()));
                },
                refusal -> shown(login, List.of(), form, refusal.problems()));
    }

    @POST
    @Path("{login}/mentor")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response setMentor(@RestPath String login, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return afterwards(login, form, () -> acts.setMentor(current.actor(), login, form.text("mentor")));
    }

    /** For somebody who cannot do it. */
    @POST
    @Path("{login}/absences")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response noteAbsence(@RestPath String login, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return afterwards(
                login,
                form,
                () -> absences.note(
                        current.actor(), login, form.text("first"), form.text("last"), form.text("delegate")));
    }

    @POST
    @Path("{login}/sessions/end")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response endSessions(@RestPath String login) {
        acts.endSessions(current.actor(), login);
        return Html.goTo("/people/" + login);
    }

    @POST
    @Path("{login}/second-factor/removal")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response dropSecondFactor(@RestPath String login) {
        return afterwards(login, null, () -> acts.dropSecondFactor(current.actor(), login));
    }

    @POST
    @Path("{login}/reactivation")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response reactivate(@RestPath String login) {
        return afterwards(login, null, () -> acts.reactivate(current.actor(), login));
    }

    @POST
    @Path("{login}/password")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response resetPassword(@RestPath String login, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return afterwards(login, form, () -> acts.resetPassword(current.actor(), login, form.asSent("password")));
    }

    private Response afterwards(String login, @Nullable PostedForm form, Runnable act) {
        return Refusal.answer(
                () -> {
                    act.run();
                    return Html.goTo("/people/" + login);
                },
                refusal -> shown(login, List.of(), form, refusal.problems()));
    }

    private TemplateInstance listed(String search, String after, FormValues fill, List<Invalid.Problem> problems) {
        AccountsView found = acts.list(current.actor(), search, after, PER_PAGE);
        List<Line> lines = found.accounts().stream().map(Line::of).toList();
        List<RoleBox> boxes = RoleBox.of(role -> fill.is("roles", RoleNames.of(role)));
        return Templates.people(lines, search, found.next(), fill, boxes, problems);
    }

    /** @param form what was sent and refused; null if nothing was */
    private TemplateInstance shown(
            String login, List<OpenWork.Handed> handed, @Nullable PostedForm form, List<Invalid.Problem> problems) {
        Actor viewer = current.actor();
        AccountView account = acts.account(viewer, login);
        FormValues fill = new FormValues().set("mentor", acts.mentor(viewer, login));
        if (form != null) {
            fill.typed(form.typed(), problems);
        }
        List<Option> others = options(directory.workers(), login);
        return Templates.account(new AccountPageView(
                Line.of(account),
                RoleBox.of(account.roles()::contains),
                acts.openWork(viewer, login),
                account.roles().contains(Role.TRAINEE)
                        ? options(directory.allowed(Permission.SIGN_AS_MENTOR), login)
                        : List.of(),
                others,
                viewer.is(Role.SUPERVISOR),
                handed,
                fill,
                problems));
    }

    private static List<Option> options(List<Actor> people, String except) {
        return people.stream()
                .filter(p -> !p.account().equals(except))
                .map(p -> new Option(p.account(), p.name()))
                .toList();
    }

    private static String text(@Nullable String typed) {
        return typed == null ? "" : typed;
    }
}
