package org.benchtrail.core.advice;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.FailedRepair;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Limits;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.measure.Quantity;
import org.benchtrail.core.measure.Unit;
import org.benchtrail.core.measure.Units;
import org.benchtrail.core.method.CatalogueAnswer;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.TheoryFate;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.jspecify.annotations.Nullable;

/**
 * What a job sheet says about the causes of its category: answers, readings by their verdict, results of checks, and what was
 * tried in vain. Nothing has to be told twice.
 *
 * <p>An answer given after an action was carried out takes the weight from earlier ones of the same finding. A theory that was
 * ruled out, or whose repair did not help, counts as a failed repair of its cause.
 */
public final class SheetEvidence {
    private static final double COVERAGE = 2;

    private final JobSheet sheet;
    private final Model model;
    private final Map<String, Integer> answeredAt = new HashMap<>();
    private Evidence evidence = Evidence.NONE;
    private int lastWork;

    private SheetEvidence(JobSheet sheet, Model model) {
        this.sheet = sheet;
        this.model = model;
    }

    /** Only what the model's category knows; the rest of the sheet weighs nothing. */
    public static Evidence of(JobSheet sheet, Model model) {
        SheetEvidence reading = new SheetEvidence(sheet, model);
        sheet.facts().forEach(reading::take);
        return reading.evidence;
    }

    /** The latest answer to each finding, by the finding's id. */
    public static Map<String, Report> answers(Evidence evidence) {
        Map<String, Report> latest = new HashMap<>();
        evidence.reports().stream().filter(r -> !r.superseded()).forEach(r -> latest.put(r.finding(), r));
        return latest;
    }

    private void take(StandingFact<?> noted) {
        if (noted.fact().changesDevice()) {
            lastWork = noted.entry();
        }
        inVain(noted).ifPresent(failed -> evidence = evidence.with(failed));
        report(noted).ifPresent(report -> add(noted.entry(), report));
    }

    private void add(int entry, Report report) {
        int before = answeredAt.getOrDefault(report.finding(), Integer.MAX_VALUE);
        evidence = before < lastWork ? evidence.remeasured(report) : evidence.with(report);
        answeredAt.put(report.finding(), entry);
    }

    private Optional<Report> report(StandingFact<?> noted) {
        return noted.fact()
                .says(sheet)
                .flatMap(said -> finding(model, said.finding()).flatMap(f -> report(noted, f, said)));
    }

    private static Optional<Report> report(StandingFact<?> noted, Finding finding, CatalogueAnswer said) {
        if (said.reading() != null) {
            return judged(noted, finding, said.reading());
        }
        boolean known = finding.values().contains(said.value()) || Report.UNKNOWN.equals(said.value());
        return known
                ? Optional.of(Report.of(
                        id(noted),
                        finding.id(),
                        said.value(),
                        said.source(),
                        noted.stamp().at()))
                : Optional.empty();
    }

    private static Optional<Report> judged(StandingFact<?> noted, Finding finding, ReadingRecorded reading) {
        return judge(finding, reading)
                .map(judged -> new Report(
                        id(noted),
                        finding.id(),
                        judged.value(),
                        judged.reliability(),
                        noted.stamp().at(),
                        false));
    }

    /**
     * What a reading says of a finding, by its own limit where it has one: a nameplate knows better than the catalogue. Empty
     * if it measures something else, or there is no limit.
     */
    public static Optional<Finding.JudgedReading> judge(Finding finding, ReadingRecorded reading) {
        try {
            Finding by = reading.lower() == null && reading.upper() == null ? finding : withOwn(finding, reading);
            if (by.limits() == null) {
                return Optional.empty();
            }
            Unit unit = Units.read("unit", by.limits().unit());
            Quantity value = Quantity.of(reading.value(), Units.read("unit", reading.unit()));
            if (unit.dimension() != value.unit().dimension() || !isAskedFor(finding, value.unit())) {
                return Optional.empty();
            }
            BigDecimal u =
                    BigDecimal.valueOf(COVERAGE * reading.standardUncertainty().orElse(0));
            double expanded = Quantity.of(u, value.unit()).asDifferenceIn(unit);
            return Optional.of(by.judge(value.in(unit), expanded, reliability(reading)));
        } catch (Invalid e) {
            return Optional.empty(); // a unit that is not known, or a value that is not possible: it says nothing
        }
    }

    /** How far a reading is trusted that lies away from any limit. */
    public static double reliability(ReadingRecorded reading) {
        return (reading.accuracy() == null ? Source.SEEN : Source.CALIBRATED).reliability();
    }

    /** A share of a rating may be read as the value itself, held against the rating. */
    private static boolean isAskedFor(Finding finding, Unit unit) {
        return finding.limits() == null
                || Units.read("unit", finding.limits().unit()).dimension() == unit.dimension()
                || finding.limits().unit().equals("%");
    }

    private static Finding withOwn(Finding f, ReadingRecorded reading) {
        Limits own = new Limits(reading.unit(), bound(reading.lower()), bound(reading.upper()), 0, null, null);
        return new Finding(
                f.id(),
                f.question(),
                f.kind(),
                f.values(),
                f.background(),
                f.minutes(),
                f.risk(),
                f.applies(),
                f.group(),
                own,
                f.dangers());
    }

    private static @Nullable Double bound(@Nullable String text) {
        return text == null ? null : Double.valueOf(text);
    }

    private Optional<FailedRepair> inVain(StandingFact<?> noted) {
        TheoryFate fate = noted.fact().theoryFate();
        if (fate == TheoryFate.UNTOUCHED) {
            return Optional.empty();
        }
        boolean ruledOut = fate == TheoryFate.RULED_OUT;
        return theory(noted.round())
                .map(t -> t.fact().causeId())
                .filter(cause -> isCause(model, cause))
                .map(cause -> new FailedRepair(
                        cause,
                        ruledOut ? 0 : beliefIn(cause, noted),
                        noted.stamp().at()));
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
                .orElse(model.prior(model.index(cause)));
    }

    private static Optional<Double> shown(TheoriesRanked ranked, String cause) {
        return ranked.causes() == null
                ? Optional.empty()
                : ranked.causes().stream()
                        .filter(c -> c.causeId().equals(cause))
                        .map(c -> Double.valueOf(c.probability()))
                        .findFirst();
    }

    private static String id(StandingFact<?> noted) {
        return "entry-" + noted.entry();
    }

    /** The finding with that id; empty if the category has none. */
    public static Optional<Finding> finding(Model model, @Nullable String id) {
        return model.category().findings().stream()
                .filter(f -> f.id().equals(id))
                .findFirst();
    }

    static boolean isCause(Model model, @Nullable String id) {
        List<String> known = new ArrayList<>();
        model.category().causes().forEach(c -> known.add(c.id()));
        return known.contains(id);
    }
}
