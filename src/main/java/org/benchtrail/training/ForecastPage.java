package org.benchtrail.training;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.ForecastKind;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.form.AskedFor;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.platform.form.SignedOut;
import org.benchtrail.ticket.forecast.ChancesView;
import org.benchtrail.ticket.forecast.ForecastView;
import org.benchtrail.ticket.sheet.SheetScreen;
import org.jboss.resteasy.reactive.RestPath;

/** Takes the forecast that is typed on a job sheet. It is kept in no draft, which others' eyes may come by. */
@Path("/tickets/{number}/forecast")
public class ForecastPage {
    private static final String STALE =
            "Somebody else wrote on this sheet meanwhile. Your forecast is kept below: read what is new, then commit it.";

    private final ForecastActs acts;
    private final SheetScreen screen;
    private final CurrentActor current;

    ForecastPage(ForecastActs acts, SheetScreen screen, CurrentActor current) {
        this.acts = acts;
        this.screen = screen;
        this.current = current;
    }

    /** Open to all, so that what a signed-out person typed can be given back to them. */
    @POST
    @PermitAll
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response commit(@RestPath String number, MultivaluedMap<String, String> typed) {
        if (!current.signedIn()) {
            return SignedOut.resend("/tickets/" + number + "/forecast", typed);
        }
        Permissions.require(Permission.WORK_TICKETS, current.actor());
        TicketNumber ticket = TicketNumber.parse(number);
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> screen.after(
                        form.has("expected")
                                ? acts.commit(ticket, form.version(), chance(form), current.actor())
                                : acts.commit(ticket, form.version(), read(form), current.actor()),
                        typed),
                refusal -> screen.again(ticket, "forecast", typed, refusal, form.version(), STALE));
    }

    /** What was chosen of {@link ChancesView}: kind, entry or finding, value. */
    private static ForecastActs.Chance chance(PostedForm form) {
        String[] parts = form.text("expected").split(" ", 3);
        ForecastKind kind = AskedFor.choice(ForecastKind.class, parts[0]);
        if (kind == null || kind.isOfCauses() || parts.length < 2) {
            form.refuse("expected", "Choose what it is about.");
        }
        form.done();
        boolean finding = kind == ForecastKind.FINDING;
        return new ForecastActs.Chance(
                Objects.requireNonNull(kind),
                finding || !parts[1].matches("\\d{1,9}") ? null : Integer.valueOf(parts[1]),
                finding ? parts[1] : "",
                finding && parts.length > 2 ? parts[2] : "",
                form.number("chance").orElse(0));
    }

    private static ForecastActs.Typed read(PostedForm form) {
        Map<String, Integer> causes = new TreeMap<>();
        for (int row = 1; row <= ForecastView.MOST; row++) {
            String cause = form.text("cause." + row);
            OptionalInt percent = form.number("percent." + row);
            if (cause.isEmpty() && form.has("percent." + row)) {
                form.refuse("cause." + row, "Choose the cause that this chance is of.");
            } else if (!cause.isEmpty() && percent.isEmpty()) {
                form.refuse("percent." + row, "Give its chance, a whole per cent.");
            } else if (!cause.isEmpty() && causes.put(cause, percent.getAsInt()) != null) {
                form.refuse("cause." + row, "This cause is named twice.");
            }
        }
        OptionalInt other = form.number("other");
        form.done();
        return new ForecastActs.Typed(
                AskedFor.choice(ForecastKind.class, form.text("forecast")),
                causes,
                other.isEmpty() ? null : other.getAsInt(),
                form.text("nextTest"));
    }
}
