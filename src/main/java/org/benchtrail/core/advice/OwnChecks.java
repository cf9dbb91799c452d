package org.benchtrail.core.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Deviation;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Risk;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.TheoryFate;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.jspecify.annotations.Nullable;

/**
 * Checks that answer no finding of the catalogue, of a theory that is one of its causes: each is a yes/no finding of its own
 * that only that cause touches. What rules a theory out at the end of a round says the same as the checks behind it, and
 * counts once. Likelihoods are common practice, no source.
 */
public final class OwnChecks {
    private static final String PREFIX = "own-check-";
    private static final List<String> VALUES = List.of("no", "yes");
    private static final double SEEN_IF_RIGHT = 0.85;
    private static final double MEASURED_IF_RIGHT = 0.90;

    private OwnChecks() {}

    /** Whether a finding stands for a check of one's own. */
    public static boolean isOwn(String finding) {
        return finding.startsWith(PREFIX);
    }

    private record Own(
            StandingFact<ResultRecorded> result,
            String what,
            String cause,
            @Nullable ReadingRecorded on) {
        String finding() {
            return PREFIX + result.entry();
        }

        double ifRight() {
            return on == null ? SEEN_IF_RIGHT : MEASURED_IF_RIGHT;
        }
    }

    /** The category with a finding for each such check; itself if there is none. */
    public static CauseCategory with(JobSheet sheet, CauseCategory c) {
        List<Own> checks = of(sheet, c);
        if (checks.isEmpty()) {
            return c;
        }
        List<Finding> findings = new ArrayList<>(c.findings());
        checks.forEach(own -> findings.add(finding(own)));
        return new CauseCategory(
                c.id(),
                c.title(),
                c.escalateMinutes(),
                c.groups(),
                findings,
                c.causes().stream().map(cause -> touched(cause, checks)).toList(),
                c.sharedRepairs(),
                c.hints());
    }

    /** What those checks say, of a category that {@link #with} made. */
    static List<Report> reports(JobSheet sheet, CauseCategory category) {
        return of(sheet, category).stream()
                .filter(own -> SheetEvidence.finding(category, own.finding()).isPresent())
                .map(own -> new Report(
                        "entry-" + own.result().entry() + "/" + own.finding(),
                        own.finding(),
                        own.result().fact().outcome() == CheckOutcome.SUPPORTS ? "yes" : "no",
                        own.on() == null ? Source.SEEN.reliability() : SheetEvidence.reliability(own.on()),
                        own.result().stamp().at(),
                        false))
                .toList();
    }

    private static List<Own> of(JobSheet sheet, CauseCategory category) {
        return sheet.all(ResultRecorded.class).stream()
                .filter(r -> r.fact().answer() == null && r.fact().outcome() != CheckOutcome.INCONCLUSIVE)
                .flatMap(r -> own(sheet, category, r).stream())
                .toList();
    }

    private static Optional<Own> own(JobSheet sheet, CauseCategory category, StandingFact<ResultRecorded> result) {
        Optional<StandingFact<CheckPlanned>> check =
                sheet.latest(CheckPlanned.class, c -> c.entry() == result.fact().check());
        Optional<String> cause = check.flatMap(c -> sheet.latest(
                        TheoryStated.class, t -> t.entry() == c.fact().theory()))
                .flatMap(t -> category.cause(t.fact().causeId()))
                .map(Cause::id);
        boolean said = result.fact().outcome() == CheckOutcome.REFUTES
                && sheet.facts().stream()
                        .anyMatch(f -> f.round() == result.round() && f.fact().theoryFate() == TheoryFate.RULED_OUT);
        if (check.isEmpty() || cause.isEmpty() || said) {
            return Optional.empty();
        }
        Optional<ReadingRecorded> on = sheet.latest(
                        ReadingRecorded.class,
                        r -> Objects.equals(r.entry(), result.fact().reading()))
                .map(StandingFact::fact);
        return Optional.of(new Own(result, check.get().fact().what(), cause.get(), on.orElse(null)));
    }

    private static Finding finding(Own own) {
        return new Finding(
                own.finding(),
                own.what(),
                Finding.Kind.ANSWER,
                VALUES,
                yes(1 - own.ifRight()),
                1,
                Risk.NONE,
                List.of(),
                null,
                null);
    }

    private static Map<String, Double> yes(double p) {
        return Map.of("no", 1 - p, "yes", p);
    }

    private static Cause touched(Cause cause, List<Own> checks) {
        List<Deviation> deviations = new ArrayList<>(cause.deviations());
        checks.stream()
                .filter(own -> own.cause().equals(cause.id()))
                .forEach(own -> deviations.add(new Deviation(own.finding(), yes(own.ifRight()))));
        return cause.deviating(deviations);
    }
}
