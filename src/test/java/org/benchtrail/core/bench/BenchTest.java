package org.benchtrail.core.bench;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.io.IOException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.Mutation.Place;
import org.benchtrail.core.bench.Pocket.Sum;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Figure;
import org.benchtrail.core.bench.Result.Working;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What every calculation of power, cooling and judging owes its readers, whatever it computes. */
class BenchTest {
    private static final Set<Trade> TRADES = Set.of(Trade.POWER, Trade.COOLING, Trade.JUDGING);
    private static final Set<String> CAUTIONS = Set.of(
            "MAINS",
            "BATTERY",
            "CAPACITOR",
            "HEAT",
            "LIFTING",
            "LASER",
            "SWELLING",
            "STATIC",
            "DATA_LOSS",
            "MOVING_PARTS");

    /** Quantities that may well lie below zero: readings and limits in any unit. */
    private static final Set<String> SIGNED = Set.of(
            "meter readings",
            "against-limit value",
            "against-limit lower",
            "against-limit upper",
            "before-after before",
            "before-after after");

    private static final Pattern PROMISE = Pattern.compile("\\b(safe|safely|safety)\\b", Pattern.CASE_INSENSITIVE);

    static Stream<Calculation<?>> calculations() {
        return Bench.all().stream().filter(c -> TRADES.contains(c.trade()));
    }

    private static <I extends Record> Result run(Calculation<I> calculation, Record input) {
        return calculation.calculate(calculation.inputType().cast(input));
    }

    /** One that is written and not listed would be on no page and in no API. */
    @Test
    void everyCalculationThatIsWritten_isListed() {
        Set<String> written = new ClassFileImporter()
                .importPackages("org.benchtrail.core.bench").stream()
                        .filter(c -> c.tryGetField("CALCULATION").isPresent())
                        .map(JavaClass::reflect)
                        .map(BenchTest::idOf)
                        .collect(Collectors.toCollection(TreeSet::new));
        Set<String> listed = Bench.all().stream().map(Calculation::id).collect(Collectors.toCollection(TreeSet::new));
        written.removeAll(listed);
        assertEquals(Set.of(), written, "name them in Bench");
    }

