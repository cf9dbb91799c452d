package org.benchtrail.bench;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.advice.BenchFacts;
import org.benchtrail.core.advice.SheetReader;
import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.platform.NotFound;
import org.jspecify.annotations.Nullable;

/** A calculation with what it was given and what came out, on its way to a job sheet. */
public final class BenchRun {
    private static final ObjectMapper MAPPER = JsonMapper.builder().build();

    private final Calculation<?> calculation;
    private final TypedValues typed;
    private final Record input;
    private final Result result;

    private BenchRun(Calculation<?> calculation, TypedValues typed, Record input, Result result) {
        this.calculation = calculation;
        this.typed = typed;
        this.input = input;
        this.result = result;
    }

    /**
     * @throws org.benchtrail.platform.NotFound if there is no such calculation
     * @throws org.benchtrail.core.Invalid naming every field that has to be put right
     */
    public static BenchRun ofForm(String calculation, Map<String, ? extends List<String>> values) {
        return run(BenchPage.find(calculation), TypedValues.form(values));
    }

    /** As {@link #ofForm}, from the same JSON that the bench's API takes. */
    public static BenchRun ofJson(String calculation, @Nullable JsonNode input) {
        Calculation<?> found = BenchPage.find(calculation);
        return run(found, JsonInput.read(InputField.of(found.inputType()), input));
    }

    /** The values of an attached result by the paths of their fields; none if they are asked for otherwise today. */
    public static Map<String, String> values(BenchResultAttached attached) {
        try {
            return Bench.find(attached.calculation())
                    .map(found -> JsonInput.read(InputField.of(found.inputType()), tree(attached))
                            .all())
                    .orElse(Map.of());
        } catch (Invalid e) {
            return Map.of();
        }
    }

    private static JsonNode tree(BenchResultAttached attached) {
        try {
            return MAPPER.readTree(attached.input());
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("an attached result holds the JSON that it was made from", e);
        }
    }

    /** What was attached to a ticket, worked again; empty if the calculation is another one by now, or takes it no longer. */
    public static Optional<SheetReader.Worked> worked(BenchResultAttached attached) {
        try {
            BenchRun run = ofJson(attached.calculation(), MAPPER.readTree(attached.input()));
            return run.calculation.version() == attached.version()
                    ? Optional.of(new SheetReader.Worked(run.input, run.result))
                    : Optional.empty();
        } catch (Invalid | NotFound | JsonProcessingException e) {
            return Optional.empty();
        }
    }

    /** Where an attached result is calculated again by the present version; empty if its values are asked for otherwise today. */
    public static String again(BenchResultAttached attached) {
        Map<String, String> values = values(attached);
        return values.isEmpty() ? "" : address(attached.calculation(), values);
    }

    private static <I extends Record> BenchRun run(Calculation<I> calculation, TypedValues typed) {
        I input = InputForm.read(calculation.inputType(), typed);
        return new BenchRun(calculation, typed, input, InputForm.calculate(calculation, typed));
    }

    /** @throws Invalid if the values are those of the example: nobody measured them on a ticket's device */
    public void refuseExample() {
        if (InputForm.isExample(calculation, typed)) {
            throw new Invalid(
                    "values",
                    "These are the values of the example: give those of this ticket before the result is attached.");
        }
    }

    public String id() {
        return calculation.id();
    }

    public String title() {
        return calculation.title();
    }

    public boolean checksPart() {
        return BenchFacts.PART_CHECKS.contains(calculation.id());
    }

    public ResultView view() {
        return ResultView.of(result);
    }

    /** A value as it was typed, to be sent along unseen. */
    public record Hidden(String name, String value) {}

    public List<Hidden> hidden() {
        return hidden(typed);
    }

    static List<Hidden> hidden(TypedValues typed) {
        return typed.all().entrySet().stream()
                .map(e -> new Hidden(e.getKey(), e.getValue()))
                .toList();
    }

    /** The address of the bench's page with these values. */
    public String address() {
        return address(id(), typed.all());
    }

    private static String address(String id, Map<String, String> values) {
        return values.entrySet().stream()
                .map(e -> encoded(e.getKey()) + "=" + encoded(e.getValue()))
                .collect(Collectors.joining("&", "/bench/" + id + "?", "#result"));
    }

    /** See {@link BenchFacts#meaning}. */
    public String meaning(boolean part) {
        return BenchFacts.meaning(calculation.id(), result, part);
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    /** See {@link BenchFacts#of}. */
    public List<Fact> facts(@Nullable Integer action, int entry) {
        return facts(calculation, action, entry);
    }

    @SuppressWarnings("unchecked") // the input was read as this calculation's own
    private <I extends Record> List<Fact> facts(Calculation<I> same, @Nullable Integer action, int entry) {
        return BenchFacts.of(same, (I) input, json(), result, action, entry);
    }

    private String json() {
        try {
            return MAPPER.writeValueAsString(input);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("an input is plain data", e);
        }
    }
}
