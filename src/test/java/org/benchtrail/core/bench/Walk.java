package org.benchtrail.core.bench;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.bench.Records.Place;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Figure;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.Result.Rule;

/** One calculation walked over many inputs, from one seed: the same number of inputs finds the same faults, on any number of cores. */
final class Walk {
    /** A step is a search of some thirty inputs. */
    private static final int STEP_EVERY = 16;

    private static final int MOST_TOLD = 20;
    private static final long SEED = 20_260_917;

    private static final String NUMBER = "-?[0-9]+(?:\\.[0-9]+)?(?:e-?[0-9]+)?";
    private static final Pattern NUMBERS = Pattern.compile(NUMBER);
    /** What no text says, by a trace of it that is quickly looked for. */
    private static final Map<String, Pattern> NEVER = Map.of(
            "NaN", Pattern.compile("NaN"),
            "Infinity", Pattern.compile("Infinity"),
            "null", Pattern.compile("null"),
            "-0", Pattern.compile("(?<![0-9.e(])-0(?![.0-9])"),
            "e-", Pattern.compile("[0-9]e-[0-9]+ %"),
            " x ", Pattern.compile("(?<!mean) x [\\w(λ√]"),
            "×", Pattern.compile("^(?=.*×).*?\\bx\\b"),
            "afe", Pattern.compile("\\b[Ss]afe(?:ly|ty)?\\b"));

    private static final Pattern NO_TIME_TO_SAY =
            Pattern.compile("[0-9]e-[0-9]+ (?:d|days|h|min|s)\\b|[Aa]bout 0\\.0[0-9]* (?:d|h|min)\\b");
    private static final Pattern RANGE = Pattern.compile("(?=[bfl(])(?:between|from|\\(|limits of) ?(" + NUMBER
            + ") ?(?:[^0-9 ]{1,5})? (?:to|and) (" + NUMBER + ")");

    private static final Pattern TITLE = Pattern.compile("[^()\\[\\]]*[ ,][^()\\[\\]]*");
    private static final Pattern RAW_NAME = Pattern.compile("[A-Z0-9]+(?:_[A-Z0-9]+)+|[A-Z]{5,}");

    /** Names in the world that are written like that. */
    private static final Set<String> PROPER = Set.of("USENIX");

    private final Calculation<?> c;
    private final Inputs inputsOf;
    private final Set<String> said = new HashSet<>();
    private final Set<String> cited = new HashSet<>();
    private final Map<String, Integer> told = new LinkedHashMap<>();
    private final List<String> faults = new ArrayList<>();
    private int inputs;
    private int leftOut;

    Walk(Calculation<?> calculation) {
        this.c = calculation;
        this.inputsOf = new Inputs(calculation);
    }

    private void fault(String what, Object input) {
        String shape = what.replaceAll(NUMBER, "#");
        if (told.merge(shape, 1, Integer::sum) == 1 && faults.size() < MOST_TOLD) {
            faults.add(c.id() + ": " + what + "\n      " + shortened(input));
        }
    }

    private static String shortened(Object input) {
        String text = String.valueOf(input);
        return text.length() > 600 ? text.substring(0, 600) + "..." : text;
    }

    /**
     * So many inputs: every place at its edges and each pair of far ends, as many as two thirds of them hold, the rest at random.
     *
     * @param whole whether it is a fault to leave out an edge or a pair
     * @return the faults found, in words; empty if there is none
     */
    List<String> anyInput(int share, boolean whole) {
        Beginnings.of(c).forEach(this::look);
        edges(share / 3);
        pairs(2 * share / 3);
        if (whole && leftOut > 0) {
            faults.add(c.id() + ": " + leftOut + " edges and pairs of far ends were left out");
        }
        SplittableRandom random = new SplittableRandom(SEED);
        while (inputs < share) {
            Object input = inputsOf.random(random);
            look(input);
            if (inputs % STEP_EVERY == 0) {
                step(input, random);
            }
        }
        return faults;
    }