    private static String idOf(Class<?> calculation) {
        try {
            return ((Calculation<?>) calculation.getField("CALCULATION").get(null)).id();
        } catch (ReflectiveOperationException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void bench_holdsEveryIdOfTheDesign() {
        Map<Trade, List<String>> ids = new EnumMap<>(Trade.class);
        ids.put(
                Trade.POWER,
                List.of("rails", "supply-size", "mains", "ups-outlets", "ups-load", "ups-runtime", "battery-health"));
        ids.put(Trade.COOLING, List.of("heat-path", "clock-heat", "warm-up", "fan", "room-heat"));
        ids.put(Trade.STORAGE, List.of("drive-health", "drive-fit", "array", "backup-time", "endurance"));
        ids.put(Trade.MEMORY, List.of("module-fit"));
        ids.put(Trade.NETWORK, List.of("subnet", "copper-link", "poe-budget", "path-throughput", "loss", "transfer"));
        ids.put(Trade.WIRELESS, List.of("radio-link"));
        ids.put(Trade.VOICE, List.of("voice", "jitter"));
        ids.put(Trade.JUDGING, List.of("meter", "against-limit", "before-after", "soak", "subset"));
        for (Trade trade : Trade.values()) {
            assertEquals(
                    ids.get(trade),
                    Bench.of(trade).stream().map(Calculation::id).toList());
        }
        assertEquals(
                ids.values().stream().flatMap(List::stream).toList(),
                Bench.all().stream().map(Calculation::id).toList());
        for (Calculation<?> calculation : Bench.all()) {
            assertEquals(Optional.of(calculation), Bench.find(calculation.id()));
        }
        assertTrue(Bench.find("no-such-calculation").isEmpty());
    }

    @ParameterizedTest
    @MethodSource("calculations")
    void inputs_askForEveryComponent(Calculation<?> calculation) {
        assertAsked(calculation.inputType());
        assertTrue(calculation.question().endsWith("?"), calculation.id());
        assertTrue(calculation.version() >= 1, calculation.id());
    }

    private static void assertAsked(Class<?> type) {
        for (RecordComponent component : type.getRecordComponents()) {
            Ask ask = component.getAnnotation(Ask.class);
            assertNotNull(ask, type + "." + component.getName());
            assertFalse(ask.label().isBlank(), type + "." + component.getName());
            if (component.getGenericType() instanceof ParameterizedType list
                    && list.getActualTypeArguments()[0] instanceof Class<?> entry
                    && entry.isRecord()) {
                assertAsked(entry);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("calculations")
    void example_calculates(Calculation<?> calculation) {
        assertOwed(calculation, calculation.example());
    }

    /** One sign for "times" in formulas, sums and words; x is the name of a value. */
    @ParameterizedTest
    @MethodSource("org.benchtrail.core.bench.Bench#all")
    void times_isOneSign(Calculation<?> calculation) {
        String all = String.valueOf(Inputs.run(calculation, calculation.example()));
        assertFalse(all.replace("mean x", "mean").matches("(?s).*[\\w)%] x [\\w(λ√].*"), all);
    }

    @Test
    void readme_countsThem() throws IOException {
        String readme = Files.readString(Path.of("README.md"));
        assertTrue(readme.contains(" " + Bench.all().size() + " calculations of the trade"), "their number in README");
    }

    /** Without them nothing would notice that its words say otherwise than its numbers, or come back as its input grows. */
    @ParameterizedTest
    @MethodSource("calculations")
    void whatIsJudged_hasAnInputThatDrivesItAndASentenceThatIsReadAgain(Calculation<?> calculation) {
        if (Inputs.run(calculation, calculation.example())
                        .orElseThrow()
                        .judgement()
                        .level()
                == Result.Level.NONE) {
            return;
        }
        assertAll(
                () -> assertTrue(
                        Drive.ALL.stream().anyMatch(d -> d.calculation().equals(calculation.id())),
                        calculation.id() + " judges: say in Drive which way its inputs drive the verdict"),
                () -> assertNotEquals(
                        List.of(),
                        Saying.of(calculation.id()),
                        calculation.id() + " judges: say in Saying what its words say of the numbers"));
    }

    /** Everything a result owes, for the example with its numbers shaken by up to 40 % either way. */
    @ParameterizedTest
    @MethodSource("calculations")
    void shakenExamples_oweTheSame(Calculation<?> calculation) throws Throwable {
        int calculated = 0;
        for (long seed = 1; seed <= 80; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            try {
                Record input = Mutation.each(calculation.example(), x -> shaken(x, random));
                assertOwed(calculation, input);
                calculated++;
            } catch (Invalid refused) {
                assertFalse(refused.problems().isEmpty());
            } catch (AssertionError | RuntimeException e) {
                throw new AssertionError(calculation.id() + " with seed " + seed + ": " + e.getMessage(), e);
            }
        }
        assertTrue(calculated >= 5, calculation.id() + " accepted only " + calculated + " of 80 shaken examples");
    }

    /** Five digits, as a person would type it, so that the working shows the number in full. */
    private static double shaken(double x, SplittableRandom random) {
        return Double.parseDouble(Numeral.of(x * (0.6 + 0.8 * random.nextDouble()), 5));
    }

    private static void assertOwed(Calculation<?> calculation, Record input) {
        Result result = run(calculation, input);
        assertFalse(result.figures().isEmpty());
        assertFalse(result.assumptions().isEmpty());
        result.figures().forEach(figure -> assertFigure(result, figure));
        result.curves().forEach(BenchTest::assertCurve);
        assertTrue(CAUTIONS.containsAll(result.cautions()), () -> "unknown caution in " + result.cautions());
        result.rules().forEach(rule -> assertFalse(rule.source().isBlank(), rule.name()));
        texts(result).forEach(BenchTest::assertWording);
        assertTrue(
                result.judgement().reason().matches("(?s).*[0-9].*")
                        || !result.rules().isEmpty(),
                result.judgement().reason());
        assertEquals(result, run(calculation, input));
    }

    private static void assertFigure(Result result, Figure figure) {
        assertTrue(Double.isFinite(figure.value()), figure.name() + " is " + figure.value());
        assertFalse(figure.unit().isBlank(), figure.name() + " has no unit");
        assertTrue(figure.digits() >= 1 && figure.digits() <= 15, figure.name());
        Working line = result.working().stream()
                .filter(w -> w.what().equals(figure.name()))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no working for " + figure.name()));
        String unit = figure.unit().equals("1") ? "" : " " + figure.unit();
        String shown = " = " + figure.text() + unit;
        assertTrue(line.withNumbers().endsWith(shown), line.withNumbers() + " does not end in" + shown);
        assertSum(line, figure);
    }

    /** The numbers that were put in give the figure, up to the rounding of what is shown. */
    private static void assertSum(Working line, Figure figure) {
        String put = line.withNumbers().substring(0, line.withNumbers().lastIndexOf(" = "));
        Optional<Sum> sum = Pocket.of(put);
        if (sum.isPresent()) {
            double slack = 1e-7
                    * Math.max(
                            sum.get().largestTerm() > 1e30 ? 100 : sum.get().largestTerm(), Math.abs(figure.value()));
            assertEquals(figure.value(), sum.get().value(), slack, line.what() + ": " + line.withNumbers());
        }
    }

    @Test
    void workings_canBeKeyedIn() {
        int sums = 0;
        int lines = 0;
        for (Calculation<?> calculation : calculations().toList()) {
            for (Working line : run(calculation, calculation.example()).working()) {
                int end = line.withNumbers().lastIndexOf(" = ");
                lines++;
                sums += end > 0
                                && Pocket.of(line.withNumbers().substring(0, end))
                                        .isPresent()
                        ? 1
                        : 0;
            }
        }
        assertTrue(sums >= 0.85 * lines, sums + " of " + lines + " lines are sums");
    }

    private static void assertCurve(Curve curve) {
        assertTrue(curve.points().size() >= 2, curve.title());
        for (int i = 0; i < curve.points().size(); i++) {
            assertTrue(Double.isFinite(curve.points().get(i).y()), curve.title());
            assertTrue(
                    i == 0
                            || curve.points().get(i).x()
                                    > curve.points().get(i - 1).x(),
                    curve.title());
        }
        assertFalse(curve.xUnit().isBlank() || curve.yUnit().isBlank(), curve.title());
    }

    private static List<String> texts(Result result) {
        List<String> texts = new ArrayList<>(
                List.of(result.judgement().words(), result.judgement().reason()));
        texts.addAll(result.assumptions());
        result.rules().forEach(rule -> texts.add(rule.sentence()));
        return texts;
    }

    private static void assertWording(String text) {
        assertFalse(text.isBlank());
        assertFalse(PROMISE.matcher(text).find(), text);
        assertFalse(text.contains("NaN") || text.contains("Infinity") || text.contains("null"), text);
    }

    @ParameterizedTest
    @MethodSource("calculations")
    void numbersThatAreNone_areRefused(Calculation<?> calculation) throws Throwable {
        for (Place place : Mutation.places(calculation.example())) {
            for (double value : new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
                assertRefused(calculation, place, value);
            }
        }
    }

    /** A temperature is refused below absolute zero; a signed quantity is not a magnitude and may be negative. */
    @ParameterizedTest
    @MethodSource("calculations")
    void negativeMagnitudes_areRefused(Calculation<?> calculation) throws Throwable {
        for (Place place : Mutation.places(calculation.example())) {
            String root = calculation.id() + " " + place.path().replaceAll("\\[.*", "");
            if (SIGNED.contains(root)) {
                assertTakenOrRefused(calculation, place, -0.5);
            } else {
                assertRefused(calculation, place, place.unit().equals("°C") ? -300 : -1);
            }
        }
    }

    private static void assertRefused(Calculation<?> calculation, Place place, double value) {
        Invalid refusal = assertThrows(
                Invalid.class,
                () -> run(calculation, Mutation.with(calculation.example(), place, value)),
                () -> calculation.id() + "." + place.path() + " = " + value);
        FigureOf.names(refusal, place.path());
        refusal.problems().forEach(p -> assertFalse(p.sentence().isBlank()));
    }

    /** Extremes never lead to anything but a finite result or a refusal. */
    @ParameterizedTest
    @MethodSource("calculations")
    void extremes_giveFiniteFiguresOrARefusal(Calculation<?> calculation) throws Throwable {
        double[] extremes = {0, -0.0, 1e-300, 1e-12, 1e-9, 0.001, 1, 100, 1000, 1e6, 1e9, 1e300, -1e9};
        for (Place place : Mutation.places(calculation.example())) {
            for (double value : extremes) {
                assertTakenOrRefused(calculation, place, value);
            }
        }
    }

    private static void assertTakenOrRefused(Calculation<?> calculation, Place place, double value) throws Throwable {
        try {
            assertOwed(calculation, Mutation.with(calculation.example(), place, value));
        } catch (Invalid refused) {
            assertFalse(refused.problems().isEmpty());
        } catch (AssertionError | RuntimeException e) {
            throw new AssertionError(calculation.id() + "." + place.path() + " = " + value + ": " + e.getMessage(), e);
        }
    }

    @ParameterizedTest
    @MethodSource("calculations")
    void everyNumber_isReachedByTheWalk(Calculation<?> calculation) throws Throwable {
        List<String> paths =
                Mutation.places(calculation.example()).stream().map(Place::path).toList();
        for (RecordComponent component : calculation.inputType().getRecordComponents()) {
            if (component.getType() == double.class) {
                assertTrue(paths.contains(component.getName()), component.getName());
            }
        }
    }

    /** Whole numbers below zero, null where something is needed: a refusal, never another exception. */
    @ParameterizedTest
    @MethodSource("calculations")
    void emptyInputs_areRefusedByName(Calculation<?> calculation) throws Throwable {
        Invalid refusal = assertThrows(Invalid.class, () -> Empties.of(calculation.inputType()));
        List<String> fields =
                refusal.problems().stream().map(Invalid.Problem::field).toList();
        for (RecordComponent component : calculation.inputType().getRecordComponents()) {
            if (component.getType().isEnum()
                    || component.getType() == int.class
                    || component.getType() == double.class) {
                assertTrue(fields.contains(component.getName()), component.getName() + " is not named in " + fields);
            }
        }
    }
}
