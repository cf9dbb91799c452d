package org.benchtrail.core.diagnosis;

import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/** Which findings were asked, and the latest valid answer of each. Decides which questions make sense now. */
public final class Answers {
    private final Model model;
    private final Set<String> asked;
    private final Map<String, String> latest;

    private Answers(Model model, Set<String> asked, Map<String, String> latest) {
        this.model = model;
        this.asked = asked;
        this.latest = latest;
    }

    public static Answers of(Model model, Evidence evidence) {
        Set<String> asked = new HashSet<>();
        Map<String, String> latest = new HashMap<>();
        evidence.reports().stream()
                .filter(r -> !r.superseded() && !r.presumed())
                .sorted(Comparator.comparing(Report::at).thenComparing(Report::id))
                .forEach(r -> {
                    asked.add(r.finding());
                    if (r.isAnswer()) {
                        latest.put(r.finding(), r.value());
                    }
                });
        return new Answers(model, asked, latest);
    }

    Answers with(int finding, String value) {
        String id = model.finding(finding).id();
        Set<String> more = new HashSet<>(asked);
        more.add(id);
        Map<String, String> known = new HashMap<>(latest);
        known.put(id, value);
        return new Answers(model, more, known);
    }

    /** Whether the latest valid answer is that value. */
    boolean is(int finding, int value) {
        Finding f = model.finding(finding);
        return f.values().get(value).equals(latest.get(f.id()));
    }

    /**
     * Whether the question makes sense now.
     *
     * @throws org.benchtrail.core.Invalid if the category has no such finding
     */
    public boolean offers(String finding) {
        return offers(model.findingIndex(finding));
    }

    /** Whether there is a valid answer; unknown is none. */
    public boolean isAnswered(String finding) {
        return latest.containsKey(finding);
    }

    /** Not asked yet, not even in vain, everything it waits for is known to hold, and nothing is known that keeps it back. */
    boolean offers(int finding) {
        Finding f = model.finding(finding);
        if (asked.contains(f.id())) {
            return false;
        }
        for (Condition c : f.applies()) {
            if (!isKnown(c) && !isImplied(c)) {
                return false;
            }
        }
        return !isKeptBack(f);
    }

    private boolean isKeptBack(Finding f) {
        for (Condition c : f.unless()) {
            if (isKnown(c)) {
                return true;
            }
        }
        return false;
    }

    /** What nobody asks because of what is known counts as usual; else whatever waits for its answer would wait for ever. */
    private boolean isImplied(Condition c) {
        Finding f = model.finding(model.findingIndex(c.finding()));
        return !latest.containsKey(f.id()) && c.values().contains(f.usual()) && isKeptBack(f);
    }

    private boolean isKnown(Condition c) {
        String value = latest.get(c.finding());
        return value != null && c.values().contains(value);
    }
}