    /** One input grown from its smallest to its greatest, the others as in the example and then at random. */
    List<String> oneWay(Drive drive, int rounds) {
        SplittableRandom random = new SplittableRandom(SEED);
        boolean changed = false;
        for (int round = 0; round < rounds; round++) {
            Object input = round == 0 ? c.example() : inputsOf.random(random);
            changed |= grow(drive, input, round == 0 ? 1 : 3, round % 3);
        }
        if (!changed) {
            faults.add(drive.path() + " never changed the verdict");
        }
        return faults;
    }

    /** Grows the input from its smallest to its greatest, finely; with a stride, other inputs take what one left out. */
    private boolean grow(Drive drive, Object input, int stride, int first) {
        Optional<Place> place = place(input, drive.path());
        if (place.isEmpty()) {
            return false;
        }
        List<Level> seen = new ArrayList<>();
        double near =
                place.get().value() == null ? 10 : Math.abs((Double) place.get().value());
        for (int i = -60 + first; i <= 300; i += stride) {
            double value = i < 0 ? near * i / 30 : near * (i <= 200 ? i / 50.0 : Math.exp((i - 200) / 10.0) * 4);
            inputsOf.level(place.get(), Inputs.typed(value)).ifPresent(level -> {
                if (seen.isEmpty() || seen.get(seen.size() - 1) != level) {
                    seen.add(level);
                }
            });
        }
        if (!drive.leads(seen)) {
            fault(drive.path() + " growing gives " + seen + ", not in the order of " + drive.order(), input);
        }
        return seen.size() > 1;
    }

    private static Optional<Place> place(Object input, String path) {
        return Inputs.places(input).stream().filter(p -> p.path().equals(path)).findFirst();
    }

    /** Every place at every edge, the rest as in the example. */
    private void edges(int most) {
        for (Place place : Inputs.places(c.example())) {
            if (isRoom(most)) {
                inputsOf.values(place).forEach(value -> look(place, value, most));
            }
        }
    }

    /** Each pair of places at both of their far ends. */
    private void pairs(int most) {
        List<Place> places = Inputs.places(c.example());
        for (Place one : places) {
            if (isRoom(most)) {
                for (Object first : ends(one)) {
                    Inputs.with(one, first).ifPresent(input -> pairs(one, input, most));
                }
            }
        }
    }

    private void pairs(Place one, Object input, int most) {
        for (Place other : Inputs.places(input)) {
            if (other.path().compareTo(one.path()) > 0 && isRoom(most)) {
                ends(other).forEach(second -> look(other, second, most));
            }
        }
    }

    private final Map<String, List<Object>> endsOf = new LinkedHashMap<>();

    /** The least and the greatest value that is taken; of what is no number, the first and the last. */
    private List<Object> ends(Place place) {
        return endsOf.computeIfAbsent(place.path(), path -> {
            List<Object> taken = inputsOf.values(place).stream()
                    .filter(v -> Inputs.with(place, v).isPresent())
                    .toList();
            List<Object> sorted = Inputs.isNumber(place)
                    ? taken.stream().filter(Double.class::isInstance).sorted().toList()
                    : taken;
            return sorted.isEmpty() ? List.of() : List.of(sorted.get(0), sorted.get(sorted.size() - 1));
        });
    }

    /** Whether there is room for more edges and pairs; what there is no room for is counted, and not searched for. */
    private boolean isRoom(int most) {
        leftOut += inputs < most ? 0 : 1;
        return inputs < most;
    }

    private void look(Place place, Object value, int most) {
        if (!isRoom(most)) {
            return;
        }
        try {
            Inputs.with(place, value).ifPresentOrElse(input -> look(input), () -> inputs++);
        } catch (RuntimeException e) {
            fault(place.path() + " = " + value + " throws " + e, "");
        }
    }

    private Optional<Result> look(Object input) {
        inputs++;
        try {
            Optional<Result> result = Inputs.run(c, input);
            result.ifPresent(r -> check(input, r));
            return result;
        } catch (RuntimeException e) {
            fault("throws " + e + " at " + e.getStackTrace()[0], input);
            return Optional.empty();
        }
    }

