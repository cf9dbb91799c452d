package org.benchtrail.people;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import java.net.URI;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.Role;
import org.benchtrail.platform.description.AnswersWith;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Accounts, for an administrator's programs. */
@Path("/api/people")
@Authenticated
@Tag(name = "People")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
public class PeopleApi {
    private static final int PER_PAGE = 50;

    private final PeopleActs acts;
    private final CurrentActor current;

    PeopleApi(PeopleActs acts, CurrentActor current) {
        this.acts = acts;
        this.current = current;
    }

    /** A new account. */
    public record NewAccount(
            @Nullable String login,
            @Nullable String name,
            @Nullable Set<Role> roles,
            @Nullable String password) {
        /** Leaves the password out, so that no log can hold it. */
        @Override
        public String toString() {
            return "NewAccount[" + login + "]";
        }
    }

    /** Every role the account is to have. */
    public record Roles(@Nullable Set<Role> roles) {}

    /** Whether the account is open. */
    public record Active(boolean active) {}

    /**
     * An account that was closed or opened, and what is still to be done by it.
     *
     * @param openTickets what is due first, at most 100; a supervisor assigns them to others
     * @param openTicketsTotal how many there are in all
     */
    public record AccountWithWork(
            @JsonUnwrapped AccountView account, List<OpenWork.OpenTicket> openTickets, long openTicketsTotal) {}

    /** A new password. */
    public record NewPassword(@Nullable String password) {
        /** Leaves the password out, so that no log can hold it. */
        @Override
        public String toString() {
            return "NewPassword[]";
        }
    }

    /** The accounts by login, a stretch at a time; the Link header names the next one. */
    @AnswersWith(value = AccountView.class, list = true, paged = true)
    @GET
    @Operation(summary = "The accounts by login, a stretch at a time; a Link header leads on")
    @Blocking
    public Response list(
            @RestQuery @Nullable String search, @RestQuery @Nullable String after, @RestQuery @Nullable Integer limit) {
        int most = limit == null ? PER_PAGE : limit;
        AccountsView found = acts.list(current.actor(), text(search), text(after), most);
        Response.ResponseBuilder answer = Response.ok(found.accounts());
        if (found.next() != null) {
            answer.link(next(text(search), found.next(), most), "next");
        }
        return answer.build();
    }

    @NeedsPermission(Permission.MANAGE_ACCOUNTS)
    @AnswersWith(value = AccountView.class, status = 201)
    @POST
    @Operation(summary = "Make an account")
    @Blocking
    public Response create(NewAccount account) {
        AccountView made = acts.createAccount(
                current.actor(),
                text(account.login()),
                text(account.name()),
                roles(account.roles()),
                text(account.password()));
        return Response.created(URI.create("/api/people/" + made.login()))
                .entity(made)
                .build();
    }

    @GET
    @Path("{login}")
    @Operation(summary = "An account")
    @Blocking
    public AccountView account(@RestPath String login) {
        return acts.account(current.actor(), login);
    }

    @NeedsPermission(Permission.MANAGE_ACCOUNTS)
    @PUT
    @Path("{login}/roles")
    @Operation(summary = "Set all roles of an account")
    @Blocking
    public AccountView setRoles(@RestPath String login, Roles roles) {
        return acts.setRoles(current.actor(), login, roles(roles.roles()));
    }

    @NeedsPermission(Permission.MANAGE_ACCOUNTS)
    @PUT
    @Path("{login}/active")
    @Operation(summary = "Close or open an account; answers what is still to be done by it")
    @Blocking
    public AccountWithWork setActive(@RestPath String login, Active active) {
        AccountView account =
                active.active() ? acts.reactivate(current.actor(), login) : acts.deactivate(current.actor(), login);
        OpenWork.Part work = acts.openWork(current.actor(), login);
        return new AccountWithWork(account, work.tickets(), work.total());
    }

    @NeedsPermission(Permission.MANAGE_ACCOUNTS)
    @PUT
    @Path("{login}/password")
    @Operation(summary = "Set a new password, which ends all sign-ins and tokens")
    @Blocking
    public void resetPassword(@RestPath String login, NewPassword chosen) {
        acts.resetPassword(current.actor(), login, text(chosen.password()));
    }

    private static URI next(String search, String after, int limit) {
        return UriBuilder.fromPath("/api/people")
                .queryParam("search", search)
                .queryParam("after", after)
                .queryParam("limit", limit)
                .build();
    }

    private static Set<Role> roles(@Nullable Set<Role> given) {
        return given == null ? Set.of() : given;
    }

    private static String text(@Nullable String given) {
        return given == null ? "" : given;
    }
}
