package org.benchtrail.core.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.Records.Place;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Figure;
import org.benchtrail.core.bench.Result.Working;
import org.benchtrail.core.bench.memory.ModuleFit;
import org.benchtrail.core.bench.network.CopperLink;
import org.benchtrail.core.bench.network.Loss;
import org.benchtrail.core.bench.network.PathThroughput;
import org.benchtrail.core.bench.network.PoeBudget;
import org.benchtrail.core.bench.network.Subnet;
import org.benchtrail.core.bench.network.Transfer;
import org.benchtrail.core.bench.storage.Array;
import org.benchtrail.core.bench.storage.BackupTime;
import org.benchtrail.core.bench.storage.DriveFit;
import org.benchtrail.core.bench.storage.DriveHealth;
import org.benchtrail.core.bench.storage.Endurance;
import org.benchtrail.core.bench.voice.Jitter;
import org.benchtrail.core.bench.voice.Voice;
import org.benchtrail.core.bench.wireless.RadioLink;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for every calculation of storage, memory, network, wireless and voice alike. */
class TradesTest {
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
    /** Units of scales on which a negative number means something. */
    private static final Set<String> SIGNED = Set.of("dBm", "dBi");

    private static final List<Double> SPECIAL =
            List.of(Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1e300, 1e300);

    static Stream<Calculation<? extends Record>> all() {
        return Stream.of(
                DriveHealth.CALCULATION,
                DriveFit.CALCULATION,
                Array.CALCULATION,
                BackupTime.CALCULATION,
                Endurance.CALCULATION,
                ModuleFit.CALCULATION,
                Subnet.CALCULATION,
                CopperLink.CALCULATION,
                PoeBudget.CALCULATION,
                PathThroughput.CALCULATION,
                Loss.CALCULATION,
                Transfer.CALCULATION,
                RadioLink.CALCULATION,
                Jitter.CALCULATION,
                Voice.CALCULATION);
    }

    static Stream<Arguments> allSeeded() {
        return all().flatMap(c -> IntStream.rangeClosed(1, 4).mapToObj(seed -> Arguments.of(c.id(), c, seed)));
    }

    private static <I extends Record> Result run(Calculation<I> calculation, Object input) {
        return calculation.calculate(calculation.inputType().cast(input));
    }

    @ParameterizedTest
    @MethodSource("all")
    void describesItself(Calculation<? extends Record> c) {
        assertTrue(c.id().matches("[a-z]+(-[a-z]+)*"), c.id());
        assertTrue(c.version() >= 1);
        assertTrue(c.question().endsWith("?"), c.question());
        assertFalse(c.title().isBlank());
        assertTrue(c.inputType().getPackageName().endsWith(c.trade().name().toLowerCase(Locale.ROOT)));
        assertEquals(15, all().map(Calculation::id).distinct().count());
    }

    @ParameterizedTest
    @MethodSource("all")
    void asksForEveryComponent(Calculation<? extends Record> c) {
        assertAsked(c.inputType());
    }

    private static void assertAsked(Class<?> type) {
        for (RecordComponent component : type.getRecordComponents()) {
            Ask ask = component.getAnnotation(Ask.class);
            assertNotNull(ask, type + "." + component.getName());
            assertFalse(ask.label().isBlank());
            if (component.getType() == List.class) {
                Class<?> entry =
                        (Class<?>) ((ParameterizedType) component.getGenericType()).getActualTypeArguments()[0];
                if (entry.isRecord()) {
                    assertAsked(entry);
                } else {
                    assertEquals(Double.class, entry);
                }
            } else {
                assertAllowed(component.getType());
            }
        }
    }

    private static void assertAllowed(Class<?> type) {
        assertTrue(
                type == double.class
                        || type == int.class
                        || type == boolean.class
                        || type == String.class
                        || type == Double.class
                        || type.isEnum(),
                type.toString());
    }

    @ParameterizedTest
    @MethodSource("all")
    void exampleCalculates(Calculation<? extends Record> c) {
        Result result = run(c, c.example());
        assertWellFormed(c.id() + " example", result);
        assertFalse(result.working().isEmpty());
        assertFalse(result.assumptions().isEmpty());
    }

    @ParameterizedTest
    @MethodSource("all")
    void numberOutsideEveryDomain_isInvalidAndNamed(Calculation<? extends Record> c)
            throws ReflectiveOperationException {
        for (Place place : Records.places(c.example())) {
            if (place.value() instanceof Double) {
                for (double bad : SPECIAL) {
                    assertRefused(c, place, bad);
                }
                if (!signed(place)) {
                    assertRefused(c, place, -1.0);
                }
            } else if (place.value() instanceof Integer) {
                assertRefused(c, place, -1);
                assertRefused(c, place, Integer.MIN_VALUE);
            }
        }
    }

