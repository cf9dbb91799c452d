package org.benchtrail.core.bench;

import java.util.List;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.Result.Rule;

/** The verdict over the rules of a fit: one rule that is not met is enough to refuse, one warning enough to warn. */
public final class FitVerdict {
    private FitVerdict() {}

    /** Closes the draft with fits, fits with a warning, or does not fit; the reason names every rule. */
    public static Result judge(ResultDraft draft) {
        List<Rule> bad = of(draft, Level.BAD);
        List<Rule> careful = of(draft, Level.CAREFUL);
        List<Rule> good = of(draft, Level.GOOD);
        String reason = good.size() + " of " + draft.rules().size() + " rules are met without reserve. "
                + part("Not met", bad) + part("Met with a warning", careful) + part("Met", good);
        if (!bad.isEmpty()) {
            return draft.judged(Level.BAD, "does not fit", reason.strip());
        }
        return careful.isEmpty()
                ? draft.judged(Level.GOOD, "fits", reason.strip())
                : draft.judged(Level.CAREFUL, "fits with a warning", reason.strip());
    }

    private static List<Rule> of(ResultDraft draft, Level level) {
        return draft.rules().stream().filter(rule -> rule.outcome() == level).toList();
    }

    private static String part(String heading, List<Rule> rules) {
        List<String> names = rules.stream().map(Rule::name).toList();
        return names.isEmpty() ? "" : heading + ": " + String.join(", ", names) + ". ";
    }
}
