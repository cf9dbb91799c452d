package org.benchtrail.core.diagnosis.path;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Deviation;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Making;

/**
 * What the tests of a category are about.
 *
 * @param segments by id of a test the segments that it is done to, or where what it shows most is at home; none for one that parts
 *     the places
 * @param settling by id of a listed cause the findings that settle it
 * @param made by id the tests that are made from the structure
 * @param inside ids of the tests that the case has to be open for
 * @param touched by id of a test the one segment that it takes off, replaces, leaves out or moves
 */
record Subjects(
        Map<String, Set<String>> segments,
        Map<String, Set<String>> settling,
        Map<String, GenericTest> made,
        Set<String> inside,
        Map<String, String> touched) {
    private static final String MAINS = "MAINS";

    /** What one has to mind only with the case open. */
    private static final Set<String> OF_THE_INSIDE = Set.of("STATIC", "CAPACITOR", "MOVING_PARTS");

    /** A cause mostly shows another value than the usual one. */
    private static final double SHOWN_BELOW = 0.5;

    private static final Set<PathAct> PARTING = Set.of(PathAct.POINT, PathAct.LOG, PathAct.REPEAT);

    Subjects {
        segments = Map.copyOf(segments);
        settling = Map.copyOf(settling);
        made = Map.copyOf(made);
        inside = Set.copyOf(inside);
        touched = Map.copyOf(touched);
    }

    static Subjects of(CauseCategory category, Layout layout, List<GenericTest> tests) {
        Map<String, Finding> findings = new HashMap<>();
        category.findings().forEach(f -> findings.put(f.id(), f));
        Map<String, Set<String>> about = new HashMap<>();
        tests.stream()
                .filter(t -> !PARTING.contains(t.act()))
                .forEach(t -> about.put(t.id(), Set.copyOf(t.segments())));
        Map<String, Set<String>> settling = new HashMap<>();
        Set<String> standing =
                layout.paths().stands().stream().map(StandsFor::finding).collect(Collectors.toSet());
        for (Cause c : category.causes()) {
            String home = layout.paths().home(c.id()).map(Segment::id).orElse("");
            c.deviations().stream()
                    .filter(d -> layout.has(home) && !standing.contains(d.finding()) && shows(d, findings))
                    .forEach(d -> about.computeIfAbsent(d.finding(), f -> new HashSet<>())
                            .add(home));
            settling.put(c.id(), settling(c, findings));
        }
        layout.paths().stands().forEach(s -> about.put(s.finding(), Set.copyOf(s.segments())));
        Set<String> inside =
                tests.stream().filter(Subjects::isInside).map(GenericTest::id).collect(Collectors.toSet());
        category.findings().stream().filter(Subjects::isInside).map(Finding::id).forEach(inside::add);
        return new Subjects(
                about,
                settling,
                tests.stream().collect(Collectors.toMap(GenericTest::id, t -> t)),
                inside,
                touched(layout, tests));
    }

    private static Map<String, String> touched(Layout layout, List<GenericTest> tests) {
        Map<String, String> touched = new HashMap<>();
        tests.stream()
                .filter(t -> PathAct.TOUCHING.contains(t.act()))
                .forEach(t -> touched.put(t.id(), t.segments().get(0)));
        layout.paths().stands().stream()
                .filter(s -> PathAct.TOUCHING.contains(s.act()) && s.segments().size() == 1)
                .forEach(s -> touched.put(s.finding(), s.segments().get(0)));
        return touched;
    }

    private static boolean isInside(GenericTest test) {
        return test.inside() || test.cautions().stream().anyMatch(OF_THE_INSIDE::contains);
    }

    private static boolean isInside(Finding finding) {
        Making making = finding.making();
        return making != null
                && making.invasive()
                && (making.cautions().stream().anyMatch(OF_THE_INSIDE::contains)
                        || (making.way() == Making.Way.LOOK && making.cautions().contains(MAINS)));
    }

    Set<String> segments(String test) {
        return segments.getOrDefault(test, Set.of());
    }

    Set<String> settling(String cause) {
        return settling.getOrDefault(cause, Set.of());
    }

    private static boolean shows(Deviation d, Map<String, Finding> findings) {
        return Optional.ofNullable(findings.get(d.finding()))
                .filter(f -> d.probabilities().getOrDefault(f.usual(), 0.0) < SHOWN_BELOW)
                .isPresent();
    }

    /** Those that the cause names, else the one that tells most for it. */
    private static Set<String> settling(Cause cause, Map<String, Finding> findings) {
        if (!cause.confirmBy().isEmpty()) {
            return Set.copyOf(cause.confirmBy());
        }
        String best = "";
        double most = 0;
        for (Deviation d : cause.deviations()) {
            double telling = telling(d, Optional.ofNullable(findings.get(d.finding())));
            if (telling > most) {
                most = telling;
                best = d.finding();
            }
        }
        return best.isEmpty() ? Set.of() : Set.of(best);
    }

    /** How many times as probable its most telling value is as it usually is. */
    private static double telling(Deviation d, Optional<Finding> finding) {
        return finding.stream()
                .flatMap(f -> f.values().stream()
                        .skip(1)
                        .map(v -> d.probabilities().getOrDefault(v, 0.0)
                                / f.background().getOrDefault(v, 1.0)))
                .max(Double::compare)
                .orElse(0.0);
    }
}
