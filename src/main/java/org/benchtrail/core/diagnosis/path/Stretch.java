package org.benchtrail.core.diagnosis.path;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A run of neighbouring segments of one path.
 *
 * @param path id of the path
 * @param segments in their order
 * @param mass belief that the fault is in one of them
 */
public record Stretch(String path, List<String> segments, double mass) {
    /** Belief from which on a stretch is named. Our choice. */
    static final double PLACED = 0.70;

    public Stretch {
        segments = List.copyOf(segments);
    }

    /**
     * The shortest one that reaches the belief and takes at most half of its path; of equally long ones that with most belief,
     * then the first. Empty if there is none: not placed yet.
     */
    static Optional<Stretch> of(Layout layout, Map<String, Double> masses) {
        List<Stretch> found = new ArrayList<>();
        for (FaultPath path : layout.paths().paths()) {
            List<String> order = layout.order(path);
            for (int from = 0; from < order.size(); from++) {
                for (int to = from + 1; to <= order.size() && 2 * (to - from) <= order.size(); to++) {
                    List<String> run = order.subList(from, to);
                    double mass = run.stream().mapToDouble(masses::get).sum();
                    if (mass >= PLACED) {
                        found.add(new Stretch(path.id(), run, mass));
                    }
                }
            }
        }
        Optional<Stretch> best = Optional.empty();
        for (Stretch s : found) {
            if (best.isEmpty() || s.isShorter(best.get())) {
                best = Optional.of(s);
            }
        }
        return best;
    }

    private boolean isShorter(Stretch than) {
        int by = Integer.compare(segments.size(), than.segments.size());
        return by < 0 || (by == 0 && mass > than.mass);
    }
}