    private static boolean signed(Place place) {
        return SIGNED.contains(place.component().getAnnotation(Ask.class).unit());
    }

    private static void assertRefused(Calculation<? extends Record> c, Place place, Object bad) {
        Invalid refusal =
                assertThrows(Invalid.class, () -> run(c, place.with(bad)), c.id() + " " + place.path() + " = " + bad);
        assertTrue(
                refusal.problems().stream().anyMatch(p -> p.field().startsWith(place.path())),
                c.id() + " " + place.path() + " is not named in " + refusal.getMessage());
        refusal.problems().forEach(p -> assertFalse(p.sentence().isBlank()));
    }

    @ParameterizedTest
    @MethodSource("all")
    void missingPart_isInvalidUnlessOptional(Calculation<? extends Record> c) throws ReflectiveOperationException {
        for (Place place : Records.places(c.example())) {
            Class<?> type = place.component().getType();
            boolean optional = type == Double.class;
            if (!type.isPrimitive() && !optional) {
                assertRefused(c, place, null);
            } else if (optional && !place.path().endsWith("]")) {
                resultOrInvalid(c, place, null);
            }
        }
    }

    private static void resultOrInvalid(Calculation<? extends Record> c, Place place, Object other)
            throws ReflectiveOperationException {
        try {
            assertWellFormed(c.id() + " " + place.path() + " = " + other, run(c, place.with(other)));
        } catch (Invalid expected) {
            assertFalse(expected.problems().isEmpty());
        }
    }

