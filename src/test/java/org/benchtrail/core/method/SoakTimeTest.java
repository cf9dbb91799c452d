package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import org.benchtrail.core.method.desk.LesseningAgreed;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.SoakTimeReckoned;
import org.benchtrail.core.method.verify.SoakRun;
import org.benchtrail.core.method.verify.SoakStarted;
import org.benchtrail.core.method.verify.SoakTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How long an intermittent fault has to run clean: as policy says, or longer if it was calculated. */
class SoakTimeTest {
    private static final int BY_POLICY = 2_880;

    private static TicketFixture intermittent() {
        TicketFixture desk = atStep(Step.VERIFY);
        desk.as(INES).records(new ReproductionTried(Reproduction.INTERMITTENT, "Now and then"));
        desk.as(INES).records(new SoakStarted(""));
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
                "The fault was intermittent: let it run " + SoakTime.words(minutes) + " without recurring (so far "
                        + SoakTime.words(minutes - 1) + ").",
                lacking(desk));
        desk.as(INES).records(new SoakRun(1, false, ""));
        assertEquals("", lacking(desk));
    }

    /** 71 h 54 min are asked for, and a run of 71 h 54 min is enough: what is said is what is held to. */
    @ParameterizedTest
    @CsvSource({"0,0 h", "59,0 h 59 min", "60,1 h", "4314,71 h 54 min", "525600,8760 h"})
    void time_isSaidToTheMinute(int minutes, String words) {
        assertEquals(words, SoakTime.words(minutes));
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
    void latestCalculation_counts_aShorterOneWhenItIsAgreedTo() {
        TicketFixture desk = intermittent();
        desk.as(INES).records(new SoakTimeReckoned(9_000, "A first guess"));
        int shorter = desk.as(INES).records(new SoakTimeReckoned(3_000, "With the log of a year"));
        assertEquals(9_000, Method.soakMinutes(desk.sheet(), desk.policy()));
        desk.as(SUE).records(new LesseningAgreed(shorter, "The log says so"));
        needs(3_000, desk);
    }

    @Test
    void calculationMadeAfterTheRun_asksForTheRest() {
        TicketFixture desk = intermittent();
        desk.as(INES).records(new SoakRun(BY_POLICY, false, ""));
        assertEquals("", lacking(desk));
        desk.as(INES).records(new SoakTimeReckoned(BY_POLICY + 60, "With the log of a year"));
        assertEquals("The fault was intermittent: let it run 49 h without recurring (so far 48 h).", lacking(desk));
    }

    @Test
    void runsOfAnEarlierRound_doNotCount() {
        TicketFixture desk = intermittent();
        desk.as(INES).records(new SoakRun(95, false, ""));
        assertEquals(
                "The fault was intermittent: let it run 48 h without recurring (so far 1 h 35 min).", lacking(desk));
        desk.as(INES).records(new VerifyFailed("It is back"));
        bring(desk, Step.VERIFY);
        assertEquals("The fault was intermittent: let it run 48 h without recurring (so far 0 h).", lacking(desk));
    }
}
