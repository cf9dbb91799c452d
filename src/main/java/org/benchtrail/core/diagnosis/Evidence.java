package org.benchtrail.core.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Everything known on one ticket that bears on its causes. */
public record Evidence(List<Report> reports, List<FailedRepair> failedRepairs) {
    public static final Evidence NONE = new Evidence(List.of(), List.of());

    public Evidence {
        reports = List.copyOf(reports);
        failedRepairs = List.copyOf(failedRepairs);
    }

    /** With one more report; earlier ones of the same finding keep their weight. */
    public Evidence with(Report report) {
        return new Evidence(append(reports.stream(), report), failedRepairs);
    }

    /** With a measurement made after a repair or another change: earlier reports of the finding lose their weight. */
    public Evidence remeasured(Report report) {
        return new Evidence(
                append(reports.stream().map(r -> r.finding().equals(report.finding()) ? r.supersede() : r), report),
                failedRepairs);
    }

    public Evidence with(FailedRepair failed) {
        List<FailedRepair> all = new ArrayList<>(failedRepairs);
        all.add(failed);
        return new Evidence(reports, all);
    }

    /** As if the finding had never been asked. */
    public Evidence without(String finding) {
        return new Evidence(
                reports.stream().filter(r -> !r.finding().equals(finding)).toList(), failedRepairs);
    }

    public boolean isEmpty() {
        return failedRepairs.isEmpty() && reports.stream().noneMatch(Report::isInformative);
    }

    private static List<Report> append(Stream<Report> reports, Report last) {
        return Stream.concat(reports, Stream.of(last)).toList();
    }
}
