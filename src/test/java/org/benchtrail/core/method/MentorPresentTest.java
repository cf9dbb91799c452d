package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.BORIS;
import static org.benchtrail.core.method.Sheets.MAREK;
import static org.benchtrail.core.method.Sheets.OLE;
import static org.benchtrail.core.method.Sheets.SUE;
import static org.benchtrail.core.method.Sheets.TOM;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.MentorPresent;
import org.benchtrail.core.method.desk.PresenceEnded;
import org.benchtrail.core.method.desk.PresenceSigned;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The ways in which a trainee does dangerous work without the mentor who is to be there, each tried on the one decision. */
class MentorPresentTest {
    private static final Set<Caution> ALONE =
            Set.of(Caution.HEAT, Caution.MOVING_PARTS, Caution.LIFTING, Caution.HEIGHT, Caution.STATIC);
    private static final Actor BOTH = new Actor("tom", "Tom", Set.of(Role.TRAINEE, Role.TECHNICIAN));

    private TicketFixture desk;
    private int check;

    @BeforeEach
    void aTraineesCheck() {
        desk = Sheets.atStep(Step.TEST);
        desk.as(BORIS).records(given(TOM));
        check = desk.as(TOM).records(check("Measure 230 V at the outlet", Caution.LIVE, Caution.MAINS));
    }

    private static HandedOver given(Actor to) {
        return new HandedOver(to.account(), to.roles(), "");
    }

    private CheckPlanned check(String what, Caution... cautions) {
        return new CheckPlanned(
                desk.sheet().activeTheory().orElseThrow().entry(), what, "It is not there", true, Set.of(cautions));
    }

    private static ResultRecorded result(int of) {
        return new ResultRecorded(of, "Nothing there", CheckOutcome.SUPPORTS, null);
    }

    private static ReadingRecorded mains(String value) {
        return new ReadingRecorded("voltage", value, "V", "outlet", "multimeter", null, null, "");
    }

    private int signs(int about) {
        return desk.as(MAREK).records(new PresenceSigned(about, "tom"));
    }

    private List<String> lacking(Fact fact, Actor actor, Instant now) {
        return MentorPresent.lacking(desk.sheet(), fact, actor, now).stream()
                .map(Missing::code)
                .toList();
    }

    private void assertAlone(Fact fact) {
        assertEquals(List.of(MentorPresent.CODE), lacking(fact, TOM, desk.now()));
    }

    private void assertAccompanied(Fact fact) {
        assertEquals(List.of(), lacking(fact, TOM, desk.now()));
    }

    @ParameterizedTest
    @EnumSource(Caution.class)
    void whichCautionsAskForAMentor(Caution caution) {
        int other = desk.as(TOM).records(check("Look at it", caution));
        assertEquals(!ALONE.contains(caution), MentorPresent.isNeeded(Set.of(caution)));
        assertEquals(
                ALONE.contains(caution) ? List.of() : List.of(MentorPresent.CODE),
                lacking(result(other), TOM, desk.now()));
    }

    @Test
    void withoutAStart_isRefused_ofTraineesAlone_whateverOtherRoles() {
        assertAlone(result(check));
        assertEquals(List.of(MentorPresent.CODE), lacking(result(check), BOTH, desk.now()));
        assertEquals(List.of(), lacking(result(check), OLE, desk.now()));
    }

    @Test
    void withAStart_isAllowed_once() {
        signs(check);
        assertAccompanied(result(check));
        desk.as(TOM).forces(result(check));
        assertAlone(result(check));
        int second = desk.as(TOM).records(check("Measure 230 V again", Caution.LIVE));
        assertAlone(result(second));
        assertThrows(Invalid.class, () -> desk.as(MAREK).does(new PresenceSigned(check, "tom")));
    }

    @Test
    void aPresence_ofAnotherEntry_opensNothing() {
        int other = desk.as(TOM).records(check("Measure 230 V at the strip", Caution.LIVE));
        signs(other);
        assertAlone(result(check));
        assertAccompanied(result(other));
    }

    @Test
    void aPresence_lastsThirtyMinutes_andNotAMomentMore() {
        signs(check);
        Instant signed = desk.now();
        assertEquals(List.of(), lacking(result(check), TOM, signed.plus(Duration.ofMinutes(30))));
        assertEquals(
                List.of(MentorPresent.CODE),
                lacking(result(check), TOM, signed.plus(Duration.ofMinutes(30)).plusNanos(1000)));
    }

    @Test
    void aPresence_isOfTheEntryAsItStood() {
        signs(check);
        desk.as(TOM)
                .records(new Corrected(
                        check, "Other socket", check("Measure 230 V upstairs", Caution.LIVE, Caution.MAINS)));
        assertAlone(result(check));
        signs(check);
        assertAccompanied(result(check));
    }

