package org.benchtrail.core.bench;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.Records.Place;
import org.benchtrail.core.bench.Result.Level;

/**
 * Inputs of one calculation that nobody would think of, made from its example: every place at the edges of what it takes and
 * of what changes the verdict, numbers typed in another unit, lists cut short and doubled, texts with a sign put wrong.
 */
final class Inputs {
    /** Digits up to which numbers are typed, and up to which a working shows them. */
    static final int TYPED = 9;

    private static final double[] LADDER = {
        0, 1e-15, 1e-9, 1e-6, 1e-4, 0.01, 0.1, 0.5, 1, 2, 5, 10, 20, 50, 80, 100, 120, 200, 500, 1000, 5000, 1e4, 1e5,
        1e6, 1e8, 1e10, 1e13, 1e300
    };
    /** From one unit to another of the same kind: milli, kilo, minutes, hours, bits, percent, horsepower of a typing slip. */
    private static final double[] UNITS = {1e-6, 1e-3, 1e-2, 1 / 60.0, 1 / 8.0, 8, 10, 60, 100, 1000, 3600, 86_400, 1e6
    };

    private static final List<String> TEXTS = List.of(
            "",
            " ",
            "0",
            "-1",
            "q",
            "192.168.10.0",
            "10.0.0.255/24",
            "0.0.0.0/0",
            "255.255.255.255/32",
            "127.0.0.1/8",
            "192.0.2.0/31",
            "192.0.2.1/31",
            "fe80::1/64",
            "2001:db8::1/127",
            "::/128",
            "255.255.255.254",
            "31",
            "32",
            "y".repeat(81),
            "V",
            "mV",
            "°C");

    private final Calculation<?> calculation;
    private final Map<String, List<Object>> known = new HashMap<>();

    Inputs(Calculation<?> calculation) {
        this.calculation = calculation;
    }

    /** The result; empty if the input is refused. Whatever else is thrown is a fault. */
    static Optional<Result> run(Calculation<?> calculation, Object input) {
        try {
            return Optional.of(judge(calculation, input));
        } catch (Invalid refused) {
            return Optional.empty();
        }
    }

    private static <I extends Record> Result judge(Calculation<I> calculation, Object input) {
        return calculation.calculate(calculation.inputType().cast(input));
    }

