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
import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.bench.Calculation;
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

    BenchPage(CurrentActor current) {
        this.current = current;
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
     * @param values what was calculated with
     */
    public record Target(boolean offered, String ticket, boolean example, List<BenchRun.Hidden> values) {
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
            Target nowhere = new Target(false, ticket, false, List.of());
            FormView empty = FormView.of(asked, new TypedValues(), List.of());
            return Html.ok(Templates.calculation(heading, empty, null, nowhere));
        }
        TypedValues typed = values.isEmpty() ? InputForm.write(calculation.example()) : TypedValues.form(values);
        try {
            ResultView result = ResultView.of(InputForm.calculate(calculation, typed));
            boolean borrowed = example || InputForm.isExample(calculation, typed);
            boolean offered = current.actor().works() && !borrowed;
            FormView form = FormView.of(asked, typed, List.of());
            Target target = new Target(offered, ticket, borrowed, BenchRun.hidden(typed));
            return Html.ok(Templates.calculation(heading, form, result, target));
        } catch (Invalid refused) {
            FormView form = FormView.of(asked, typed, refused.problems());
            Target target = new Target(false, ticket, example, List.of());
            return Html.status(422, Templates.calculation(heading, form, null, target));
        }
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
