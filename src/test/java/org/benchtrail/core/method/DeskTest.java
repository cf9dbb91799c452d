package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.Escalated;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Held;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.Refused;
import org.benchtrail.core.method.desk.Resumed;
import org.benchtrail.core.method.desk.Returned;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.IdentifyRequirement;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.Fit;
import org.benchtrail.core.method.plan.MakerConsulted;
import org.benchtrail.core.method.plan.PartFitChecked;
import org.benchtrail.core.method.plan.PlanDeclined;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.core.method.verify.PreventionConsidered;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Order of facts, holds, the queue, and the numbering of entries. */
class DeskTest {
    @Test
    void identifyFactsOfALaterStep_areTakenAndMarkedLate() {
        TicketFixture desk = atStep(Step.TEST);
        desk.as(INES).records(anySymptom(false));
        StandingFact<?> late = desk.sheet().latest(SymptomRecorded.class).orElseThrow();
        assertTrue(late.late());
        assertEquals(Step.TEST, late.during());
        assertFalse(desk.sheet().all(SymptomRecorded.class).get(0).late());
        desk.as(INES).records(theory("Another"));
        assertTrue(desk.sheet().latest(TheoryStated.class).orElseThrow().late());
    }

    @Test
    void evidence_isNeverLate() {
        TicketFixture desk = atStep(Step.VERIFY);
        desk.as(OLE).records(temperature("60", "processor"));
        assertFalse(desk.sheet().latest(ReadingRecorded.class).orElseThrow().late());
    }

    @Test
    void factsOfALaterStep_wait() {
        TicketFixture desk = plain();
        for (Fact early :
                List.of(theory("Dust"), check(1), anyAction(), new PreventionConsidered(true, "x"), anySummary())) {
            desk.as(INES).lacks("step-not-reached", early);
        }
    }

    @Test
    void whatAStepDecided_isNotMadeAgainOnceItIsLeft() {
        TicketFixture desk = atStep(Step.DOCUMENT);
        for (Fact stale : List.of(
                choose(desk.latest(TheoryStated.class)),
                check(desk.latest(TheoryStated.class)),
                TestFactSamples.anyResult(),
                anyAction(),
                carriedOut(1),
                new PartFitChecked(1, Fit.FITS, "x"))) {
            desk.as(INES).lacks("step-left", stale);
        }
        desk.as(SUE).lacks("step-left", new PlanDeclined("x"));
        desk.as(INES).records(new MakerConsulted(true, "Another manual"));
        desk.as(INES).records(new PreventionConsidered(true, "Filters"));
        desk.as(INES).records(new TheoriesRanked(List.of(desk.latest(TheoryStated.class)), "hindsight"));
        desk.as(INES).records(anyObvious());
        assertTrue(desk.sheet().facts().stream()
                .skip(desk.sheet().facts().size() - 4)
                .allMatch(StandingFact::late));
    }

    private static final class TestFactSamples {
        static Fact anyResult() {
            return result(1, CheckOutcome.SUPPORTS);
        }
    }

    @Test
    void ticketIsOpenedOnce_andRefusalsAreNotRecordedByHand() {
        TicketFixture desk = plain();
        desk.as(INES).lacks("not-an-act", opened(OLE));
        desk.as(INES).lacks("not-an-act", new Refused("Advanced", List.of("onset-known")));
        assertEquals("ines", desk.sheet().opened().assignee());
    }

    @Test
    void held_keepsTheStepButTakesEvidence() {
        TicketFixture desk = atStep(Step.THEORIZE);
        meetAll(desk);
        MoveFact hold = new Held(WaitingFor.PART, desk.now().plus(Duration.ofDays(1)), "Fan ordered");
        desk.as(INES).records(hold);
        assertNotNull(desk.sheet().course().hold());
        desk.as(INES).lacks("on-hold", new Advanced());
        desk.as(INES).lacks("on-hold", theory("Another"));
        desk.as(INES).lacks("already-on-hold", hold);
        desk.as(OLE).records(temperature("30", "room"));
        desk.as(INES).records(data(DataState.TAKEN_NOW));
        desk.as(INES).records(new Resumed());
        assertNull(desk.sheet().course().hold());
        desk.as(INES).lacks("not-on-hold", new Resumed());
        desk.as(INES).records(new Advanced());
    }

