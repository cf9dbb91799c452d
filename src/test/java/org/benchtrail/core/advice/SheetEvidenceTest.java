package org.benchtrail.core.advice;

import static org.benchtrail.core.advice.HeatSheet.MODEL;
import static org.benchtrail.core.advice.HeatSheet.answer;
import static org.benchtrail.core.advice.HeatSheet.reading;
import static org.benchtrail.core.advice.HeatSheet.stamp;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.FailedRepair;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.theorize.RankedCause;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a job sheet says about the causes of its category. */
class SheetEvidenceTest {
    private static Evidence evidence(Fact... facts) {
        return SheetEvidence.of(new HeatSheet().with(facts).sheet(), MODEL);
    }

    private static Finding finding(String id) {
        return SheetEvidence.finding(MODEL, id).orElseThrow();
    }

    @Test
    void answer_isReportedWithItsEntrySourceAndTime() {
        assertEquals(
                List.of(Report.of("entry-2", "dust", "yes", Source.REPORTED, stamp(2).at())),
                evidence(answer("dust", "yes")).reports());
    }

    @Test
    void whatTheCategoryDoesNotKnow_isNotReported_butUnknownIs() {
        assertEquals(
                List.of(),
                evidence(answer("smell", "yes"), answer("dust", "perhaps")).reports());
        assertEquals(
                List.of("unknown"),
                evidence(answer("dust", "unknown")).reports().stream()
                        .map(Report::value)
                        .toList());
    }

    @Test
    void laterAnswer_standsBesideTheEarlierOne_untilSomethingWasDone() {
        Evidence before = evidence(answer("dust", "yes"), answer("noise", "yes"), answer("dust", "no"));
        assertTrue(before.reports().stream().noneMatch(Report::superseded));
        assertEquals("no", SheetEvidence.answers(before).get("dust").value());
        Evidence after = evidence(
                answer("dust", "yes"),
                answer("noise", "yes"),
                new ActionSettled(99, Settlement.CARRIED_OUT, ""),
                answer("dust", "no"),
                answer("dust", "no"));
        assertEquals(
                List.of(true, false, false, false),
                after.reports().stream().map(Report::superseded).toList());
        assertEquals("no", SheetEvidence.answers(after).get("dust").value());
        assertEquals("yes", SheetEvidence.answers(after).get("noise").value());
    }

    @Test
    void actionThatWasNotNeeded_changesNothing() {
        Evidence evidence = evidence(
                answer("dust", "yes"),
                new ActionSettled(99, Settlement.NOT_NEEDED, "It was clean"),
                answer("dust", "no"));
        assertTrue(evidence.reports().stream().noneMatch(Report::superseded));
    }

    // ---- readings

    @ParameterizedTest
    @CsvSource({
        "hot, 100, degC, , above",
        "hot, 90, degC, , inside",
        "hot, 212, '°F', , above",
        "hot, 373.15, K, , above",
        "hot, 90, degC, 85, above",
        "hot, 100, degC, 105, inside",
        "hot, 400, degC, , ",
        "hot, 100, V, , ",
        "hot, 100, V, 90, ",
        "hot, 100, furlong, , ",
        "load, 90, %, , above",
        "load, 70, %, , inside",
        "load, 90, W, , ",
        "load, 90, W, 100, inside",
        "load, 110, W, 100, above",
        "dust, 3, degC, , "
    })
    void reading_isJudgedByItsOwnLimit_elseByTheCatalogues_elseNotAtAll(
            String finding, String value, String unit, @Nullable String upper, @Nullable String expected) {
        ReadingRecorded reading = reading(finding, value, unit, upper, null);
        assertEquals(
                Optional.ofNullable(expected),
                SheetEvidence.judge(finding(finding), reading).map(Finding.JudgedReading::value));
        assertEquals(
                expected == null ? List.of() : List.of(expected),
                evidence(reading).reports().stream().map(Report::value).toList());
    }

    @Test
    void reading_isTrustedByItsAccuracy_andLessNearItsLimit() {
        assertEquals(0.95, trusted(reading("hot", "110", "degC", null, null)), 1e-12);
        assertEquals(0.98, trusted(reading("hot", "110", "degC", null, "0.1 %")), 1e-12);
        assertEquals(0.5, trusted(reading("hot", "95", "degC", null, null)), 1e-12);
        assertTrue(trusted(reading("hot", "98", "degC", null, "5 %")) < 0.98, "within its uncertainty of 95");
        Report report =
                evidence(reading("hot", "110", "degC", null, "0.1 %")).reports().get(0);
        assertEquals(new Report("entry-2", "hot", "above", 0.98, stamp(2).at(), false), report);
    }