    /** Moves one number across a change of the verdict: what is shown on both sides must tell them apart. */
    private void step(Object input, SplittableRandom random) {
        List<Place> numbers = Inputs.places(input).stream()
                .filter(p -> Inputs.isNumber(p) && p.value() != null)
                .toList();
        if (numbers.isEmpty()) {
            return;
        }
        Place place = numbers.get(random.nextInt(numbers.size()));
        double now = (Double) place.value();
        double far = Inputs.typed(now * Math.exp(6 * random.nextDouble() - 3));
        try {
            double[] pair = inputsOf.between(place, Math.min(now, far), Math.max(now, far));
            if (pair.length == 2) {
                Optional<Result> below = Inputs.with(place, pair[0]).flatMap(i -> look(i));
                Optional<Result> above = Inputs.with(place, pair[1]).flatMap(i -> look(i));
                if (below.isPresent() && above.isPresent()) {
                    tellApart(input, place, below.get(), above.get());
                }
            }
        } catch (RuntimeException e) {
            fault("a step of " + place.path() + " throws " + e, input);
        }
    }

    private void tellApart(Object input, Place place, Result below, Result above) {
        if (below.judgement().level() != above.judgement().level()
                && numbers(below.judgement().reason())
                        .equals(numbers(above.judgement().reason()))
                && rules(below).equals(rules(above))) {
            fault(
                    "the same numbers for another verdict, over " + place.path() + ": " + below.judgement() + " and "
                            + above.judgement(),
                    input);
        }
        Map<String, Rule> others = above.rules().stream().collect(Collectors.toMap(Rule::name, r -> r, (a, b) -> a));
        for (Rule rule : below.rules()) {
            Rule other = others.get(rule.name());
            if (other != null
                    && other.outcome() != rule.outcome()
                    && NUMBERS.matcher(rule.sentence()).find()
                    && numbers(rule.sentence()).equals(numbers(other.sentence()))) {
                fault(
                        "the same numbers for another outcome, over " + place.path() + ": " + rule.sentence() + " and "
                                + other.sentence(),
                        input);
            }
        }
    }

    private static List<String> numbers(String text) {
        List<String> numbers = new ArrayList<>();
        Matcher matcher = NUMBERS.matcher(text);
        while (matcher.find()) {
            numbers.add(matcher.group());
        }
        return numbers;
    }

    private static List<String> rules(Result result) {
        return result.rules().stream().map(Rule::sentence).toList();
    }

    private void check(Object input, Result result) {
        figures(input, result);
        curves(input, result);
        pieces(result).filter(said::add).forEach(piece -> wording(input, piece));
        String reason = result.judgement().reason();
        if (NO_TIME_TO_SAY.matcher(reason).find()) {
            fault("says a time as nobody would, which Numeral.about writes: " + reason, input);
        }
        severity(input, result);
        for (Rule rule : result.rules()) {
            if (cited.add(rule.source()) && !TITLE.matcher(rule.source()).matches()) {
                fault("cites '" + rule.source() + "', which is no title", input);
            }
        }
        for (Saying saying : Saying.of(c.id())) {
            if (saying.isBroken(result)) {
                fault("'" + saying.words() + "' is not what it says: " + reason, input);
            }
        }
        for (Truth truth : Truth.of(c.id())) {
            if (!truth.holds().test(input, result)) {
                fault("it is not so that " + truth.says() + ": " + result.judgement(), input);
            }
        }
    }

    /** All that is read of a result, piece by piece: most of it is the same for most inputs and looked at once. */
    private static Stream<String> pieces(Result result) {
        return Stream.of(
                        Stream.of(result.judgement().words(), result.judgement().reason()),
                        result.figures().stream().map(Figure::name),
                        result.rules().stream().flatMap(r -> Stream.of(r.name(), r.sentence())),
                        result.assumptions().stream(),
                        result.working().stream().flatMap(w -> Stream.of(w.what(), w.formula(), w.withNumbers())),
                        result.curves().stream().flatMap(v -> Stream.of(v.title(), v.xLabel(), v.yLabel())))
                .flatMap(piece -> piece);
    }

