package org.benchtrail.core.advice;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.FailedRepair;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.TheoryFate;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.jspecify.annotations.Nullable;

/**
 * What a job sheet says about the causes of its category: answers, what follows from other recorded facts, results of checks, and
 * what was tried in vain. Nothing has to be told twice.
 *
 * <p>A theory that was ruled out, or whose repair did not help, counts as a failed repair of its cause.
 */
public final class SheetEvidence {
    private final JobSheet sheet;
    private final CauseCategory category;
    private final double unlisted;

    private SheetEvidence(JobSheet sheet, CauseCategory category, double unlisted) {
        this.sheet = sheet;
        this.category = category;
        this.unlisted = unlisted;
    }

    /** Only what the model's category knows; the rest of the sheet weighs nothing. */
    public static Evidence of(JobSheet sheet, Model model) {
        return of(sheet, model, SheetReader.PLAIN);
    }

    /**
     * @param model over a category as {@link OwnChecks#with} makes it, for checks of one's own to weigh
     * @param reader what is known beside the sheet
     */
    public static Evidence of(JobSheet sheet, Model model, SheetReader reader) {
        return of(sheet, model.category(), model.settings().unlisted(), reader);
    }

    /** @param unlisted belief that starts on a cause that is not in the category */
    static Evidence of(JobSheet sheet, CauseCategory category, double unlisted, SheetReader reader) {
        List<Report> reports = new ArrayList<>();
        heard(sheet, category, reader).forEach(heard -> reports.add(heard.report()));
        reports.addAll(OwnChecks.reports(sheet, category));
        SheetEvidence evidence = new SheetEvidence(sheet, category, unlisted);
        return new Evidence(
                reports, sheet.facts().stream().flatMap(evidence::inVain).toList());
    }

    /** What each fact says of a finding, in the order of the entries: given answers, and what follows by the catalogue. */
    public static List<Heard> heard(JobSheet sheet, CauseCategory category, SheetReader reader) {
        return Hearing.of(sheet, category, reader).all();
    }

    /** Why an entry weighs nothing yet, by its number. */
    public static Map<Integer, String> unheard(JobSheet sheet, CauseCategory category, SheetReader reader) {
        return Hearing.of(sheet, category, reader).unheard();
    }

    /** Whether a report says that something was not named, rather than that it is not so. */
    public static boolean isNotNamed(Report report) {
        return report.id().contains(Hearing.NOT_NAMED);
    }

    /** The latest answer to each finding, by the finding's id. */
    public static Map<String, Report> answers(Evidence evidence) {
        Map<String, Report> latest = new HashMap<>();
        evidence.reports().stream().filter(r -> !r.superseded()).forEach(r -> latest.put(r.finding(), r));
        return latest;
    }

    /**
     * What a reading says of a finding, by its own limit where it has one: a nameplate knows better than the catalogue. Empty
     * if it measures something else, or there is no limit.
     */
    public static Optional<Finding.JudgedReading> judge(Finding finding, ReadingRecorded reading) {
        try {
            Judging.Judged judged = new Judging().of(finding, reading);
            return Optional.of(new Finding.JudgedReading(judged.value(), judged.reliability()));
        } catch (Invalid e) {
            return Optional.empty(); // a unit that is not known, or a value that is not possible: it says nothing
        }
    }

    /** How far a reading is trusted that lies away from any limit. */
    public static double reliability(ReadingRecorded reading) {
        return (reading.accuracy() == null ? Source.SEEN : Source.CALIBRATED).reliability();
    }

    private Stream<FailedRepair> inVain(StandingFact<?> noted) {
        TheoryFate fate = noted.fact().theoryFate();
        if (fate == TheoryFate.UNTOUCHED) {
            return Stream.empty();
        }
        boolean untried = fate == TheoryFate.RULED_OUT || (fate == TheoryFate.SHOWN_WRONG && !wasTried(noted));
        return theory(noted.round()).flatMap(t -> category.cause(t.fact().causeId())).map(Cause::id).stream()
                .map(cause -> new FailedRepair(
                        cause,
                        untried ? 0 : beliefIn(cause, noted),
                        noted.stamp().at()));
    }

    /** Whether anything was done to the device in the round that it ends. */
    private boolean wasTried(StandingFact<?> end) {
        return sheet.facts().stream()
                .anyMatch(f -> f.round() == end.round()
                        && f.entry() < end.entry()
                        && f.fact().changesDevice());
    }

    private Optional<StandingFact<TheoryStated>> theory(int round) {
        return sheet.latest(TheoryChosen.class, c -> c.round() == round)
                .flatMap(c -> sheet.latest(
                        TheoryStated.class, t -> t.entry() == c.fact().theory()));
    }

    /** As it was shown when the theory was chosen; its prior if nothing was shown. */
    private double beliefIn(String cause, StandingFact<?> before) {
        return sheet.latest(
                        TheoriesRanked.class,
                        r -> r.entry() < before.entry() && r.fact().causes() != null)
                .flatMap(r -> shown(r.fact(), cause))
                .orElseGet(() -> prior(cause));
    }

    private double prior(String cause) {
        double all = category.causes().stream().mapToDouble(Cause::weight).sum();
        return category.causes().stream()
                .filter(c -> c.id().equals(cause))
                .mapToDouble(c -> (1 - unlisted) * (c.weight() / all))
                .sum();
    }

    private Optional<Double> shown(TheoriesRanked ranked, String id) {
        Cause cause = category.cause(id).orElseThrow();
        return ranked.causes() == null
                ? Optional.empty()
                : ranked.causes().stream()
                        .filter(c -> cause.isKnownAs(c.causeId()))
                        .map(c -> Double.valueOf(c.probability()))
                        .findFirst();
    }

    /** The catalogue's cause that the active theory names; empty if there is none, or it is not in the catalogue. */
    public static Optional<Cause> causeUnderTest(CauseCategory category, JobSheet sheet) {
        return sheet.activeTheory()
                .flatMap(theory -> Optional.ofNullable(theory.fact().causeId()))
                .flatMap(category::cause);
    }

    /** The finding with that id; empty if the category has none. */
    public static Optional<Finding> finding(Model model, @Nullable String id) {
        return finding(model.category(), id);
    }

    /** As {@link #finding(Model, String)}. */
    public static Optional<Finding> finding(CauseCategory category, @Nullable String id) {
        return category.findings().stream().filter(f -> f.id().equals(id)).findFirst();
    }

    static boolean isCause(CauseCategory category, @Nullable String id) {
        return category.cause(id).isPresent();
    }
}
