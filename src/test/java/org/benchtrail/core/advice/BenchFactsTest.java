package org.benchtrail.core.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.judging.Soak;
import org.benchtrail.core.bench.storage.DriveFit;
import org.benchtrail.core.bench.storage.DriveHealth;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.identify.BenchFigure;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.SoakTimeReckoned;
import org.benchtrail.core.method.plan.Fit;
import org.benchtrail.core.method.plan.PartFitChecked;
import org.benchtrail.core.method.verify.SoakRun;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class BenchFactsTest {
    private static <I extends Record> List<Fact> facts(Calculation<I> calculation, I input, @Nullable Integer action) {
        return BenchFacts.of(calculation, input, "{}", calculation.calculate(input), action, 41);
    }

    private static <F> List<F> of(Class<F> kind, List<Fact> facts) {
        return facts.stream().filter(kind::isInstance).map(kind::cast).toList();
    }

    @Test
    void result_isKeptWithItsFiguresAndVersion() {
        Calculation<Soak.Input> soak = Soak.CALCULATION;
        BenchResultAttached kept = of(BenchResultAttached.class, facts(soak, new Soak.Input(24, 5, 48.0), null))
                .get(0);
        assertEquals("soak", kept.calculation());
        assertEquals(soak.version(), kept.version());
        assertEquals(
                new BenchFigure("Time to run clean", "71.9", "h"),
                kept.figures().get(0));
    }

    /** t = T ln(1 / alpha) = 24 h x ln 20 = 71.9 h: every begun minute counts. */
    @Test
    void soakTime_isRoundedUp_andNoRunIsRecorded_whichTheServerCountsItself() {
        Calculation<Soak.Input> soak = Soak.CALCULATION;
        int needed = (int) Math.ceil(24 * 60 * Math.log(20));
        List<Fact> atTest = facts(soak, new Soak.Input(24, 5, 48.0), null);
        assertEquals(needed, of(SoakTimeReckoned.class, atTest).get(0).minutes());
        assertEquals(List.of(), of(SoakRun.class, atTest));
    }

    @Test
    void partCheck_fillsTheFitOfItsAction() {
        Calculation<DriveFit.Input> fit = DriveFit.CALCULATION;
        DriveFit.Input sas = fit.example();
        PartFitChecked fits = of(PartFitChecked.class, facts(fit, sas, 23)).get(0);
        assertEquals(Fit.FITS, fits.fit());
        assertEquals(23, fits.action());
        assertEquals(41, fits.result(), "the result of the bench that says so");
        PartFitChecked refused =
                of(PartFitChecked.class, facts(fit, sata(sas), 23)).get(0);
        assertEquals(Fit.DOES_NOT_FIT, refused.fit());
        assertTrue(refused.basis().contains("Not met: interface, mixing inside an array."), refused::basis);
        for (String rule : List.of("interface", "mixing inside an array", "form factor", "sector format", "blocks")) {
            assertTrue(refused.basis().contains(rule), rule);
        }
        assertEquals(List.of(), of(PartFitChecked.class, facts(fit, sas, null)));
    }

    private static DriveFit.Input sata(DriveFit.Input sas) {
        return new DriveFit.Input(
                sas.bay(),
                sas.bayForm(),
                sas.bayHeight(),
                sas.carrier(),
                sas.bayPower(),
                sas.member(),
                sas.oldInterface(),
                sas.oldSectors(),
                sas.oldMedia(),
                sas.oldSpeed(),
                sas.oldBlocks(),
                DriveFit.Interface.SATA,
                sas.newForm(),
                sas.newHeight(),
                sas.newSectors(),
                sas.newMedia(),
                sas.newSpeed(),
                sas.newLabel(),
                sas.newBlocks(),
                sas.newPower(),
                sas.siteList());
    }

    @Test
    void alarmedDrive_becomesADriveFailureFinding() {
        Calculation<DriveHealth.Input> health = DriveHealth.CALCULATION;
        List<Fact> facts = facts(health, health.example(), null);
        boolean alarmed = health.calculate(health.example()).cautions().contains("DATA_LOSS");
        assertEquals(
                alarmed ? List.of(true) : List.of(),
                of(FindingRecorded.class, facts).stream()
                        .map(FindingRecorded::driveFailure)
                        .toList());
        assertTrue(alarmed, "the example is one that calls for a backup");
    }

    private static <I extends Record> String meaning(Calculation<I> calculation, I input, boolean part) {
        return BenchFacts.meaning(calculation.id(), calculation.calculate(input), part);
    }

    @Test
    void meaning_namesTheRequirementThatTheResultMeets() {
        DriveFit.Input fits = DriveFit.CALCULATION.example();
        assertTrue(meaning(DriveFit.CALCULATION, fits, true).contains("fits, which answers the requirement"));
        assertTrue(meaning(DriveFit.CALCULATION, fits, false).contains("evidence"));
        assertTrue(meaning(DriveHealth.CALCULATION, DriveHealth.CALCULATION.example(), false)
                .contains("Data at risk: how they are protected"));
        assertTrue(meaning(Soak.CALCULATION, Soak.CALCULATION.example(), false)
                .contains("An intermittent fault has run clean for the soak time"));
    }

    /** What is said of an attached result agrees with the facts that it becomes. */
    @Test
    void meaning_agreesWithTheFacts() {
        for (Calculation<?> calculation : Bench.all()) {
            assertAgree(calculation, false);
            assertAgree(calculation, true);
        }
    }

    private static <I extends Record> void assertAgree(Calculation<I> calculation, boolean part) {
        List<Fact> facts = facts(calculation, calculation.example(), part ? 23 : null);
        String meaning = meaning(calculation, calculation.example(), part);
        assertEquals(
                !of(PartFitChecked.class, facts).isEmpty(), meaning.contains("part "), calculation + ": " + meaning);
        assertEquals(!of(FindingRecorded.class, facts).isEmpty(), meaning.contains("failing drive"), meaning);
        assertEquals(!of(SoakTimeReckoned.class, facts).isEmpty(), meaning.contains("run clean for"), meaning);
    }
}
