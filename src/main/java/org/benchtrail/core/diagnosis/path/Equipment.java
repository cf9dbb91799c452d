package org.benchtrail.core.diagnosis.path;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Report;
import org.jspecify.annotations.Nullable;

/**
 * What is there on a ticket.
 *
 * @param present ids of the segments that are counted in
 * @param open segments whose question nobody answered yet
 */
record Equipment(Set<String> present, List<Segment> open) {
    Equipment {
        present = Set.copyOf(present);
        open = List.copyOf(open);
    }

    /** @param answered by segment, whether it is there */
    static Equipment of(CategoryPaths paths, Map<String, Boolean> answered, Evidence evidence) {
        Map<String, Report> latest = latest(evidence);
        Set<String> present = new HashSet<>();
        List<Segment> open = new ArrayList<>();
        for (Segment s : paths.segments()) {
            Boolean said = said(s, paths, answered, latest);
            Presence p = s.present();
            if (said == null ? p.start() != Presence.Start.ABSENT : said) {
                present.add(s.id());
            }
            if (said == null && !p.ask().isEmpty()) {
                open.add(s);
            }
        }
        return new Equipment(present, open);
    }

    /** Segments that hang on the same finding are there together, or in turn: an answer for one of them settles all. */
    private static @Nullable Boolean said(
            Segment s, CategoryPaths paths, Map<String, Boolean> answered, Map<String, Report> latest) {
        Presence p = s.present();
        if (p.start() == Presence.Start.ALWAYS) {
            return true;
        }
        if (answered.containsKey(s.id())) {
            return answered.get(s.id());
        }
        if (p.finding().isEmpty()) {
            return null;
        }
        for (Segment other : paths.segments()) {
            Boolean there = answered.get(other.id());
            if (other.present().finding().equals(p.finding()) && there != null) {
                return there == other.present().is().equals(p.is());
            }
        }
        Report answer = latest.get(p.finding());
        return answer == null ? null : (Boolean) p.is().contains(answer.value());
    }

    /** The latest valid answer of each question. */
    static Map<String, Report> latest(Evidence evidence) {
        Map<String, Report> latest = new HashMap<>();
        evidence.reports().stream()
                .filter(r -> !r.superseded()
                        && !r.value().equals(Report.UNKNOWN)
                        && !r.value().equals(Report.NOT_APPLICABLE))
                .sorted(Comparator.comparing(Report::at).thenComparing(Report::id))
                .forEach(r -> latest.put(r.finding(), r));
        return latest;
    }
}