    @ParameterizedTest
    @MethodSource("all")
    void allThatIsWrong_isToldAtOnce(Calculation<? extends Record> c) throws ReflectiveOperationException {
        Object[] values = Records.values(c.example());
        RecordComponent[] components = c.inputType().getRecordComponents();
        List<String> spoiled = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            if (components[i].getType() == double.class) {
                values[i] = Double.NaN;
                spoiled.add(components[i].getName());
            }
        }
        if (!spoiled.isEmpty()) {
            Invalid refusal = assertThrows(Invalid.class, () -> Records.build(c.inputType(), values));
            List<String> named =
                    refusal.problems().stream().map(Invalid.Problem::field).toList();
            assertTrue(named.containsAll(spoiled), c.id() + ": " + named + " misses some of " + spoiled);
        }
    }

    /** Random neighbours of the example: a result that is well formed, or Invalid; nothing else. */
    @ParameterizedTest(name = "{0}, seed {2}")
    @MethodSource("allSeeded")
    void randomInput_givesAWellFormedResultOrInvalid(String id, Calculation<? extends Record> c, int seed)
            throws ReflectiveOperationException {
        Random random = new Random(seed);
        int results = 0;
        for (int i = 0; i < 100; i++) {
            try {
                Object input = c.example();
                for (int changes = 1 + random.nextInt(4); changes > 0; changes--) {
                    List<Place> places = Records.places(input);
                    input = mutated(random, places.get(random.nextInt(places.size())));
                }
                assertWellFormed(id + " seed " + seed + " " + input, run(c, input));
                results++;
            } catch (Invalid expected) {
                assertFalse(expected.problems().isEmpty());
            } catch (RuntimeException e) {
                fail(id + " seed " + seed + " round " + i, e);
            }
        }
        assertTrue(results > 0, id + " seed " + seed + ": no input was accepted");
    }

    private static Object mutated(Random random, Place place) throws ReflectiveOperationException {
        Object value = place.value();
        if (value instanceof Double number) {
            return place.with(random.nextInt(6) == 0 ? 0.0 : number * Math.pow(10, random.nextGaussian() * 2));
        }
        if (value instanceof Integer number) {
            return place.with(random.nextInt(4) == 0 ? random.nextInt() : number + random.nextInt(5) - 2);
        }
        if (value instanceof Boolean flag) {
            return place.with(!flag);
        }
        if (value instanceof Enum<?> choice) {
            Object[] choices = choice.getDeclaringClass().getEnumConstants();
            return place.with(choices[random.nextInt(choices.length)]);
        }
        if (value instanceof String text) {
            return place.with(mutatedText(random, text));
        }
        return value instanceof List<?> list ? place.with(mutatedList(random, list)) : place.with(value);
    }

    private static String mutatedText(Random random, String text) {
        if (text.isEmpty() || random.nextInt(5) == 0) {
            return random.nextBoolean() ? "" : "x9.";
        }
        StringBuilder changed = new StringBuilder(text);
        changed.setCharAt(random.nextInt(text.length()), "0123456789./ x\n".charAt(random.nextInt(15)));
        return changed.toString();
    }

    private static List<Object> mutatedList(Random random, List<?> list) {
        List<Object> changed = new ArrayList<>(list);
        if (!changed.isEmpty() && random.nextBoolean()) {
            changed.remove(random.nextInt(changed.size()));
        } else if (!changed.isEmpty()) {
            changed.add(changed.get(random.nextInt(changed.size())));
        }
        return changed;
    }

    private static void assertWellFormed(String of, Result result) {
        assertFalse(result.judgement().words().isBlank(), of);
        assertTrue(
                result.judgement().reason().matches("(?s).*[0-9].*"),
                of + ": no number in " + result.judgement().reason());
        assertTrue(
                result.judgement().reason().endsWith("."),
                of + ": " + result.judgement().reason());
        result.figures().forEach(figure -> assertFigure(of, figure, result.working()));
        result.working().forEach(line -> assertFollows(of, line));
        result.rules().forEach(rule -> assertFalse(rule.source().isBlank(), of + ": " + rule));
        assertTrue(CAUTIONS.containsAll(result.cautions()), of + ": " + result.cautions());
        assertEquals(new HashSet<>(result.cautions()).size(), result.cautions().size(), of);
        result.curves().forEach(curve -> assertCurve(of, curve));
        String said = result.toString().toLowerCase(Locale.ROOT);
        assertFalse(said.contains("safe") || said.contains("healthy"), of + ": " + said);
    }

    private static void assertFigure(String of, Figure figure, List<Working> working) {
        assertTrue(Double.isFinite(figure.value()), of + ": " + figure);
        assertFalse(figure.unit().isBlank(), of + ": " + figure);
        String shown = figure.text() + (figure.unit().equals("1") ? "" : " " + figure.unit());
        assertTrue(
                working.stream()
                        .anyMatch(w -> w.what().equals(figure.name())
                                && w.withNumbers().endsWith(" = " + shown)),
                of + ": " + figure + " is not in the working");
    }

    /** A line of the form "sum = value unit" must come out on a pocket calculator, rounding of the inputs allowed for. */
    private static void assertFollows(String of, Working line) {
        int equals = line.withNumbers().lastIndexOf(" = ");
        if (equals < 0) {
            return;
        }
        try {
            double worked = PocketCalculator.evaluate(line.withNumbers().substring(0, equals));
            double said = PocketCalculator.evaluate(
                    line.withNumbers().substring(equals + 3).split(" ")[0]);
            double size =
                    Math.max(Math.abs(said), largestTerm(line.withNumbers().substring(0, equals)) * 1e-6);
            assertTrue(Math.abs(worked - said) <= 0.06 * size + 1e-12, of + ": " + line + " gives " + worked);
        } catch (PocketCalculator.NotASum words) {
            assertInstanceOf(String.class, line.what());
        }
    }

    private static double largestTerm(String text) {
        return Stream.of(text.split("[^0-9.e]+"))
                .filter(t -> t.matches("[0-9]+(\\.[0-9]+)?"))
                .mapToDouble(Double::parseDouble)
                .max()
                .orElse(0);
    }

    private static void assertCurve(String of, Curve curve) {
        assertFalse(curve.xUnit().isBlank() || curve.yUnit().isBlank(), of + ": " + curve.title());
        for (int i = 0; i < curve.points().size(); i++) {
            assertTrue(Double.isFinite(curve.points().get(i).y()), of + ": " + curve.title());
            assertTrue(
                    i == 0
                            || curve.points().get(i).x()
                                    > curve.points().get(i - 1).x(),
                    of + ": " + curve.title() + " goes back");
        }
    }

    @ParameterizedTest
    @MethodSource("all")
    void workingOfTheExample_comesOutOnAPocketCalculator(Calculation<? extends Record> c)
            throws PocketCalculator.NotASum {
        int sums = 0;
        for (Working line : run(c, c.example()).working()) {
            int equals = line.withNumbers().lastIndexOf(" = ");
            String left = equals < 0 ? "words" : line.withNumbers().substring(0, equals);
            double worked;
            try {
                worked = PocketCalculator.evaluate(left);
            } catch (PocketCalculator.NotASum words) {
                continue;
            }
            double said = PocketCalculator.evaluate(
                    line.withNumbers().substring(equals + 3).split(" ")[0]);
            assertEquals(worked, said, Math.abs(worked) * 0.03 + 1e-9, c.id() + ": " + line);
            sums++;
        }
        assertTrue(sums >= 1, c.id() + " shows no sum");
    }
}
