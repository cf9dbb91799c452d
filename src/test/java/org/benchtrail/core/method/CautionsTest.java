package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.INES;
import static org.benchtrail.core.method.Sheets.action;
import static org.benchtrail.core.method.Sheets.atStep;
import static org.benchtrail.core.method.Sheets.carriedOut;
import static org.benchtrail.core.method.Sheets.invasive;
import static org.benchtrail.core.method.Sheets.result;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.diagnosis.Danger;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.measure.Limit;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.MakerConsulted;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Ways round the cautions, each of which has to stay shut. */
class CautionsTest {
    /** What a server knows that has a catalogue with one dangerous finding and a dangerous repair. */
    private record Known(Category category, Set<Danger> finding, Set<Danger> repair) implements ServerKnowledge {
        @Override
        public Actor worker(String account) {
            return INES;
        }

        @Override
        public int fileSize(String sha256) {
            return 1;
        }

        @Override
        public Policy policy() {
            return Policy.usual();
        }

        @Override
        public void requireOriginal(String ticket) {}

        @Override
        public Set<Caution> cautionsOfFinding(String id) {
            return Caution.against(finding);
        }

        @Override
        public Optional<Limit> limitOf(String id) {
            return Optional.empty();
        }

        @Override
        public Set<Caution> cautionsOfRepair() {
            return Caution.against(repair);
        }
    }

    private static Known nothing(Category category) {
        return new Known(category, Set.of(), Set.of());
    }

    private static CheckPlanned check(String what, String expectation) {
        return new CheckPlanned(1, what, expectation, false, Set.of());
    }

    private static CheckPlanned completed(CheckPlanned check, ServerKnowledge server) {
        return (CheckPlanned) check.completedBy(server);
    }

    private static ActionPlanned planned(String what, String wayBack, ServerKnowledge server) {
        return (ActionPlanned)
                new ActionPlanned(what, "It works", "Nobody", wayBack, false, false, false, false, null, null, Set.of())
                        .completedBy(server);
    }

    // ---- what raises them

    @Test
    void checkThatIsNotTicked_isGuardedByItsWords() {
        CheckPlanned check = completed(check("Measure 230 V at the socket", "It is there"), nothing(Category.OTHER));
        assertTrue(check.invasive());
        assertTrue(check.cautions().containsAll(Set.of(Caution.LIVE, Caution.MAINS)), check::toString);
    }

    @Test
    void checkWhoseExpectationSaysWhatIsDone_isGuarded() {
        CheckPlanned check = completed(
                check("Look for the cause", "After the supply was opened a fuse is black"), nothing(Category.OTHER));
        assertTrue(check.cautions().contains(Caution.CAPACITOR), check::toString);
    }

    @Test
    void checkThatStopsSomething_isGuardedThoughItRaisesNothing() {
        assertTrue(completed(check("Restart the print service", "It prints"), nothing(Category.PRINTING))
                .invasive());
        assertEquals(
                false,
                completed(check("Ask when it began", "Monday"), nothing(Category.POWER))
                        .invasive());
    }

    @Test
    void checkOfADangerousFinding_isGuardedWhateverItSays() {
        CheckPlanned check = new CheckPlanned(1, "As the catalogue says", "Low", false, Set.of(), "p3", null);
        ServerKnowledge server = new Known(Category.OTHER, Set.of(Danger.LIVE_MEASUREMENT), Set.of());
        assertEquals(Set.of(Caution.LIVE), completed(check, server).cautions());
        assertTrue(completed(check, server).invasive());
    }

    @Test
    void action_isGuardedByItsWayBack_byTheRepair_andByTheCategory() {
        assertEquals(
                Set.of(Caution.MAINS),
                planned("Do it", "Pull the plug", nothing(Category.OTHER)).cautions());
        assertEquals(
                Set.of(Caution.DATA_LOSS),
                planned("Do it", "Undo it", nothing(Category.ARRAY)).cautions());
        ServerKnowledge dangerous = new Known(Category.OTHER, Set.of(), Set.of(Danger.LASER));
        assertEquals(
                Set.of(Caution.LASER), planned("Do it", "Undo it", dangerous).cautions());
    }