    private static double trusted(ReadingRecorded reading) {
        return SheetEvidence.judge(finding("hot"), reading).orElseThrow().reliability();
    }

    @Test
    void lowerLimitOfItsOwn_countsToo() {
        ReadingRecorded low =
                new ReadingRecorded("reading", "100", "degC", "there", "", "50", null, "label", null, null, "hot");
        assertEquals(
                "inside", SheetEvidence.judge(finding("hot"), low).orElseThrow().value());
    }

    // ---- what was tried in vain

    private static List<FailedRepair> inVain(String causeId, Fact... facts) {
        HeatSheet sheet = new HeatSheet().with(new TheoryStated("That", causeId), new TheoryStated("Other", "H4"));
        sheet.with(new TheoryChosen(2, "", "")).with(facts);
        return SheetEvidence.of(sheet.sheet(), MODEL).failedRepairs();
    }

    private static TheoriesRanked ranked(String probability) {
        return new TheoriesRanked(
                List.of(),
                "catalogue",
                List.of(new RankedCause("H2", "Board", "0.9"), new RankedCause("H1", "Dust", probability)),
                3);
    }

    @Test
    void ruledOutByACheck_isATrialWithoutBelief() {
        assertEquals(List.of(new FailedRepair("H1", 0, stamp(6).at())), inVain("H1", ranked("0.3"), new RuledOut()));
    }

    @Test
    void repairInVain_countsWithTheBeliefThatWasShown() {
        assertEquals(
                List.of(new FailedRepair("H1", 0.3, stamp(7).at())),
                inVain(
                        "H1",
                        ranked("0.3"),
                        new TheoriesRanked(List.of(2), "judgement"),
                        new VerifyFailed("Still hot")));
        assertEquals(
                List.of(new FailedRepair("H1", 0.3, stamp(7).at())),
                inVain(
                        "H1",
                        ranked("0.3"),
                        new ActionSettled(99, Settlement.CARRIED_OUT, ""),
                        new Rethought("No dust", true),
                        ranked("0.1")));
    }

    @Test
    void shownWrongBeforeAnythingWasDone_isATrialWithoutBelief() {
        assertEquals(
                List.of(new FailedRepair("H1", 0, stamp(6).at())),
                inVain("H1", ranked("0.3"), new Rethought("No dust", true), ranked("0.1")));
    }

    @Test
    void newFault_saysNothingOfTheRepair() {
        assertEquals(List.of(), inVain("H1", ranked("0.3"), new VerifyFailed("The lamp is dark now", false)));
    }

    @Test
    void repairInVainOfWhatWasNeverRanked_countsWithItsPrior() {
        double prior = MODEL.prior(MODEL.index("H1"));
        assertEquals(
                List.of(new FailedRepair("H1", prior, stamp(5).at())), inVain("H1", new VerifyFailed("Still hot")));
        assertEquals(
                List.of(new FailedRepair("H3", MODEL.prior(MODEL.index("H3")), stamp(6).at())),
                inVain("H3", ranked("0.3"), new VerifyFailed("Still hot")));
    }

    @Test
    void causeOutsideTheCategory_isNoTrialOfIt() {
        assertEquals(List.of(), inVain("Z9", new VerifyFailed("Still hot")));
        assertFalse(SheetEvidence.isCause(MODEL.category(), "Z9"));
        assertFalse(SheetEvidence.isCause(MODEL.category(), null));
        assertTrue(SheetEvidence.isCause(MODEL.category(), "H4"));
        assertEquals(Optional.empty(), SheetEvidence.finding(MODEL, "smell"));
    }

    @Test
    void eachRound_triesTheTheoryThatWasChosenInIt() {
        HeatSheet sheet = new HeatSheet()
                .with(new TheoryStated("Dust", "H1"), new TheoryStated("Load", "H4"), new TheoryChosen(2, "", ""))
                .with(new RuledOut(), new TheoryChosen(3, "", ""), new RuledOut());
        assertEquals(
                List.of("H1", "H4"),
                SheetEvidence.of(sheet.sheet(), MODEL).failedRepairs().stream()
                        .map(FailedRepair::repair)
                        .toList());
    }
}
