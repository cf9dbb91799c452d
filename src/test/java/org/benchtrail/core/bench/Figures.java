package org.benchtrail.core.bench;

import org.benchtrail.core.bench.Result.Rule;

/** Looks things up in a result by their name. */
public final class Figures {
    private Figures() {}

    public static double value(Result result, String name) {
        return result.figures().stream()
                .filter(figure -> figure.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + " is not in " + result.figures()))
                .value();
    }

    public static boolean has(Result result, String name) {
        return result.figures().stream().anyMatch(figure -> figure.name().equals(name));
    }

    public static Rule rule(Result result, String name) {
        return result.rules().stream()
                .filter(rule -> rule.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + " is not in " + result.rules()));
    }
}