    @ParameterizedTest
    @CsvSource({"POWER, MAINS", "BATTERY, BATTERY", "STORAGE, DATA_LOSS", "ARRAY, DATA_LOSS", "HEAT,", "OTHER,"})
    void category_raisesItsCaution_forWhatTouchesSomething_andForNothingElse(
            Category category, @Nullable Caution caution) {
        Set<Caution> raised = caution == null ? Set.of() : Set.of(caution);
        CheckPlanned touching = new CheckPlanned(1, "As the catalogue says", "Low", true, Set.of());
        assertEquals(raised, completed(touching, nothing(category)).cautions());
        assertEquals(raised, planned("Do it", "Undo it", nothing(category)).cautions());
        assertEquals(
                Set.of(),
                completed(check("Ask when it began", "Monday"), nothing(category))
                        .cautions());
    }

    @Test
    void everyCaution_endsWithTheLastWord() {
        for (Caution caution : Caution.values()) {
            assertEquals(caution.advice() + " " + Caution.lastWord(), caution.text());
            assertTrue(!Caution.lastWord().isBlank());
        }
    }

    @ParameterizedTest
    @EnumSource(Danger.class)
    void everyDanger_raisesSomething(Danger danger) {
        assertTrue(!Caution.against(danger).isEmpty());
    }

    // ---- an act of its own, before the deed

    @Test
    void acknowledgedAndDoneInOneRequest_isRefused_forACheck() {
        TicketFixture desk = atStep(Step.TEST);
        int check = desk.as(INES).records(invasive(desk.latest(TheoryStated.class), Caution.MAINS));
        Fact taken = new CautionsAcknowledged(check, Set.of(Caution.MAINS));
        Fact seen = result(check, CheckOutcome.SUPPORTS);
        assertEquals(
                "invasive-guarded", desk.as(INES).together(taken, seen).get(0).code());
        desk.as(INES).records(seen); // the acknowledgement stands, and this is another request
    }

    @Test
    void acknowledged_isNoLongerAskedForOnTheNextPage() {
        TicketFixture desk = atStep(Step.TEST);
        int check = desk.as(INES).records(invasive(desk.latest(TheoryStated.class), Caution.MAINS, Caution.STATIC));
        StandingFact<CheckPlanned> planned = desk.sheet().at(check, CheckPlanned.class, "check");
        Set<Caution> owed = planned.fact().cautions();
        assertEquals(owed, CautionsAcknowledged.open(desk.sheet(), planned, owed));
        desk.as(INES).records(new CautionsAcknowledged(check, Set.of(Caution.STATIC)));
        assertEquals(Set.of(Caution.MAINS), CautionsAcknowledged.open(desk.sheet(), planned, owed));
    }

    @Test
    void acknowledgedAndDoneInOneRequest_isRefused_forAnAction() {
        for (Settlement how : List.of(Settlement.CARRIED_OUT, Settlement.FAILED)) {
            TicketFixture desk = atStep(Step.PLAN);
            int action = desk.as(INES).records(action(false, false, false, false, null, null, Caution.LIFTING));
            desk.as(INES).records(new MakerConsulted(true, "Manual"));
            Fact taken = new CautionsAcknowledged(action, Set.of(Caution.LIFTING));
            Fact done = Sheets.settled(action, how);
            assertEquals(
                    "cautions-taken", desk.as(INES).together(taken, done).get(0).code());
            desk.as(INES).records(done);
        }
    }

    @Test
    void resultThatTellsOfMore_waitsForTheCautionsOfThat() {
        TicketFixture desk = atStep(Step.TEST);
        int check = desk.as(INES).records(Sheets.check(desk.latest(TheoryStated.class)));
        Fact told = new ResultRecorded(check, "Opened the supply and measured 325 V", CheckOutcome.SUPPORTS, null);
        desk.as(INES).lacks("invasive-guarded", told);
        desk.as(INES).records(new CautionsAcknowledged(check, Set.of(Caution.LIVE, Caution.MAINS, Caution.CAPACITOR)));
        desk.as(INES).records(told);
    }

    @Test
    void settlementThatTellsOfMore_waitsForTheCautionsOfThat() {
        TicketFixture desk = atStep(Step.PLAN);
        int action = desk.as(INES).records(Sheets.anyAction());
        desk.as(INES).records(new MakerConsulted(true, "Manual"));
        Fact told = new org.benchtrail.core.method.plan.ActionSettled(
                action, Settlement.CARRIED_OUT, "Swapped the supply as well");
        desk.as(INES).lacks("cautions-taken", told);
        desk.as(INES).records(new CautionsAcknowledged(action, Set.of(Caution.MAINS, Caution.CAPACITOR)));
        desk.as(INES).records(told);
    }

