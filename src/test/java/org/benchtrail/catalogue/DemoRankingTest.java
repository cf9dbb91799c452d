package org.benchtrail.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.advice.Diagnosis;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.diagnosis.path.PathCatalogue;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.junit.jupiter.api.Test;

/** What the job sheet makes of the delivered catalogue, on the overheating tickets and others. */
class DemoRankingTest {
    private static final Instant START = Instant.parse("2031-03-03T08:00:00Z");
    private static final CatalogueVersion DELIVERED =
            CatalogueVersion.of(1, CatalogueFile.delivered(), PathCatalogue.NONE);
    private static final Model HEAT = DELIVERED.model("heat").orElseThrow();
    private static final Set<String> COOLING = Set.of(
            "heat/dust",
            "heat/fan-failed",
            "heat/paste-dried",
            "heat/blocked-airflow-or-hot-room",
            "heat/fan-curve-or-sensor",
            "heat/heat-sink-loose",
            "heat/fan-held-by-cable");

    private final List<Entry> trail = new ArrayList<>();

    private JobSheet sheet(Category category, Fact... facts) {
        if (trail.isEmpty()) {
            add(new Opened(
                    "40718-6",
                    "Too hot",
                    "",
                    category,
                    "Desktop",
                    "Office",
                    1,
                    Priority.Impact.ONE_PERSON,
                    Priority.Urgency.STOPPED,
                    "ines",
                    Set.of(Role.TECHNICIAN)));
        }
        for (Fact fact : facts) {
            add(fact);
        }
        return JobSheet.replay(trail);
    }

    private void add(Fact fact) {
        int entry = trail.size() + 1;
        trail.add(new Entry(new Stamp(entry, START.plusSeconds(60L * entry), "ines", Set.of(Role.TECHNICIAN)), fact));
    }

    private static ReadingRecorded temperature(String value) {
        return new ReadingRecorded(
                "processor temperature",
                value,
                "\u00b0C",
                "firmware",
                "board sensor",
                null,
                "95",
                "data sheet",
                null,
                null,
                "h1");
    }

    private static FindingAnswered answer(String finding, String value) {
        return new FindingAnswered(finding, "as the catalogue asks", value, Source.SEEN);
    }

    private static List<String> order(Diagnosis diagnosis) {
        return diagnosis.ranking().all().stream()
                .map(Ranking.Ranked::cause)
                .filter(c -> !c.equals(Model.UNLISTED))
                .toList();
    }

    @Test
    void hundredDegreesAtTheDefaultClock_ranksCoolingFirst_andNamesAReadingToTake() {
        Diagnosis diagnosis =
                Diagnosis.of(sheet(Category.HEAT, temperature("100"), answer("h12", "no"), answer("h5", "yes")), HEAT);
        assertTrue(
                COOLING.containsAll(order(diagnosis).subList(0, 3)),
                () -> order(diagnosis).toString());
        Action next = diagnosis.advice().recommended().orElseThrow();
        assertEquals(Action.Type.TEST, next.type());
        assertTrue(Set.of("h3", "h4", "h7", "h14", "h15", "h2", "h6").contains(next.id()), next::id);
    }

    @Test
    void clockAboveItsRating_ranksThatFirst_withCoolingStillListed() {
        ReadingRecorded clock = new ReadingRecorded(
                "clock", "4.5", "GHz", "firmware", "firmware", null, "3.6", "rated clock", null, null, "h11");
        Diagnosis diagnosis = Diagnosis.of(sheet(Category.HEAT, temperature("98"), clock, answer("h12", "yes")), HEAT);
        assertEquals("heat/clock-raised", order(diagnosis).get(0));
        assertTrue(order(diagnosis).containsAll(COOLING));
    }

    @Test
    void readingInAnotherUnit_isTheSameFinding() {
        Model power = DELIVERED.model("power").orElseThrow();
        ReadingRecorded rail = new ReadingRecorded(
                "+12 V rail", "11360", "mV", "drive plug", "meter", null, null, "", "0.5 % + 2", "2", "p4");
        Report report = SheetEvidence.answers(SheetEvidence.of(sheet(Category.POWER, rail), power))
                .get("p4");
        assertEquals("below", report.value());
        assertTrue(report.reliability() < Source.CALIBRATED.reliability(), "near its limit it is trusted less");
    }

