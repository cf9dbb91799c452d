package org.benchtrail.core.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleFunction;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/** The domain of an input record, checked field by field; all that is wrong is told at once. */
public final class InputCheck {
    /** What is checked of one entry of a list; {@code path} is its name, such as {@code walls[2]}. */
    @FunctionalInterface
    public interface Entry<T> {
        void check(String path, T value);
    }

    /** What a unit is written with besides letters: percent, per mille, degrees, minutes and seconds of arc. */
    private static final String SIGNS = "%\u2030\u00b0\u2032\u2033";

    private final Invalid.Collector problems = new Invalid.Collector();

    /** Low and high included. NaN and the infinities are outside every range. */
    public boolean within(String field, double value, double low, double high, String unit) {
        boolean holds = value >= low && value <= high;
        return holds || rule(false, field, "give a number from " + range(low, high, unit) + not(value));
    }

    /** As {@link #within}, with 0 for none at all: between none and the least there is nothing that means anything. */
    public boolean zeroOr(String field, double value, double low, double high, String unit) {
        boolean holds = value == 0 || (value >= low && value <= high);
        return holds || rule(false, field, "give 0, or a number from " + range(low, high, unit) + not(value));
    }

    /** As {@link #within} for a value that may be left out. */
    public boolean optional(String field, @Nullable Double value, double low, double high, String unit) {
        return value == null || within(field, value, low, high, unit);
    }

    public boolean present(String field, @Nullable Object value) {
        problems.require(value != null, field, "choose one of the values");
        return value != null;
    }

    /** A text that may be empty but must be there and not be longer than {@code longest} characters. */
    public boolean text(String field, @Nullable String value, int longest) {
        boolean holds = value != null && value.length() <= longest;
        problems.require(holds, field, "give a text of at most " + longest + " characters");
        return holds;
    }

    /** A unit as whoever asks names it, or 1 for none: any other number is no unit. */
    public boolean unit(String field, @Nullable String unit, String sentence) {
        if (!text(field, unit, 12) || unit == null) {
            return false;
        }
        boolean named = unit.codePoints().anyMatch(c -> Character.isLetter(c) || SIGNS.indexOf(c) >= 0);
        return rule(named || unit.equals("1"), field, sentence);
    }

    /** A rule between fields; the sentence says what to do. */
    public boolean rule(boolean holds, String field, String sentence) {
        problems.require(holds, field, sentence);
        return holds;
    }

    /** Asks back about what can hardly have been meant, such as a value in another unit; it is judged once that is answered. */
    public void ask(String field, double value, boolean doubtful, DoubleFunction<String> question) {
        if (doubtful && Double.isFinite(value)) {
            problems.require(false, field, question.apply(value));
        }
    }

    /** Checks the size and every entry; answers an unmodifiable copy, empty if the list cannot be used. */
    public <T> List<T> list(String field, @Nullable List<T> values, int least, int most, Entry<T> entry) {
        if (values == null || values.size() < least || values.size() > most) {
            problems.require(false, field, "give " + least + " to " + most + " entries");
            return List.of();
        }
        for (int i = 0; i < values.size(); i++) {
            entry(field + "[" + i + "]", values.get(i), entry);
        }
        return List.copyOf(values.stream().filter(Objects::nonNull).toList());
    }

    private <T> void entry(String path, @Nullable T value, Entry<T> entry) {
        if (value == null) {
            problems.require(false, path, "fill in this entry or take it away");
        } else {
            entry.check(path, value);
        }
    }

    /** Takes over what another check found, under this field's name. */
    public void adopt(String field, Invalid found) {
        for (Invalid.Problem problem : found.problems()) {
            problems.require(false, field, problem.field() + ": " + problem.sentence());
        }
    }

    public boolean isClean() {
        return problems.isEmpty();
    }

    /** @throws Invalid if anything was found */
    public void done() {
        problems.throwIfAny();
    }

    private static String not(double value) {
        return Double.isFinite(value) ? ", not " + Numeral.of(value) : "";
    }

    private static String range(double low, double high, String unit) {
        List<String> parts = new ArrayList<>(List.of(Numeral.of(low), "to", Numeral.of(high)));
        if (!unit.isEmpty() && !unit.equals("1")) {
            parts.add(unit);
        }
        return String.join(" ", parts);
    }
}
