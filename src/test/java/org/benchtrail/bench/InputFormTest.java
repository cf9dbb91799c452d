package org.benchtrail.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.bench.InputField.Kind;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Trade;
import org.benchtrail.core.bench.judging.AgainstLimit;
import org.benchtrail.platform.Option;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class InputFormTest {
    public record Part(
            @Ask(label = "Name") String name,
            @Ask(label = "Draw", unit = "W") double watts) {}

    public record Sheet(
            @Ask(label = "Load", unit = "W", hint = "Measured")
            double load,

            @Ask(label = "Pieces", unit = "1") int pieces,
            @Ask(label = "In use") boolean used,
            @Ask(label = "Trade") Trade trade,
            @Ask(label = "Note") String note,
            @Ask(label = "Limit", unit = "V") @Nullable Double limit,
            @Ask(label = "Readings", unit = "V") List<Double> readings,
            @Ask(label = "Parts") List<Part> parts) {
        public Sheet {
            InputCheck check = new InputCheck();
            check.within("load", load, 0, 1000, "W");
            check.within("pieces", pieces, 0, 9, "");
            check.present("trade", trade);
            readings = check.list("readings", readings, 0, 5, (path, v) -> check.within(path, v, -10, 10, "V"));
            parts = check.list("parts", parts, 0, 5, (path, p) -> check.within(path + ".watts", p.watts(), 0, 99, "W"));
            check.done();
        }
    }

    private static Map<String, List<String>> fields(String... namesAndTexts) {
        Map<String, List<String>> fields = new HashMap<>(
                Map.of("load", List.of("300"), "pieces", List.of("2"), "trade", List.of("POWER"), "note", List.of("")));
        for (int i = 0; i < namesAndTexts.length; i += 2) {
            fields.put(namesAndTexts[i], List.of(namesAndTexts[i + 1]));
        }
        return fields;
    }

    private static Sheet read(String... namesAndTexts) {
        return InputForm.read(Sheet.class, TypedValues.form(fields(namesAndTexts)));
    }

    private static List<String> refused(String... namesAndTexts) {
        Invalid refusal = assertThrows(Invalid.class, () -> read(namesAndTexts));
        return refusal.problems().stream().map(Invalid.Problem::field).toList();
    }

    static Stream<Calculation<?>> calculations() {
        return Bench.all().stream();
    }

    @ParameterizedTest
    @MethodSource("calculations")
    void example_comesBackAsItWas(Calculation<?> calculation) {
        assertComesBack(calculation);
    }

    /** Equal but for space around a text, which is nothing that anybody types on purpose. */
    private static <I extends Record> void assertComesBack(Calculation<I> calculation) {
        I back = InputForm.read(calculation.inputType(), InputForm.write(calculation.example()));
        assertEquals(calculation.example().toString().replaceAll("\\n, ", ", "), back.toString());
        assertEquals(calculation.calculate(calculation.example()), calculation.calculate(back));
    }

    @ParameterizedTest
    @MethodSource("calculations")
    void nothingTyped_isRefusedAtEveryRequiredField(Calculation<?> calculation) {
        Invalid refusal =
                assertThrows(Invalid.class, () -> InputForm.read(calculation.inputType(), TypedValues.form(Map.of())));
        Set<String> named =
                refusal.problems().stream().map(Invalid.Problem::field).collect(Collectors.toSet());
        assertEquals(named.size(), refusal.problems().size(), "a field is told once: " + refusal.problems());
        InputField.of(calculation.inputType()).stream()
                .filter(InputField::required)
                .forEach(a -> assertTrue(named.contains(a.name()), a.name()));
        refusal.problems().forEach(p -> assertFalse(p.sentence().matches(".*(NaN|null|-2147483648).*"), p.sentence()));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "300|300",
                "300.5|300.5",
                "300,5|300.5",
                "2.5e2|250",
                "300 W|300",
                " 300W |300",
                "1 000|1000",
                "+7|7",
                "300 mW|0.3",
                "0,25kW|250",
                "2e5 mW|200",
                "0|0"
            })
    void number_isReadAsPeopleTypeIt(String text, double value) {
        assertEquals(value, read("load", text).load());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "  ",
                "abc",
                "300 V",
                "-1",
                "1e25",
                "1e99",
                "1,234",
                "NaN",
                "∞",
                "3 0 0",
                "٣٠٠",
                "<b>",
                "99999999999999999999999999999999999999999999999",
                "1001",
                "300 ドル",
                "60 €",
                "3 h",
                "1 W 10",
                "\u0000"
            })
    void numberThatIsNone_isRefusedOnceAtItsField(String text) {
        assertEquals(List.of("load"), refused("load", text));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "2.5", "-3", "9999999999", "two", "2 W"})
    void wholeNumberThatIsNone_isRefused(String text) {
        assertEquals(List.of("pieces"), refused("pieces", text));
    }

    /** Where the unit is one of the values, people type it behind the numbers too. */
    @Test
    void unitOfTheForm_mayStandBehindItsNumbers() {
        Calculation<?> calculation = Bench.find("against-limit").orElseThrow();
        Map<String, List<String>> fields = new HashMap<>(Map.of(
                "unit", List.of("V"),
                "value", List.of("11,38V"),
                "uncertainty", List.of("0.05 V"),
                "lower", List.of("11.4"),
                "guard", List.of("2")));
        assertEquals(
                new AgainstLimit.Input("V", 11.38, 0.05, 11.4, null, 2),
                InputForm.read(calculation.inputType(), TypedValues.form(fields)));
        fields.put("value", List.of("11,38 mV"));
        Invalid refused =
                assertThrows(Invalid.class, () -> InputForm.read(calculation.inputType(), TypedValues.form(fields)));
        assertEquals(
                List.of("value"),
                refused.problems().stream().map(Invalid.Problem::field).toList());
    }

    @Test
    void everythingWrong_isToldAtOnce() {
        assertEquals(
                Set.of("load", "pieces", "trade", "limit", "used", "readings[1]", "parts[7].watts"),
                Set.copyOf(refused(
                        "load",
                        "x",
                        "pieces",
                        "100",
                        "trade",
                        "MAGIC",
                        "limit",
                        "two",
                        "used",
                        "perhaps",
                        "readings",
                        "1\nx",
                        "parts[7].name",
                        "fan",
                        "parts[7].watts",
                        "-5")));
    }

    @Test
    void optionalNumber_mayBeEmpty() {
        assertEquals(null, read("limit", " ").limit());
        assertEquals(-0.5, read("limit", "−0,5 V").limit());
    }

    @ParameterizedTest
    @ValueSource(strings = {"1.5\n-2\n3", "1,5; -2; 3", "1.5, -2, 3", "1,5;-2;3;", "1.5 V\r\n\r\n-2 V\r\n3 V\r\n"})
    void numbers_standOneToALineOrApart(String text) {
        assertEquals(List.of(1.5, -2.0, 3.0), read("readings", text).readings());
    }

    @ParameterizedTest
    @ValueSource(strings = {"1 2 3", "1.5 200 300", "1\n2 A\n3"})
    void numbersThatRunTogether_areRefusedRatherThanJoined(String text) {
        assertTrue(refused("readings", text).get(0).startsWith("readings["));
    }

    @Test
    void emptyRows_areLeftOutAndRefusalsNameTheRowTypedIn() {
        Sheet sheet =
                read("parts[0].name", "", "parts[0].watts", " ", "parts[4].name", "fän 🔌", "parts[4].watts", "3,5");
        assertEquals(List.of(new Part("fän 🔌", 3.5)), sheet.parts());
        assertEquals(
                List.of("parts[4].watts"),
                refused("parts[1].name", "", "parts[4].name", "fan", "parts[4].watts", "100"));
        assertEquals(List.of("parts[4].watts"), refused("parts[4].name", "fan"));
    }

    @Test
    void tick_isFalseUnlessSent() {
        assertFalse(read().used());
        assertTrue(read("used", "true").used());
    }

    @Test
    void asked_tellsLabelUnitAndHint() {
        InputField load = InputField.of(Sheet.class).get(0);
        assertEquals(
                List.of("load", "Load", "W", "Measured"), List.of(load.name(), load.label(), load.unit(), load.hint()));
        assertEquals(
                List.of(
                        Kind.NUMBER,
                        Kind.WHOLE,
                        Kind.TICK,
                        Kind.CHOICE,
                        Kind.TEXT,
                        Kind.NUMBER,
                        Kind.NUMBERS,
                        Kind.ROWS),
                InputField.of(Sheet.class).stream().map(InputField::kind).toList());
        assertEquals("", InputField.of(Sheet.class).get(1).unit(), "a pure number has no unit");
    }

    /** Every choice reads as the trade writes it: no constant's name, no two alike. */
    @Test
    void choices_areInWords() {
        for (Calculation<?> calculation : Bench.all()) {
            InputField.of(calculation.inputType()).stream()
                    .flatMap(a -> Stream.concat(Stream.of(a), a.fields().stream()))
                    .filter(a -> a.kind() == Kind.CHOICE)
                    .forEach(InputFormTest::assertWords);
        }
    }

    private static void assertWords(InputField asked) {
        List<String> words = asked.options().stream().map(Option::words).toList();
        assertEquals(words.size(), Set.copyOf(words).size(), words::toString);
        for (Option option : asked.options()) {
            assertFalse(option.words().contains("_"), option.words());
            boolean spelledByName = option.words()
                    .equals(option.value().toLowerCase(java.util.Locale.ROOT).replace('_', ' '));
            if (spelledByName) {
                assertFalse(option.words().matches(".*[0-9].*"), option.words() + " needs the trade's spelling");
            } else {
                assertNotEquals("", option.words());
            }
        }
    }
}
