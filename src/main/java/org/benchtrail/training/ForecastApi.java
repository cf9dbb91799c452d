package org.benchtrail.training;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Map;
import java.util.Objects;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.ForecastKind;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.NeedsPermission;
import org.benchtrail.people.Permission;
import org.benchtrail.platform.IfMatch;
import org.benchtrail.platform.description.AnswersWith;
import org.benchtrail.ticket.api.SheetJson;
import org.benchtrail.ticket.api.TicketAnswers;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** Forecasts for programs. */
@Path("/api/tickets/{number}/forecasts")
@Authenticated
@Produces(MediaType.APPLICATION_JSON)
@Blocking
@Tag(name = "Tickets")
public class ForecastApi {
    private final ForecastActs acts;
    private final TicketAnswers answers;
    private final CurrentActor current;

    ForecastApi(ForecastActs acts, TicketAnswers answers, CurrentActor current) {
        this.acts = acts;
        this.answers = answers;
        this.current = current;
    }

    /**
     * A forecast of the causes, or one chance of one thing.
     *
     * @param forecast which one is due
     * @param causes whole per cent by id of the cause
     * @param other whole per cent of something else; what is left to 100 where it is left out
     * @param nextTest id of the finding that would be looked at next; may be left out
     * @param about of CHECK and ACTION: the entry of the check or action
     * @param finding of FINDING: its id
     * @param value of FINDING: what it will be
     * @param percent of CHECK, FINDING and ACTION: 1, 5, 10, 15 ... 95 or 99
     */
    public record NewForecast(
            @Nullable ForecastKind forecast,
            @Nullable Map<String, Integer> causes,
            @Nullable Integer other,
            @Nullable String nextTest,
            @Nullable Integer about,
            @Nullable String finding,
            @Nullable String value,
            @Nullable Integer percent) {

        private boolean isChance() {
            return forecast != null && !forecast.isOfCauses();
        }
    }

    @NeedsPermission(Permission.WORK_TICKETS)
    @AnswersWith(value = SheetJson.class, versioned = true)
    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Commit a forecast of the causes, which a trainee makes before they are shown, or of one thing",
            description =
                    "The trail gets that it was made, and what binds it; what it says is read by its author and their mentor"
                            + " alone. Until then what tells causes answers 409, forecast-first. It is skipped by the act forecast-skipped. A chance that a check comes as expected,"
                            + " of what will be found, or that the trouble is gone after an action is offered and never demanded.")
    public Response commit(
            @RestPath String number, @HeaderParam("If-Match") @Nullable String version, NewForecast forecast) {
        TicketNumber ticket = TicketNumber.parse(number);
        int seen = IfMatch.version(version, "ticket");
        ForecastKind kind = forecast.forecast();
        if (kind != null && forecast.isChance()) {
            ForecastActs.Chance chance = new ForecastActs.Chance(
                    kind,
                    forecast.about(),
                    Objects.requireNonNullElse(forecast.finding(), ""),
                    Objects.requireNonNullElse(forecast.value(), ""),
                    Objects.requireNonNullElse(forecast.percent(), 0));
            return answers.after(acts.commit(ticket, seen, chance, current.actor()));
        }
        ForecastActs.Typed typed = new ForecastActs.Typed(
                forecast.forecast(),
                Objects.requireNonNullElse(forecast.causes(), Map.of()),
                forecast.other(),
                Objects.requireNonNullElse(forecast.nextTest(), ""));
        return answers.after(acts.commit(ticket, seen, typed, current.actor()));
    }
}
