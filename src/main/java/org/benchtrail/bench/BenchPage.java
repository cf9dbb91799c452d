package org.benchtrail.bench;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.advice.BenchFacts;
import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Trade;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.NotFound;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** The bench for people. Values stand in the address, so that a calculation can be linked and kept; nothing is stored. */
@Path("/bench")
@Authenticated
@Blocking
public class BenchPage {
    private final CurrentActor current;
    private final TicketValues tickets;

    BenchPage(CurrentActor current, TicketValues tickets) {
        this.current = current;
        this.tickets = tickets;
    }

    @CheckedTemplate(basePath = "bench")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance bench(List<TradePart> trades);

        static native TemplateInstance calculation(
                Heading heading, FormView form, @Nullable ResultView result, Target target);
    }

    /**
     * Where the result may go.
     *
     * @param offered whether the viewer may attach it to a ticket; never while the values are those of the example
     * @param ticket the job sheet that the viewer came from, with the action in question after a slash; empty if none
     * @param example whether the example is shown, or what was made of it
     * @param known where the values come from that the ticket knows already, in words; empty if it knows none
     * @param meaning what the result means for the ticket; empty without a ticket or a result
     * @param values what was calculated with
     */
    public record Target(
            boolean offered,
            String ticket,
            boolean example,
            String known,
            String meaning,
            List<BenchRun.Hidden> values) {
        static Target without(String ticket, boolean example, String known) {
            return new Target(false, ticket, example, known, "", List.of());
        }

        /** The number of the ticket, without the action. */
        public String number() {
            return ticket.replaceAll("/.*", "");
        }
    }

    /** The parameter that carries {@link Target#ticket}; no calculation asks for anything of that name. */
    static final String FOR = "for";
    /** The parameter that asks for the example, and stays while its values are changed. */
    static final String EXAMPLE = "example";

    /** The calculations of one trade. */
    public record TradePart(String id, String title, List<Heading> calculations) {}

    public record Heading(String id, String title, String question, String trade, String tradeId) {}

    @GET
    @Blocking
    public Response bench() {
        Permissions.require(Permission.SEE_TICKETS, current.actor());
        List<TradePart> trades =
                Arrays.stream(Trade.values()).map(BenchPage::part).toList();
        return Html.ok(Templates.bench(trades));
    }

    /** An empty form if no values are given, the example if that is asked for, else the result for the values. */
    @GET
    @Path("{id}")
    @Blocking
    public Response calculation(@RestPath String id, @Context UriInfo uri) {
        Permissions.require(Permission.SEE_TICKETS, current.actor());
        Map<String, List<String>> values = new HashMap<>(uri.getQueryParameters());
        List<String> ticket = values.remove(FOR);
        boolean example = values.remove(EXAMPLE) != null;
        return answer(find(id), values, ticket == null ? "" : ticket.get(0).replaceAll("[^0-9/-]", ""), example);
    }

    /** @throws NotFound if the bench has no such calculation */
    static Calculation<?> find(String id) {
        return Bench.find(id).orElseThrow(() -> new NotFound("calculation '" + id + "' on the bench"));
    }

    private <I extends Record> Response answer(
            Calculation<I> calculation, Map<String, List<String>> values, String ticket, boolean example) {
        List<InputField> asked = InputField.of(calculation.inputType());
        Heading heading = heading(calculation);
        if (values.isEmpty() && !example) {
            return start(calculation, asked, heading, ticket);
        }
        TypedValues typed = values.isEmpty() ? InputForm.write(calculation.example()) : TypedValues.form(values);
        try {
            Result result = InputForm.calculate(calculation, typed);
            boolean borrowed = example || InputForm.isExample(calculation, typed);
            boolean offered = current.actor().works() && !borrowed;
            FormView form = FormView.of(asked, typed, List.of());
            Target target = new Target(
                    offered,
                    ticket,
                    borrowed,
                    "",
                    ticket.isEmpty() || borrowed
                            ? ""
                            : BenchFacts.meaning(calculation.id(), result, ticket.contains("/")),
                    BenchRun.hidden(typed));
            return Html.ok(Templates.calculation(heading, form, ResultView.of(result), target));
        } catch (Invalid refused) {
            FormView form = FormView.of(asked, typed, refused.problems());
            Target target = Target.without(ticket, example, "");
            return Html.status(422, Templates.calculation(heading, form, null, target));
        }
    }

    /** Empty, or with what the ticket knows already; nothing is calculated before somebody has looked at the values. */
    private Response start(Calculation<?> calculation, List<InputField> asked, Heading heading, String ticket) {
        TicketValues.Known known =
                ticket.isEmpty() ? TicketValues.Known.NOTHING : tickets.known(ticket, calculation, current.actor());
        Map<String, List<String>> filled = new HashMap<>();
        known.values().forEach((path, text) -> filled.put(path, List.of(text)));
        FormView form = FormView.of(asked, TypedValues.form(filled), List.of());
        return Html.ok(Templates.calculation(heading, form, null, Target.without(ticket, false, known.from())));
    }

    private static TradePart part(Trade trade) {
        return new TradePart(
                id(trade),
                title(trade),
                Bench.of(trade).stream().map(BenchPage::heading).toList());
    }

    private static Heading heading(Calculation<?> calculation) {
        return new Heading(
                calculation.id(),
                calculation.title(),
                calculation.question(),
                title(calculation.trade()),
                id(calculation.trade()));
    }

    private static String id(Trade trade) {
        return trade.name().toLowerCase(Locale.ROOT);
    }

    private static String title(Trade trade) {
        return trade.name().charAt(0) + id(trade).substring(1);
    }
}