    @Test
    void aPresence_isOfOneTrainee_andOfOneRound_andEndsWhenItIsEnded() {
        int start = signs(check);
        assertEquals(
                List.of(MentorPresent.CODE),
                lacking(result(check), new Actor("tia", "Tia", Set.of(Role.TRAINEE)), desk.now()));
        assertEquals(List.of("not-yours"), codes(desk.as(SUE).does(new PresenceEnded(start, true, "All well"))));
        desk.as(MAREK).records(new PresenceEnded(start, false, "Called away"));
        assertAlone(result(check));
        assertThrows(Invalid.class, () -> desk.as(MAREK).does(new PresenceEnded(start, true, "All well")));
    }

    @Test
    void whatTheResultTells_warnsToo() {
        int harmless = desk.as(TOM).records(check("Ask again"));
        assertAccompanied(result(harmless));
        assertAlone(new ResultRecorded(
                harmless, "I opened the power supply and touched the capacitor", CheckOutcome.SUPPORTS, null));
    }

    @Test
    void aLiveMeasurement_isMadeOnce_underAPresenceForIt_orForTheCheckThatItIsOf() {
        assertAlone(mains("231"));
        assertAccompanied(Sheets.temperature("70", "room"));
        signs(GuardedAct.NO_CHECK);
        assertAccompanied(mains("231"));
        assertAlone(result(check));
        int reading = desk.as(TOM).forces(mains("231"));
        assertAlone(mains("232"));
        desk.as(TOM).forces(new Corrected(reading, "It was not live", Sheets.temperature("70", "room")));
        assertAlone(mains("232"));
        signs(check);
        assertAccompanied(mains("232"));
        desk.as(TOM).forces(mains("232"));
        assertAlone(mains("233"));
        assertAccompanied(result(check));
    }

    @Test
    void aHarmlessReading_isNotCorrectedIntoALiveOne() {
        int reading = desk.as(TOM).records(Sheets.temperature("70", "room"));
        assertAlone(new Corrected(reading, "Misread", mains("230")));
        assertAccompanied(new Corrected(reading, "Misread", Sheets.temperature("71", "room")));
    }

    @Test
    void anAction_thatIsCarriedOutOrFails_needsOne_andOneThatIsNotNeededDoesNot() {
        TicketFixture plan = Sheets.atStep(Step.PLAN);
        plan.as(BORIS).records(given(TOM));
        int action = plan.as(TOM)
                .records(Sheets.action(false, false, false, false, null, null).with(Set.of(Caution.CAPACITOR)));
        desk = plan;
        assertAlone(new ActionSettled(action, Settlement.CARRIED_OUT, ""));
        assertAlone(new ActionSettled(action, Settlement.FAILED, "It broke"));
        assertAccompanied(new ActionSettled(action, Settlement.NOT_NEEDED, "It runs"));
        signs(action);
        assertAccompanied(new ActionSettled(action, Settlement.CARRIED_OUT, ""));
    }

    // ---- who is present

    private static List<String> codes(Decision decision) {
        return decision instanceof Decision.Refused refused && refused.person()
                ? refused.missing().stream().map(Missing::code).toList()
                : List.of("not a matter of who asks: " + decision);
    }

    @Test
    void nobodyIsPresent_butTheMentorWhomTheTraineeHas_andWhoHasNotWorkedHere() {
        assertEquals(List.of("not-your-role"), codes(desk.as(TOM).does(new PresenceSigned(check, "tom"))));
        assertEquals(List.of("not-your-role"), codes(desk.as(OLE).does(new PresenceSigned(check, "tom"))));
        assertEquals(List.of("not-your-trainee"), codes(desk.as(MAREK).does(new PresenceSigned(check, ""))));
        assertEquals(List.of("not-your-trainee"), codes(desk.as(MAREK).does(new PresenceSigned(check, "ines"))));
        desk.as(BORIS).records(given(MAREK));
        desk.as(MAREK).records(Sheets.temperature("70", "room"));
        desk.as(BORIS).records(given(TOM));
        assertEquals(List.of("own-work"), codes(desk.as(MAREK).does(new PresenceSigned(check, "tom"))));
    }

    @Test
    void toBePresent_isNeitherWorkNorJudging() {
        signs(check);
        assertEquals(false, desk.sheet().isHand("marek"));
        assertEquals(false, desk.sheet().isJudge("marek"));
        desk.as(BORIS).records(given(MAREK));
    }

    @Test
    void whatIsNotToBeCarriedOut_isNoActToBePresentAt() {
        int theory = desk.sheet().activeTheory().orElseThrow().entry();
        assertThrows(Invalid.class, () -> desk.as(MAREK).does(new PresenceSigned(theory, "tom")));
        assertThrows(Invalid.class, () -> desk.as(MAREK).does(new PresenceSigned(9_999, "tom")));
    }
}
