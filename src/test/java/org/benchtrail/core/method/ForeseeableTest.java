package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.INES;
import static org.benchtrail.core.method.Sheets.MAREK;
import static org.benchtrail.core.method.Sheets.TOM;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.desk.ForecastCommitted;
import org.benchtrail.core.method.desk.ForecastKind;
import org.benchtrail.core.method.desk.Foreseeable;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ExpectedValue;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.verify.SymptomRechecked;
import org.benchtrail.core.training.ChanceContent;
import org.benchtrail.core.training.ChanceOutcome;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One chance of one thing: made only before it can be seen, and held only against what is objective. */
class ForeseeableTest {
    private static final String BOUND = "ab".repeat(32);

    private static ForecastCommitted of(ForecastKind kind, Integer about, JobSheet sheet) {
        return new ForecastCommitted(kind, about, sheet.round(), BOUND);
    }

    private static ForecastCommitted finding(String id, JobSheet sheet) {
        return new ForecastCommitted(ForecastKind.FINDING, null, sheet.round(), BOUND, id);
    }

    private static CheckPlanned measured(int theory, String upper) {
        return new CheckPlanned(
                theory,
                "Measure it under load",
                "It stays below",
                false,
                Set.of(),
                null,
                new ExpectedValue(null, upper, "°C"));
    }

    /** A trainee's ticket at Test, with a check that is not made. */
    private static TicketFixture testing() {
        TicketFixture desk = Sheets.demandingAtStep(Step.TEST);
        return desk;
    }

    private static int theory(TicketFixture desk) {
        return desk.sheet().activeTheory().orElseThrow().entry();
    }

    private static ChanceContent said(ForecastKind kind, String about, String value) {
        return new ChanceContent("40718-6", 1, kind, about, value, 70);
    }

    @Test
    void aCheck_isForecastOnce_beforeItsResult_byTheTraineeWhoHasTheTicket() {
        TicketFixture desk = testing();
        int check = desk.as(TOM).records(measured(theory(desk), "90"));
        ForecastCommitted forecast = of(ForecastKind.CHECK, check, desk.sheet());
        for (Actor other : List.of(INES, MAREK)) {
            assertFalse(desk.as(other).may(forecast), other.account());
        }
        assertFalse(desk.as(TOM).may(of(ForecastKind.CHECK, 1, desk.sheet())), "no check");
        assertFalse(desk.as(TOM).may(of(ForecastKind.ACTION, check, desk.sheet())), "no action");
        desk.as(TOM).records(forecast);
        desk.as(TOM).lacks("forecast-not-due", forecast);

        // a technician's own ticket asks for none
        TicketFixture technicians = Sheets.atStep(Step.TEST);
        int planned = technicians.as(INES).records(Sheets.check(theory(technicians)));
        technicians.as(INES).lacks("forecast-not-due", of(ForecastKind.CHECK, planned, technicians.sheet()));

        int late = desk.as(TOM).records(Sheets.check(theory(desk)));
        desk.as(TOM).records(Sheets.result(late, CheckOutcome.SUPPORTS));
        desk.as(TOM).lacks("forecast-not-due", of(ForecastKind.CHECK, late, desk.sheet()));
    }

    @Test
    void aFinding_isForecastOnce_beforeAnythingSaysAnythingOfIt() {
        TicketFixture desk = testing();
        desk.as(TOM).records(finding("h3", desk.sheet()));
        desk.as(TOM).lacks("forecast-not-due", finding("h3", desk.sheet()));
        desk.as(TOM).records(new FindingAnswered("h4", "Does it spin?", "unknown", Source.SEEN));
        desk.as(TOM).lacks("forecast-not-due", finding("h4", desk.sheet()));
        assertTrue(Foreseeable.of(desk.sheet(), TOM).isOpen("h5"));
        assertFalse(Foreseeable.of(desk.sheet(), INES).isOffered());
    }

    /** At, under and over the bound; and a bound that was moved after the forecast is another expectation. */
    @ParameterizedTest
    @CsvSource({"89, true", "90, true", "91, false"})
    void aCheck_isHeldAgainstItsReading_notAgainstWords(String value, boolean came) {
        TicketFixture desk = testing();
        int check = desk.as(TOM).records(measured(theory(desk), "90"));
        ChanceContent said = said(ForecastKind.CHECK, String.valueOf(check), "");
        int forecast = desk.as(TOM).records(of(ForecastKind.CHECK, check, desk.sheet()));
        assertEquals(Optional.empty(), ChanceOutcome.of(desk.sheet(), said, forecast, true), "no result yet");
        int reading = desk.as(TOM)
                .records(new ReadingRecorded(
                        "temperature", value, "°C", "processor", "sensor", null, "95", "nameplate"));
        desk.as(TOM)
                .records(new ResultRecorded(
                        check, "Read off", came ? CheckOutcome.SUPPORTS : CheckOutcome.REFUTES, reading, null, null));
        assertEquals(Optional.of(came), ChanceOutcome.of(desk.sheet(), said, forecast, false));
        assertEquals(
                Optional.empty(),
                ChanceOutcome.of(desk.sheet(), said, desk.sheet().entries(), true),
                "too late");

        int words = desk.as(TOM).records(Sheets.check(theory(desk)));
        int other = desk.as(TOM).records(of(ForecastKind.CHECK, words, desk.sheet()));
        desk.as(TOM).records(Sheets.result(words, CheckOutcome.SUPPORTS));
        assertEquals(
                Optional.empty(),
                ChanceOutcome.of(desk.sheet(), said(ForecastKind.CHECK, String.valueOf(words), ""), other, true));
    }

