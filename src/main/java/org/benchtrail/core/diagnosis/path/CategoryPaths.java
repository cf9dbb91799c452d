package org.benchtrail.core.diagnosis.path;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.diagnosis.Phrase;

/**
 * The paths of one category of the catalogue.
 *
 * @param category its id
 * @param residual share of the belief that starts on causes that nobody listed, all segments together; 0.05 to 0.60, or 0 for
 *     none
 * @param spread listed causes that may sit in several segments: for each the segments with their parts, which sum to 1
 * @param requires causes and findings that are out if that segment is absent
 * @param stands listed findings that are tests of segments
 * @param words for a segment the words that name it in what people say
 * @param notes by id of a test made from the structure, what is said of it
 */
public record CategoryPaths(
        String category,
        double residual,
        List<Segment> segments,
        Map<String, Map<String, Double>> spread,
        Map<String, String> requires,
        List<FaultPath> paths,
        List<WholeTest> whole,
        List<Change> changes,
        List<StandsFor> stands,
        Map<String, List<Phrase>> words,
        Map<String, TestNote> notes) {
    public CategoryPaths {
        segments = List.copyOf(segments);
        spread = Map.copyOf(spread);
        requires = Map.copyOf(requires);
        paths = List.copyOf(paths);
        whole = List.copyOf(whole);
        changes = List.copyOf(changes);
        stands = List.copyOf(stands);
        words = Map.copyOf(words);
        notes = Map.copyOf(notes);
    }

    /** One of which nothing more is said. */
    public CategoryPaths(
            String category,
            double residual,
            List<Segment> segments,
            Map<String, Map<String, Double>> spread,
            Map<String, String> requires,
            List<FaultPath> paths,
            List<WholeTest> whole,
            List<Change> changes,
            List<StandsFor> stands) {
        this(category, residual, segments, spread, requires, paths, whole, changes, stands, Map.of(), Map.of());
    }

    /** A category whose places nobody described: nothing is localised, and all figures are those of the catalogue alone. */
    public static CategoryPaths none(String category) {
        return new CategoryPaths(
                category, 0, List.of(), Map.of(), Map.of(), List.of(), List.of(), List.of(), List.of());
    }

    /** What is said of a test that is made from the structure. */
    TestNote note(String test) {
        return notes.getOrDefault(test, TestNote.NONE);
    }

    public Optional<Segment> segment(String id) {
        return segments.stream().filter(s -> s.id().equals(id)).findFirst();
    }

    /** The segment in which a listed cause is at home. */
    public Optional<Segment> home(String cause) {
        return segments.stream().filter(s -> s.causes().contains(cause)).findFirst();
    }

    /** The segments a listed cause may sit in, in the order of the segments, with their parts; empty if it has no home. */
    Map<String, Double> parts(String cause) {
        Map<String, Double> given = spread.get(cause);
        Map<String, Double> parts = new LinkedHashMap<>();
        for (Segment s : segments) {
            if (given != null && given.containsKey(s.id())) {
                parts.put(s.id(), given.get(s.id()));
            } else if (given == null && s.causes().contains(cause)) {
                parts.put(s.id(), 1.0);
            }
        }
        return parts;
    }
}
