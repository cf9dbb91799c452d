package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.desk.Waived;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How long a waiver lasts. */
class WaiverTest {
    private static Requirement.State state(TicketFixture desk, String code) {
        return status(desk, code).state();
    }

    private static void meetAllBut(TicketFixture desk, String code) {
        Method.gate(desk.sheet(), desk.policy(), desk.now()).stream()
                .map(Requirement.Status::requirement)
                .filter(r -> !r.code().equals(code))
                .forEach(r -> meet(desk, r));
    }

    private static void waives(TicketFixture desk, String code) {
        assertEquals(Requirement.State.MISSING, state(desk, code));
        desk.as(SUE).records(new Waived(code, "Not possible on this device"));
        assertEquals(Requirement.State.WAIVED, state(desk, code));
    }

    @ParameterizedTest
    @ValueSource(strings = {"changes-asked", "reproduced", "logs-reviewed"})
    void waiverGivenBeforeAReopening_isGoneAfterIt(String code) {
        TicketFixture desk = plain();
        waives(desk, code);
        meetAllBut(desk, code);
        desk.as(INES).records(new Advanced());
        bring(desk, Step.DOCUMENT);
        meetAll(desk);
        desk.as(INES).records(new Closed());
        desk.as(INES).records(new Reopened("It is back"));
        waives(desk, code);
    }

    @Test
    void waiverForAPlan_isGoneWithItsRound() {
        TicketFixture desk = atStep(Step.PLAN);
        waives(desk, "maker-consulted");
        desk.as(INES).records(new Rethought("The screw broke", false));
        bring(desk, Step.PLAN);
        waives(desk, "maker-consulted");
    }

    @Test
    void waiverForIdentify_lastsThroughTheRounds() {
        TicketFixture desk = plain();
        desk.as(INES).records(drive(true));
        waives(desk, "data-protected");
        meetAllBut(desk, "data-protected");
        desk.as(INES).records(new Advanced());
        bring(desk, Step.PLAN);
        desk.as(INES).records(new Rethought("The screw broke", false));
        assertEquals(2, desk.sheet().round());
        assertEquals(Requirement.State.WAIVED, state(desk, "data-protected"));
    }
}