    @Test
    void sameCaution_isAskedOnceForTheActionsOfARound() {
        TicketFixture desk = atStep(Step.PLAN);
        int first = desk.as(INES).records(action(false, false, false, false, null, null, Caution.LIFTING));
        int second =
                desk.as(INES).records(action(false, false, false, false, null, null, Caution.LIFTING, Caution.HEAT));
        desk.as(INES).records(new MakerConsulted(true, "Manual"));
        desk.as(INES).records(new CautionsAcknowledged(first, Set.of(Caution.LIFTING)));
        desk.as(INES).lacks("cautions-taken", carriedOut(first)); // the other's are open
        desk.as(INES).records(new CautionsAcknowledged(second, Set.of(Caution.HEAT)));
        desk.as(INES).records(carriedOut(first));
        int third = desk.as(INES).records(action(false, false, false, false, null, null, Caution.LIFTING));
        desk.as(INES).lacks("cautions-taken", carriedOut(third)); // planned after it was taken
    }

    // ---- corrected away

    @Test
    void correction_takesNoCautionAway_beforeOrAfterItWasAcknowledged() {
        TicketFixture desk = atStep(Step.PLAN);
        ActionPlanned heavy = action(false, false, false, false, null, null, Caution.LIFTING);
        ActionPlanned light = action(false, false, false, false, null, null);
        int action = desk.as(INES).records(heavy);
        desk.as(INES).lacks("cautions-kept", new Corrected(action, "It is light", light));
        desk.as(INES).records(new CautionsAcknowledged(action, Set.of(Caution.LIFTING)));
        desk.as(INES).lacks("cautions-kept", new Corrected(action, "It is light", light));
        desk.as(INES).records(new Corrected(action, "A word", heavy));
        desk.as(INES).records(new MakerConsulted(true, "Manual"));
        desk.as(INES).lacks("cautions-taken", carriedOut(action)); // it has changed since
    }

    @Test
    void correctionOfACheck_takesNoCautionAway() {
        TicketFixture desk = atStep(Step.TEST);
        int theory = desk.latest(TheoryStated.class);
        int check = desk.as(INES).records(invasive(theory, Caution.STATIC));
        desk.as(INES).lacks("cautions-kept", new Corrected(check, "Less of it", invasive(theory)));
    }

    // ---- measured without a check

    private static ReadingRecorded reading(String quantity, String value, String point, String instrument) {
        return new ReadingRecorded(quantity, value, "V", point, instrument, null, null, "");
    }

    @Test
    void mainsReading_waitsForTheCautionOfLiveMeasurements() {
        for (Step step : List.of(Step.IDENTIFY, Step.VERIFY)) {
            TicketFixture desk = atStep(step);
            Fact live = reading("voltage", "231", "wall", "bench meter");
            desk.as(INES).lacks("live-guarded", live);
            Fact taken = new CautionsAcknowledged(1, Set.of(Caution.LIVE));
            assertEquals(
                    "live-guarded", desk.as(INES).together(taken, live).get(0).code());
            desk.as(INES).records(live);
            desk.as(INES).records(reading("mains voltage", "12", "outlet", "bench meter"));
        }
    }

    @Test
    void readingOfALowVoltage_orOffADisplay_isNoLiveMeasurement() {
        TicketFixture desk = atStep(Step.IDENTIFY);
        desk.as(INES).records(reading("+12 V rail", "11.9", "plug of the drive", "bench meter"));
        desk.as(INES).records(reading("mains voltage", "231", "UPS display", "UPS display"));
    }

    @Test
    void findingThatOnlyALiveMeasurementShows_waitsForItsCaution() {
        TicketFixture desk = atStep(Step.IDENTIFY);
        String question = "outlet tester: earth missing or wires changed over";
        desk.as(INES).lacks("live-guarded", new FindingAnswered("p14", question, "yes", Source.SEEN));
        desk.as(INES).records(new FindingAnswered("p14", question, "yes", Source.REPORTED));
        desk.as(INES).records(new FindingAnswered("p14", question, "unknown", Source.SEEN));
        desk.as(INES).records(new CautionsAcknowledged(1, Set.of(Caution.LIVE)));
        desk.as(INES).records(new FindingAnswered("p14", question, "yes", Source.SEEN));
    }
}