    @Test
    void followUp_liesInTheFuture() {
        TicketFixture desk = plain();
        MoveFact now = new Held(WaitingFor.WINDOW, desk.now().plusSeconds(60), "");
        assertThrows(Invalid.class, () -> desk.as(INES).does(now));
        MoveFact never = new Held(WaitingFor.WINDOW, java.time.Instant.MAX, "");
        assertThrows(Invalid.class, () -> desk.as(INES).does(never));
        desk.as(INES).records(new Held(WaitingFor.WINDOW, desk.now().plusSeconds(61), ""));
    }

    @Test
    void escalated_isMarkedUntilItReturns() {
        TicketFixture desk = atStep(Step.TEST);
        Escalated escalated = new Escalated("The supplier", "All of it");
        desk.as(INES).lacks("not-escalated", new Returned("x"));
        desk.as(INES).records(escalated);
        assertEquals(escalated, desk.sheet().course().escalation());
        desk.as(SUE).lacks("already-escalated", escalated);
        assertEquals(Step.TEST, desk.step());
        desk.as(SUE).records(new Returned("New board"));
        assertNull(desk.sheet().course().escalation());
    }

    @Test
    void queue_isWaitedInUntilSomebodyTakesTheTicket() {
        TicketFixture desk = unassigned();
        desk.as(INES).lacks("nobody-has-it", anySymptom(false));
        desk.as(OLE).records(temperature("20", "room"));
        desk.as(INES).lacks("nobody-has-it", new HandedOver("ole", OLE.roles(), ""));
        desk.as(INES).records(new HandedOver("ines", INES.roles(), ""));
        desk.as(INES).records(anySymptom(false));
    }

    @Test
    void duplicate_isOfAnotherTicket() {
        TicketFixture desk = plain();
        assertThrows(Invalid.class, () -> desk.as(INES).does(new Cancelled("Same", "407186")));
        Invalid misread = assertThrows(Invalid.class, () -> new Cancelled("Same", "40718-5"));
        assertEquals("duplicateOf", misread.problems().get(0).field());
        assertThrows(Invalid.class, () -> new Cancelled("Same", "40718-5"));
        desk.as(INES).lacks("not-your-role", new Cancelled("Withdrawn", null));
        desk.as(INES).records(new Cancelled("Same trouble", new TicketNumber(40719).toString()));
        assertEquals(Standing.CANCELLED, desk.sheet().course().standing());
    }

    @ParameterizedTest
    @EnumSource
    void endedTicket_takesNothing(Standing standing) {
        if (standing == Standing.OPEN) {
            return;
        }
        TicketFixture desk = standing == Standing.CLOSED ? closed() : cancelled();
        String code = "ticket-" + standing.name().toLowerCase(java.util.Locale.ROOT);
        for (Fact fact : List.of(
                temperature("20", "room"),
                anySymptom(false),
                new Corrected(1, "x", opened(INES)),
                waive(IdentifyRequirement.LOGS_REVIEWED),
                new CautionsAcknowledged(1, Set.of()))) {
            desk.as(SUE).lacks(code, fact);
        }
    }

    @Test
    void entries_followOneAnother() {
        TicketFixture desk = plain();
        desk.as(INES).records(anySymptom(false));
        JobSheet sheet = desk.sheet();
        Entry stale = new Entry(new Stamp(2, desk.now(), "ole", OLE.roles()), temperature("20", "room"));
        assertThrows(IllegalArgumentException.class, () -> sheet.with(stale));
        Entry skipping = new Entry(new Stamp(4, desk.now(), "ole", OLE.roles()), temperature("20", "room"));
        assertThrows(IllegalArgumentException.class, () -> sheet.with(skipping));
        assertThrows(IllegalArgumentException.class, () -> JobSheet.open(stale));
        assertThrows(
                IllegalArgumentException.class,
                () -> JobSheet.open(new Entry(new Stamp(1, desk.now(), "ines", INES.roles()), anySymptom(false))));
    }

    @Test
    void replayed_isTheSameSheet() {
        for (TicketFixture desk : List.of(closed(), cancelled(), demandingAtStep(Step.DOCUMENT))) {
            JobSheet replayed = JobSheet.replay(desk.trail());
            assertEquals(desk.sheet(), replayed);
            assertEquals(desk.sheet().hashCode(), replayed.hashCode());
            assertNotEquals(
                    desk.sheet(),
                    JobSheet.replay(desk.trail().subList(0, desk.trail().size() - 1)));
        }
    }
}
