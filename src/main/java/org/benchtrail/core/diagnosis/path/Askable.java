package org.benchtrail.core.diagnosis.path;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Risk;

/**
 * Everything that can be answered on a ticket: the listed findings, every test that the structure makes if all segments are
 * there, and for each segment that may be absent whether it is there ({@code there:segment}); and everything that can be meant
 * to be the cause: the listed ones, and something else in each segment.
 */
final class Askable {
    private static final String YES = "yes";

    private Askable() {}

    static String isThere(String segment) {
        return Localiser.THERE + segment;
    }

    static CauseCategory of(CauseCategory category, CategoryPaths paths, ModelSettings settings) {
        List<Finding> findings = new ArrayList<>(category.findings());
        Set<String> all = paths.segments().stream().map(Segment::id).collect(Collectors.toSet());
        Set<String> kinds = paths.changes().stream().map(Change::kind).collect(Collectors.toSet());
        Layout layout = new Layout(paths, all);
        GenericTests.of(layout, layout.touched(kinds)).forEach(t -> findings.add(t.finding("")));
        paths.segments().stream()
                .filter(s -> s.present().start() != Presence.Start.ALWAYS)
                .forEach(s -> findings.add(new Finding(
                        isThere(s.id()),
                        s.present().ask().isEmpty()
                                ? "Is it there: " + s.name() + "?"
                                : s.present().ask(),
                        Finding.Kind.ANSWER,
                        GenericTest.NO_YES,
                        Map.of("no", 0.5, YES, 0.5),
                        1,
                        Risk.NONE,
                        List.of(),
                        null,
                        null)));
        return category.asking(findings).among(causes(category, paths, settings));
    }

    /** Something else in a segment weighs as much beside the listed causes as it starts with on a ticket that has all segments. */
    private static List<Cause> causes(CauseCategory category, CategoryPaths paths, ModelSettings settings) {
        List<Cause> causes = new ArrayList<>(category.causes());
        double listed = category.causes().stream().mapToDouble(Cause::weight).sum();
        double shares = paths.segments().stream().mapToDouble(Segment::share).sum();
        double all = listed * paths.residual() / (1 - settings.unlisted() - paths.residual());
        if (paths.residual() > 0) {
            paths.segments().forEach(s -> causes.add(Places.somethingElse(s, all * s.share() / shares)));
        }
        return causes;
    }

    /** By segment, whether somebody said that it is there; the latest word counts. */
    static Map<String, Boolean> equipment(Evidence evidence) {
        Map<String, Boolean> said = new HashMap<>();
        evidence.reports().stream()
                .filter(r -> r.finding().startsWith(Localiser.THERE) && r.isAnswer())
                .forEach(r -> said.put(
                        r.finding().substring(Localiser.THERE.length()),
                        r.value().equals(YES)));
        return said;
    }

    /** Without what says only which segments are there: that is structure. */
    static Evidence weighing(Evidence evidence) {
        List<Report> reports = evidence.reports().stream()
                .filter(r -> !r.finding().startsWith(Localiser.THERE))
                .toList();
        return new Evidence(reports, evidence.failedRepairs());
    }

    /** What one would need for the tests that cannot be made here: no test that needs it is offered. */
    static Set<String> lacking(Evidence evidence, List<GenericTest> tests) {
        Set<String> refused = evidence.reports().stream()
                .filter(r -> r.value().equals(Report.NOT_APPLICABLE))
                .map(Report::finding)
                .collect(Collectors.toSet());
        Set<String> lacking = new HashSet<>();
        tests.stream()
                .filter(t -> refused.contains(t.id()) && !t.with().isEmpty())
                .forEach(t -> lacking.add(t.with()));
        return lacking;
    }
}
