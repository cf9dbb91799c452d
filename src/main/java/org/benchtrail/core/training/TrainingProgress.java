package org.benchtrail.core.training;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.statistics.Interval;
import org.benchtrail.core.statistics.Proportion;

/**
 * How often each requirement was met at the first try and found good by who looked, by kind of trouble, live work and practice apart.
 * There is no sum over requirements: nobody is ranked by it.
 *
 * @param lines in the order of the requirements, then of the kinds of trouble, live before practice
 * @param unseen requirements of which nobody has looked at anything
 */
public record TrainingProgress(List<Line> lines, List<Requirement> unseen) {
    /** With fewer occasions a line says nothing. */
    public static final int LEAST = 5;

    private static final double CONFIDENCE = 0.90;

    /**
     * What was looked at of one job.
     *
     * @param events by code of the requirement
     */
    public record Job(Category trade, boolean practice, Map<String, List<CoachEvent>> events) {}

    /** @param met at the first try, of the occasions that somebody looked at */
    public record Line(Requirement requirement, Category trade, boolean practice, Proportion met) {
        /** Exact, with 90 %: source Clopper and Pearson, see {@link Proportion#clopperPearson}. */
        public Interval interval() {
            return met.clopperPearson(CONFIDENCE);
        }

        public boolean isSpokenOf() {
            return met.trials() >= LEAST;
        }
    }

    private record Place(Category trade, boolean practice) implements Comparable<Place> {
        @Override
        public int compareTo(Place other) {
            return Comparator.comparing(Place::trade)
                    .thenComparing(Place::practice)
                    .compare(this, other);
        }
    }

    public static TrainingProgress of(List<Job> jobs) {
        List<Line> lines = new ArrayList<>();
        List<Requirement> unseen = new ArrayList<>();
        for (Requirement requirement : Requirements.all()) {
            Map<Place, List<Boolean>> looked = new TreeMap<>();
            for (Job job : jobs) {
                for (CoachEvent event : job.events.getOrDefault(requirement.code(), List.of())) {
                    if (event instanceof CoachEvent.Occasion occasion) {
                        looked.computeIfAbsent(new Place(job.trade, job.practice), p -> new ArrayList<>())
                                .add(occasion.met());
                    }
                }
            }
            looked.forEach((place, met) -> lines.add(new Line(
                    requirement,
                    place.trade,
                    place.practice,
                    new Proportion(met.stream().filter(m -> m).count(), met.size()))));
            if (looked.isEmpty()) {
                unseen.add(requirement);
            }
        }
        return new TrainingProgress(lines, unseen);
    }
}