    private void wording(Object input, String piece) {
        NEVER.forEach((trace, pattern) -> {
            Matcher never = pattern.matcher(piece);
            if (piece.contains(trace) && never.find()) {
                fault("says '" + around(piece, never.start()) + "'", input);
            }
        });
        rawName(piece).ifPresent(name -> fault("says the raw name " + name + " in '" + piece + "'", input));
        if (piece.contains(" to ") || piece.contains(" and ")) {
            ranges(input, piece);
        }
    }

    /** The first word that is written as constants of the program are: with an underscore, or five capitals and more. */
    static Optional<String> rawName(String text) {
        int from = 0;
        for (int at = 0; at <= text.length(); at++) {
            if (at == text.length() || !isOfAName(text.charAt(at))) {
                if (at - from >= 4 && isRaw(text.substring(from, at))) {
                    return Optional.of(text.substring(from, at));
                }
                from = at + 1;
            }
        }
        return Optional.empty();
    }

    private static boolean isOfAName(char c) {
        return c == '_' || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    }

    private static boolean isRaw(String word) {
        return RAW_NAME.matcher(word).matches() && !PROPER.contains(word);
    }

    private void figures(Object input, Result result) {
        for (Figure figure : result.figures()) {
            if (!Double.isFinite(figure.value()) || Double.compare(figure.value(), -0.0) == 0) {
                fault(figure.name() + " is " + figure.value(), input);
            } else if (figure.unit().equals("%") && figure.text().contains("e-")) {
                fault(figure.name() + " is shown as " + figure.text() + " %", input);
            } else if (isCertainty(figure) && figure.value() > 0 && figure.value() < (isShare(figure) ? 100 : 1)) {
                fault(figure.name() + " of " + figure.value() + " is rounded to " + figure.text(), input);
            }
        }
    }

    private static boolean isShare(Figure figure) {
        return figure.unit().equals("%");
    }

    /** Whether a share or a chance is shown as none or as all. */
    private static boolean isCertainty(Figure figure) {
        boolean all = figure.text().equals(isShare(figure) ? "100" : "1")
                && (isShare(figure) || figure.name().startsWith("Chance"));
        return all || figure.text().equals("0");
    }

    private void curves(Object input, Result result) {
        for (Curve curve : result.curves()) {
            for (int i = 0; i < curve.points().size(); i++) {
                double x = curve.points().get(i).x();
                if (!Double.isFinite(x)
                        || !Double.isFinite(curve.points().get(i).y())) {
                    fault("the curve " + curve.title() + " has no number at " + x, input);
                } else if (i > 0 && !(x > curve.points().get(i - 1).x())) {
                    fault("the curve " + curve.title() + " goes back", input);
                }
            }
        }
    }

    private static String around(String text, int at) {
        return text.substring(Math.max(0, at - 60), Math.min(text.length(), at + 40))
                .replace('\n', '|');
    }

    private void ranges(Object input, String all) {
        Matcher range = RANGE.matcher(all);
        while (range.find()) {
            if (Double.parseDouble(range.group(1)) > Double.parseDouble(range.group(2))) {
                fault("the bounds are crossed: '" + around(all, range.start()) + "'", input);
            }
        }
    }

    private static final Set<Level> NOT_GOOD = Set.of(Level.BAD, Level.UNDECIDED, Level.CAREFUL);

    /** A verdict is never better than the worst of the rules that it stands on. */
    private void severity(Object input, Result result) {
        Level level = result.judgement().level();
        Set<Level> outcomes = result.rules().stream().map(Rule::outcome).collect(Collectors.toSet());
        if (outcomes.contains(Level.BAD) && level != Level.BAD) {
            fault("is " + level + " with a rule that is not met", input);
        } else if (level == Level.GOOD && outcomes.stream().anyMatch(NOT_GOOD::contains)) {
            fault("is good with a rule that is " + outcomes, input);
        }
    }
}