    @Test
    void aFinding_isHeldAgainstTheFirstValueAfterIt() {
        TicketFixture desk = testing();
        int forecast = desk.as(TOM).records(finding("h3", desk.sheet()));
        desk.as(TOM).records(new FindingAnswered("h3", "Is there dust?", "unknown", Source.SEEN));
        assertEquals(Optional.empty(), outcome(desk, "yes", forecast));
        desk.as(TOM).records(new FindingAnswered("h3", "Is there dust?", "yes", Source.SEEN));
        assertEquals(Optional.of(true), outcome(desk, "yes", forecast));
        assertEquals(Optional.of(false), outcome(desk, "no", forecast));
        assertEquals(Optional.empty(), outcome(desk, "yes", desk.sheet().entries()));
    }

    private static Optional<Boolean> outcome(TicketFixture desk, String value, int forecast) {
        return ChanceOutcome.of(desk.sheet(), said(ForecastKind.FINDING, "h3", value), forecast, false);
    }

    /** Only once the ticket is accepted; by the first look at each symptom before anything else was done. */
    @Test
    void anAction_isHeldAgainstTheSymptomsAfterIt() {
        TicketFixture desk = Sheets.demandingAtStep(Step.PLAN);
        int action = desk.as(TOM).records(Sheets.anyAction());
        int forecast = desk.as(TOM).records(of(ForecastKind.ACTION, action, desk.sheet()));
        desk.as(TOM).lacks("forecast-not-due", of(ForecastKind.ACTION, action, desk.sheet()));
        ChanceContent said = said(ForecastKind.ACTION, String.valueOf(action), "");
        int symptom = 2;
        desk.as(TOM).forces(Sheets.settled(action, Settlement.CARRIED_OUT));
        assertEquals(Optional.empty(), ChanceOutcome.of(desk.sheet(), said, forecast, true), "nobody looked");
        desk.as(TOM).forces(new SymptomRechecked(symptom, false, "Ran it"));
        desk.as(TOM).forces(new SymptomRechecked(symptom, true, "Ran it again"));
        assertEquals(Optional.of(false), ChanceOutcome.of(desk.sheet(), said, forecast, true), "the first look");
        assertEquals(Optional.empty(), ChanceOutcome.of(desk.sheet(), said, forecast, false), "not accepted");
        desk.as(TOM).forces(Sheets.settled(action + 1000, Settlement.CARRIED_OUT));
        desk.as(TOM).forces(new SymptomRechecked(symptom + 1, false, "Ran it"));
        assertEquals(Optional.of(false), ChanceOutcome.of(desk.sheet(), said, forecast, true));
    }

    /** One byte more in any part is another commitment; so it cannot be moved to another ticket, thing or chance. */
    @Test
    void everyPart_isBound() {
        byte[] salt = new byte[32];
        ChanceContent said = said(ForecastKind.FINDING, "h3", "yes");
        assertEquals(
                "{\"about\":\"h3\",\"chance\":\"0.70\",\"kind\":\"finding\",\"round\":1,\"ticket\":\"40718-6\",\"v\":1,"
                        + "\"value\":\"yes\"}",
                said.canonical());
        Set<String> all = Set.of(
                said.commitment(salt).toString(),
                new ChanceContent("40719-4", 1, ForecastKind.FINDING, "h3", "yes", 70)
                        .commitment(salt)
                        .toString(),
                new ChanceContent("40718-6", 2, ForecastKind.FINDING, "h3", "yes", 70)
                        .commitment(salt)
                        .toString(),
                new ChanceContent("40718-6", 1, ForecastKind.FINDING, "h4", "yes", 70)
                        .commitment(salt)
                        .toString(),
                new ChanceContent("40718-6", 1, ForecastKind.FINDING, "h3", "no", 70)
                        .commitment(salt)
                        .toString(),
                new ChanceContent("40718-6", 1, ForecastKind.FINDING, "h3", "yes", 75)
                        .commitment(salt)
                        .toString());
        assertEquals(6, all.size());
        for (int percent : new int[] {0, 2, 73, 100}) {
            assertThrows(Invalid.class, () -> new ChanceContent("40718-6", 1, ForecastKind.CHECK, "3", "", percent));
        }
        assertThrows(Invalid.class, () -> new ChanceContent("40718-6", 1, ForecastKind.CAUSES, "3", "", 70));
        assertThrows(Invalid.class, () -> new ChanceContent("40718-6", 1, ForecastKind.FINDING, "h3", "", 70));
    }
}