    /** The input with another value there; empty if the record refuses it. */
    static Optional<Object> with(Place place, Object value) {
        try {
            return Optional.of(place.with(value));
        } catch (Invalid refused) {
            return Optional.empty();
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    static List<Place> places(Object input) {
        try {
            return Records.places(input);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    static boolean isNumber(Place place) {
        Class<?> type = place.component().getType();
        return type == double.class || type == Double.class || place.value() instanceof Double;
    }

    static boolean isWhole(Place place) {
        return place.component().getType() == int.class;
    }

    /** What may be put at a place: edges of the domain and of the verdicts, the same in other units, and the far ends. */
    List<Object> values(Place place) {
        if (isNumber(place)) {
            return known.computeIfAbsent(place.path(), path -> numbers(place));
        }
        if (isWhole(place)) {
            return List.of(
                    Integer.MIN_VALUE,
                    -1,
                    0,
                    1,
                    2,
                    3,
                    4,
                    5,
                    8,
                    9,
                    16,
                    31,
                    32,
                    33,
                    64,
                    100,
                    255,
                    256,
                    1000,
                    100_000,
                    10_000_000,
                    Integer.MAX_VALUE);
        }
        if (place.value() instanceof Boolean) {
            return List.of(true, false);
        }
        if (place.value() instanceof Enum<?> choice) {
            return List.of((Object[]) choice.getDeclaringClass().getEnumConstants());
        }
        if (place.value() instanceof List<?> list) {
            return lists(list);
        }
        return place.value() instanceof String text ? texts(text) : List.of();
    }

    private List<Object> numbers(Place place) {
        Set<Object> values = new LinkedHashSet<>();
        double now = place.value() == null ? 1 : (Double) place.value();
        for (double step : LADDER) {
            values.add(step);
            values.add(-step);
        }
        for (double unit : UNITS) {
            values.add(typed(now * unit));
        }
        values.add(typed(now + 273.15));
        values.add(typed(now * 1.8 + 32));
        values.add(now);
        values.add(Double.NaN);
        values.add(Double.POSITIVE_INFINITY);
        values.addAll(edges(place));
        if (place.component().getType() == Double.class) {
            List<Object> all = new ArrayList<>(values);
            all.add(null);
            return all;
        }
        return List.copyOf(values);
    }

    /** Where the answer changes from one step of the ladder to the next: the two numbers nearest to it, and their neighbours. */
    private Set<Object> edges(Place place) {
        Set<Object> edges = new LinkedHashSet<>();
        List<Double> steps = new ArrayList<>();
        for (double step : LADDER) {
            steps.add(step);
            steps.add(-step);
        }
        Collections.sort(steps);
        String before = said(place, steps.get(0));
        for (int i = 1; i < steps.size(); i++) {
            String here = said(place, steps.get(i));
            if (!here.equals(before)) {
                double[] pair = between(place, steps.get(i - 1), steps.get(i), before);
                edges.add(pair[0]);
                edges.add(pair[1]);
            }
            before = here;
        }
        return edges;
    }

    /** The neighbours, as typed, between which the answer changes; none if it is the same at both ends. */
    double[] between(Place place, double from, double to) {
        String low = said(place, from);
        return low.equals(said(place, to)) ? new double[0] : between(place, from, to, low);
    }

    private double[] between(Place place, double from, double to, String low) {
        double a = from;
        double b = to;
        while (true) {
            double middle = typed(middle(a, b));
            if (middle <= a || middle >= b) {
                return new double[] {a, b};
            }
            if (said(place, middle).equals(low)) {
                a = middle;
            } else {
                b = middle;
            }
        }
    }

    /** Halves the way; where one end is many times the other, the way between their sizes. */
    private static double middle(double a, double b) {
        double small = Math.max(Math.min(Math.abs(a), Math.abs(b)), Double.MIN_NORMAL);
        double large = Math.max(Math.abs(a), Math.abs(b));
        return a * b < 0 || large <= 2 * small
                ? a + (b - a) / 2
                : Math.signum(a + b) * Math.sqrt(small) * Math.sqrt(large);
    }

    private String said(Place place, double value) {
        return with(place, value)
                .flatMap(input -> run(calculation, input))
                .map(r -> r.judgement().level() + r.judgement().words())
                .orElse("refused");
    }

    Optional<Level> level(Place place, double value) {
        return with(place, value)
                .flatMap(input -> run(calculation, input))
                .map(r -> r.judgement().level());
    }

    /** With as many digits as somebody may type. */
    static double typed(double value) {
        return Double.isFinite(value) ? Double.parseDouble(Numeral.of(value, TYPED)) : value;
    }

    private static List<Object> lists(List<?> list) {
        List<Object> lists = new ArrayList<>();
        lists.add(List.of());
        lists.add(list);
        for (int most : new int[] {1, 2, 3}) {
            lists.add(list.subList(0, Math.min(most, list.size())));
        }
        List<Object> reversed = new ArrayList<>(list);
        Collections.reverse(reversed);
        lists.add(reversed);
        List<Object> twice = new ArrayList<>(list);
        twice.addAll(list);
        lists.add(twice);
        if (!list.isEmpty()) {
            lists.add(Collections.nCopies(6, list.get(0)));
        }
        return lists;
    }

    private static List<Object> texts(String text) {
        List<Object> texts = new ArrayList<>(TEXTS);
        texts.add(text);
        for (int at = 0; at < Math.min(60, text.length()); at++) {
            texts.add(text.substring(0, at) + "0" + text.substring(at + 1));
            texts.add(text.substring(0, at) + "9" + text.substring(at));
            texts.add(text.substring(0, at) + text.substring(at + 1));
        }
        return texts;
    }

    /** What a walk begins with, some of its places exchanged, as the seed has it. */
    Object random(SplittableRandom random) {
        List<Object> beginnings = Beginnings.of(calculation);
        Object input = beginnings.get(beginnings.size() == 1 ? 0 : random.nextInt(beginnings.size()));
        int changes = 1 + random.nextInt(4);
        for (int i = 0; i < changes; i++) {
            List<Place> places = places(input);
            Place place = places.get(random.nextInt(places.size()));
            input = with(place, value(place, random)).orElse(input);
        }
        return input;
    }

    private Object value(Place place, SplittableRandom random) {
        if (isNumber(place) && place.value() != null && random.nextInt(3) > 0) {
            return typed((Double) place.value() * Math.exp(2 * random.nextDouble() - 1));
        }
        List<Object> values = quick(place);
        return values.isEmpty() ? place.value() : values.get(random.nextInt(values.size()));
    }

    /** As {@link #values}, without the search for edges. */
    private List<Object> quick(Place place) {
        if (!isNumber(place)) {
            return values(place);
        }
        List<Object> values = new ArrayList<>();
        double now = place.value() == null ? 1 : (Double) place.value();
        for (double unit : UNITS) {
            values.add(typed(now * unit));
        }
        for (double step : LADDER) {
            values.add(step);
        }
        values.add(-now);
        if (place.component().getType() == Double.class) {
            values.add(null);
        }
        return values;
    }
}
