package org.benchtrail.ticket.api;

import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.IfMatch;
import org.benchtrail.platform.problem.Problem;
import org.benchtrail.platform.problem.ProblemKind;
import org.benchtrail.site.SiteBook;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.Resemblance;
import org.benchtrail.ticket.Seals;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.trail.FactJson;
import org.jspecify.annotations.Nullable;

/** How the API answers with a ticket: its sheet, or what stands in the way of an act; and the version that goes with both. */
@ApplicationScoped
public class TicketAnswers {
    private static final String MINIMAL = "return=minimal";

    private final TicketQueries tickets;
    private final Resemblance resemblance;
    private final CurrentActor current;
    private final SiteBook site;
    private final Seals seals;
    private final Clock clock;
    private final ObjectMapper mapper;

    TicketAnswers(
            TicketQueries tickets,
            Resemblance resemblance,
            CurrentActor current,
            SiteBook site,
            Seals seals,
            Clock clock,
            ObjectMapper mapper) {
        this.tickets = tickets;
        this.resemblance = resemblance;
        this.current = current;
        this.site = site;
        this.seals = seals;
        this.clock = clock;
        this.mapper = FactJson.teach(mapper.copy());
    }

    public Response sheet(TicketNumber number) {
        return sheet(Response.ok(), tickets.ticket(number, current.actor()));
    }

    public Response opened(Outcome outcome) {
        return sheet(
                Response.created(URI.create("/api/tickets/" + outcome.number())),
                tickets.after(outcome, current.actor()));
    }

    private Response sheet(Response.ResponseBuilder answer, TicketQueries.Whole ticket) {
        boolean nothing = resemblance.isNothing(ticket.number(), ticket.sheet(), current.actor());
        SheetJson json = SheetJson.of(
                ticket,
                seals.of(ticket.number()),
                Resemblance.gate(ticket.sheet(), site.policy(), clock.instant(), nothing, current.actor()));
        return answer.entity(mapper.valueToTree(json))
                .header("ETag", tag(ticket.sheet().entries()))
                .build();
    }

    public Response after(Outcome outcome) {
        return after(outcome, null);
    }

    /**
     * What an act comes to.
     *
     * @param prefer with {@code return=minimal} (RFC 7240) the sheet is left out of what is done
     */
    public Response after(Outcome outcome, @Nullable String prefer) {
        if (!outcome.refused()) {
            return isMinimal(prefer)
                    ? Response.noContent()
                            .header("ETag", tag(outcome.sheet().entries()))
                            .header("Preference-Applied", MINIMAL)
                            .build()
                    : sheet(Response.ok(), tickets.after(outcome, current.actor()));
        }
        Map<String, Object> members = new LinkedHashMap<>(
                Problem.of(ProblemKind.UNMET, sentence(outcome.missing())).members());
        members.put("missing", MissingJson.all(outcome.missing()));
        return Response.status(ProblemKind.UNMET.status())
                .entity(members)
                .type("application/problem+json")
                .header("ETag", tag(outcome.sheet().entries()))
                .build();
    }

    private static boolean isMinimal(@Nullable String prefer) {
        return prefer != null
                && Arrays.stream(prefer.split(",")).anyMatch(one -> one.strip().equalsIgnoreCase(MINIMAL));
    }

    private static String sentence(List<Missing> missing) {
        return missing.size() == 1
                ? missing.get(0).sentence()
                : missing.size() + " requirements are not met; each is listed under missing.";
    }

    private static String tag(int version) {
        return "\"" + version + "\"";
    }

    /**
     * The version that an act builds on.
     *
     * @throws Invalid if the header names none
     */
    static int version(@Nullable String ifMatch) {
        return IfMatch.version(ifMatch, "ticket");
    }
}
