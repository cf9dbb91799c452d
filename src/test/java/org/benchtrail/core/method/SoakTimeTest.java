package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.SoakTimeReckoned;
import org.benchtrail.core.method.verify.SoakRun;
import org.junit.jupiter.api.Test;

/** How long an intermittent fault has to run clean: as policy says, or longer if it was calculated. */
class SoakTimeTest {
    private static final int BY_POLICY = 2_880;

    private static TicketFixture intermittent() {
        TicketFixture desk = atStep(Step.VERIFY);
        desk.as(INES).records(new ReproductionTried(Reproduction.INTERMITTENT, "Now and then"));
        desk.passes(Duration.ofDays(30));
        return desk;
    }

    private static String lacking(TicketFixture desk) {
        return sentence(desk, "soak-time-passed");
    }

    private static void needs(int minutes, TicketFixture desk) {
        assertEquals(minutes, Method.soakMinutes(desk.sheet(), desk.policy()));
        desk.as(INES).records(new SoakRun(minutes - 1, false, ""));
        assertEquals(
                "The fault was intermittent: let it run " + minutes / 60 + " h without recurring (so far "
                        + (minutes - 1) / 60 + " h " + (minutes - 1) % 60 + " min).",
                lacking(desk));
        desk.as(INES).records(new SoakRun(1, false, ""));
        assertEquals("", lacking(desk));
    }

    @Test
    void withoutACalculation_policyDecides() {
        needs(BY_POLICY, intermittent());
    }

    @Test
    void longerCalculation_lengthensIt() {
        TicketFixture desk = intermittent();
        desk.as(INES).records(new SoakTimeReckoned(4_000, "Three times the mean time between failures"));
        needs(4_000, desk);
    }

    @Test
    void shorterCalculation_doesNotShortenIt() {
        TicketFixture desk = intermittent();
        desk.as(INES).records(new SoakTimeReckoned(BY_POLICY - 1, "Once in a while"));
        needs(BY_POLICY, desk);
    }

    @Test
    void latestCalculation_counts() {
        TicketFixture desk = intermittent();
        desk.as(INES).records(new SoakTimeReckoned(9_000, "A first guess"));
        desk.as(INES).records(new SoakTimeReckoned(3_000, "With the log of a year"));
        needs(3_000, desk);
    }

    @Test
    void calculationMadeAfterTheRun_asksForTheRest() {
        TicketFixture desk = intermittent();
        desk.as(INES).records(new SoakRun(BY_POLICY, false, ""));
        assertEquals("", lacking(desk));
        desk.as(INES).records(new SoakTimeReckoned(BY_POLICY + 60, "With the log of a year"));
        assertEquals(
                "The fault was intermittent: let it run 49 h without recurring (so far 48 h 0 min).", lacking(desk));
    }

    @Test
    void runsOfAnEarlierRound_doNotCount() {
        TicketFixture desk = intermittent();
        desk.as(INES).records(new SoakRun(95, false, ""));
        assertEquals(
                "The fault was intermittent: let it run 48 h without recurring (so far 1 h 35 min).", lacking(desk));
        desk.as(INES).records(new VerifyFailed("It is back"));
        bring(desk, Step.VERIFY);
        assertEquals(
                "The fault was intermittent: let it run 48 h without recurring (so far 0 h 0 min).", lacking(desk));
    }
}