    @Test
    void readingOfAnotherKind_weighsNothing() {
        ReadingRecorded wrong =
                new ReadingRecorded("temperature", "100", "V", "x", "", null, null, "", null, null, "h1");
        assertFalse(Diagnosis.of(sheet(Category.HEAT, wrong), HEAT).hasEvidence());
    }

    @Test
    void resultOfACheck_flowsBackAsAFinding() {
        JobSheet sheet = sheet(
                Category.HEAT,
                new TheoryStated("dust", "heat/dust"),
                new TheoryChosen(2, "", ""),
                new CheckPlanned(2, "look", "a mat of dust", false, Set.of(), "h4", null),
                new ResultRecorded(4, "clean", CheckOutcome.REFUTES, null, "no", null));
        assertEquals(
                "no",
                SheetEvidence.answers(SheetEvidence.of(sheet, HEAT)).get("h4").value());
        double before = HEAT.prior(HEAT.index("heat/dust"));
        assertTrue(Diagnosis.of(sheet, HEAT).ranking().probability("heat/dust") < before);
    }

    @Test
    void ruledOutTheory_fallsBehind_andStaysListed() {
        JobSheet open = sheet(
                Category.HEAT, temperature("100"), new TheoryStated("dust", "heat/dust"), new TheoryChosen(3, "", ""));
        double before = Diagnosis.of(open, HEAT).ranking().probability("heat/dust");
        Diagnosis after = Diagnosis.of(sheet(Category.HEAT, new RuledOut()), HEAT);
        assertTrue(after.ranking().probability("heat/dust") < before / 5);
        assertTrue(order(after).contains("heat/dust"));
        assertTrue(after.advice().actions().stream()
                .noneMatch(a -> a.type() == Action.Type.REPAIR && a.id().equals("heat/dust")));
    }

    private static JobSheet next(JobSheet sheet, Fact fact) {
        int entry = sheet.entries() + 1;
        Stamp stamp = new Stamp(entry, START.plusSeconds(60L * entry), "ines", Set.of(Role.TECHNICIAN));
        return sheet.with(new Entry(stamp, fact));
    }

    /** Its repair was not made: there is nothing that it was in vain. */
    @Test
    void theorySetAsideWithoutBeingWrong_isNoFailedRepair() {
        JobSheet open = sheet(
                Category.HEAT, temperature("100"), new TheoryStated("dust", "heat/dust"), new TheoryChosen(3, "", ""));
        double before = Diagnosis.of(open, HEAT).ranking().probability("heat/dust");
        JobSheet aside = next(open, new Rethought("The screw broke", false));
        assertEquals(List.of(), SheetEvidence.of(aside, HEAT).failedRepairs());
        assertEquals(before, Diagnosis.of(aside, HEAT).ranking().probability("heat/dust"));
        JobSheet wrong = next(open, new Rethought("No dust there", true));
        assertEquals(1, SheetEvidence.of(wrong, HEAT).failedRepairs().size());
        assertEquals(
                1,
                SheetEvidence.of(next(open, new VerifyFailed("Still hot")), HEAT)
                        .failedRepairs()
                        .size());
    }

    @Test
    void readingAfterTheRepair_takesTheWeightFromTheOneBefore() {
        JobSheet sheet = sheet(
                Category.HEAT, temperature("100"), new ActionSettled(1, Settlement.CARRIED_OUT, ""), temperature("71"));
        var evidence = SheetEvidence.of(sheet, HEAT);
        assertEquals(
                List.of(true, false),
                evidence.reports().stream().map(Report::superseded).toList());
        assertEquals("inside", SheetEvidence.answers(evidence).get("h1").value());
    }

    @Test
    void standingHazard_comesBeforeAnyRanking() {
        java.util.Map<Hazard, Boolean> present = new java.util.EnumMap<>(Hazard.class);
        for (Hazard hazard : Hazard.values()) {
            present.put(hazard, hazard == Hazard.SWELLING);
        }
        Diagnosis diagnosis = Diagnosis.of(sheet(Category.HEAT, new HazardsScreened(present)), HEAT);
        assertTrue(diagnosis.advice().recommended().isEmpty());
        assertEquals(List.of(), diagnosis.advice().actions());
    }

    @Test
    void everyCategoryButOther_hasItsPartOfTheCatalogue() {
        for (Category category : Category.values()) {
            assertEquals(
                    category != Category.OTHER,
                    DELIVERED.model(category.catalogue()).isPresent(),
                    category::name);
        }
        assertEquals(Category.values().length - 1, DELIVERED.models().size());
    }
}
