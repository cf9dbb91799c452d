package org.benchtrail.core.diagnosis.path;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Words;

/** How it is said where a fault is and what is there. Unlisted causes are named by their place, never as not listed alone. */
public final class PlaceWords {
    /** Belief from which on something that nobody listed is probable. Our choice. */
    private static final double UNNAMED = 0.5;

    /** Causes of less belief are not named. */
    private static final double WORTH_NAMING = 0.05;

    private static final int MOST_NAMED = 3;

    private final Localisation at;
    private final Optional<Stretch> stretch;

    public PlaceWords(Localisation at) {
        this.at = at;
        this.stretch = at.stretch();
    }

    /** Such as "most likely between the wall outlet and the inlet of the supply (about 7 in 10)". */
    public String where() {
        return stretch.map(s -> "most likely " + name(s) + " (" + Words.chance(s.mass()) + ")")
                .orElse("not placed yet");
    }

    /** A stretch by its two points; a single segment by its name. */
    private String name(Stretch s) {
        List<String> run = s.segments();
        if (run.size() == 1) {
            return "here: " + segment(run.get(0));
        }
        FaultPath path = at.layout().paths().paths().stream()
                .filter(p -> p.id().equals(s.path()))
                .findFirst()
                .orElseThrow();
        List<String> order = at.layout().order(path);
        int first = order.indexOf(run.get(0));
        String from = first == 0
                ? segment(run.get(0))
                : point(path, order.get(first - 1)).orElse(segment(run.get(0)));
        String last = run.get(run.size() - 1);
        return "between " + from + " and " + point(path, last).orElse(segment(last));
    }

    private String segment(String id) {
        return at.layout().paths().segment(id).orElseThrow().name();
    }

    private static Optional<String> point(FaultPath path, String after) {
        return path.points().stream()
                .filter(p -> p.after().equals(after))
                .map(Point::at)
                .findFirst();
    }

    /** What lies outside the stretch, in one line; empty if nothing does that is worth naming. */
    public String elsewhere() {
        return stretch.isEmpty() ? "" : outside();
    }

    private String outside() {
        List<String> parts = new ArrayList<>();
        for (Ranking.Ranked r : at.ranking().all()) {
            if (parts.size() < MOST_NAMED && r.probability() >= WORTH_NAMING && !isWithin(r.cause())) {
                parts.add(cause(r.cause()) + " " + Words.chance(r.probability()));
            }
        }
        return String.join("; ", parts);
    }

    /** A cause in several segments lies where most of the belief in it does. */
    private boolean isWithin(String cause) {
        return stretch.isEmpty()
                || at.heaviest(cause).filter(stretch.get().segments()::contains).isPresent();
    }

    private String cause(String id) {
        return at.model().category().causes().stream()
                .filter(c -> c.id().equals(id))
                .map(c -> c.name())
                .findFirst()
                .orElse("something on none of these paths");
    }

    /** Whether the answers ask for care, as a sentence; empty if they do not. */
    public String sentence() {
        return isUnnamed()
                ? "Probably something that is not listed"
                        + stretch.map(s -> ", " + name(s)).orElse("") + "."
                : at.surprise().level().sentence();
    }

    private boolean isUnnamed() {
        return at.unnamed() >= UNNAMED && at.outside() < UNNAMED;
    }
}
