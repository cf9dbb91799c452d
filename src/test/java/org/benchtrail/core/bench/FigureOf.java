package org.benchtrail.core.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.Result.Figure;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.Result.Rule;

/** Reads single parts out of a result or a refusal, and fails with what there is when the part is missing. */
public final class FigureOf {
    private FigureOf() {}

    public static double value(Result result, String name) {
        return result.figures().stream()
                .filter(f -> f.name().equals(name))
                .mapToDouble(Figure::value)
                .findFirst()
                .orElseThrow(() -> new AssertionError("no figure " + name + " in " + result.figures()));
    }

    public static boolean has(Result result, String name) {
        return result.figures().stream().anyMatch(f -> f.name().equals(name));
    }

    public static Rule rule(Result result, String name) {
        return result.rules().stream()
                .filter(r -> r.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no rule " + name + " in " + result.rules()));
    }

    public static void names(Invalid refusal, String field) {
        assertTrue(
                refusal.problems().stream().anyMatch(p -> p.field().equals(field)),
                () -> field + " is not named in " + refusal.getMessage());
    }

    /** The verdict in level and words; a failure shows its reason. */
    public static void assertVerdict(Level level, String words, Result result) {
        assertEquals(level, result.judgement().level(), result.judgement().reason());
        assertEquals(words, result.judgement().words(), result.judgement().reason());
    }
}
