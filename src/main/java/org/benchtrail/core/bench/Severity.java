package org.benchtrail.core.bench;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.Result.Rule;

/** Which of several rules decides the verdict, and what it says. */
public final class Severity {
    private static final List<Level> WORST_FIRST =
            List.of(Level.BAD, Level.UNDECIDED, Level.CAREFUL, Level.GOOD, Level.NONE);

    private Severity() {}

    /**
     * The first rule of the worst level: bad, then undecided, then careful, then good.
     *
     * @throws IllegalArgumentException if there is no rule
     */
    public static Rule deciding(List<Rule> rules) {
        return WORST_FIRST.stream()
                .flatMap(level -> rules.stream().filter(rule -> rule.outcome() == level))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("a verdict needs at least one rule"));
    }

    /**
     * The verdict of the deciding rule, in the words that belong to it; where there was nothing to hold a rule against, for
     * information only.
     *
     * @param otherwise words where there is no rule
     * @param reason sentence where there is no rule
     */
    public static Result judged(ResultDraft draft, Function<Rule, String> words, String otherwise, String reason) {
        if (draft.rules().isEmpty()) {
            return draft.judged(Level.NONE, otherwise, reason);
        }
        Rule deciding = deciding(draft.rules());
        return draft.judged(deciding.outcome(), words.apply(deciding), deciding.sentence());
    }

    /** What every rule of the worst level says: all of them where all are met, else the ones that are not. */
    public static String reason(List<Rule> rules) {
        Level worst = deciding(rules).outcome();
        return rules.stream()
                .filter(rule -> rule.outcome() == worst)
                .map(Rule::sentence)
                .collect(Collectors.joining(" "));
    }
}
