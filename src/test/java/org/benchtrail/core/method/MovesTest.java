package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Escalated;
import org.benchtrail.core.method.desk.HandOverOffered;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Held;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.OfferWithdrawn;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.Resumed;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.desk.Returned;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.TestRequirement;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Every pair of place and move, and every pair of person and move, against the written table. */
class MovesTest {
    /** Where a ticket may stand. */
    enum Place {
        IDENTIFY(() -> ready(Step.IDENTIFY)),
        THEORIZE(() -> ready(Step.THEORIZE)),
        TEST(() -> ready(Step.TEST)),
        PLAN(() -> ready(Step.PLAN)),
        VERIFY(() -> ready(Step.VERIFY)),
        DOCUMENT(() -> ready(Step.DOCUMENT)),
        CLOSED(Sheets::closed),
        CANCELLED(Sheets::cancelled);

        private final Supplier<TicketFixture> reached;

        Place(Supplier<TicketFixture> reached) {
            this.reached = reached;
        }
    }

    private static final Set<Place> ANY_OPEN =
            Set.of(Place.IDENTIFY, Place.THEORIZE, Place.TEST, Place.PLAN, Place.VERIFY, Place.DOCUMENT);

    /** The first column of the written table. */
    private static final Map<Move, Set<Place>> FROM = Map.ofEntries(
            Map.entry(Move.ADVANCE, Set.of(Place.IDENTIFY, Place.THEORIZE, Place.TEST, Place.PLAN, Place.VERIFY)),
            Map.entry(Move.REFUTE, Set.of(Place.TEST)),
            Map.entry(Move.RETHINK, Set.of(Place.PLAN)),
            Map.entry(Move.FAIL, Set.of(Place.VERIFY, Place.DOCUMENT)),
            Map.entry(Move.CLOSE, Set.of(Place.DOCUMENT)),
            Map.entry(Move.REOPEN, Set.of(Place.CLOSED)),
            Map.entry(Move.HOLD, ANY_OPEN),
            Map.entry(Move.RESUME, ANY_OPEN),
            Map.entry(Move.HAND_OVER, ANY_OPEN),
            Map.entry(Move.OFFER, ANY_OPEN),
            Map.entry(Move.END_OFFER, ANY_OPEN),
            Map.entry(Move.ESCALATE, ANY_OPEN),
            Map.entry(Move.RETURN, ANY_OPEN),
            Map.entry(Move.CANCEL, ANY_OPEN));

    /** The last column: who may, on a ticket of Ines, besides her. Closed just now, so anybody who works may reopen. */
    private static final Map<Move, Set<Actor>> ALSO = Map.of(
            Move.HAND_OVER, Set.of(SUE),
            Move.END_OFFER, Set.of(SUE, OLE),
            Move.ESCALATE, Set.of(SUE),
            Move.RETURN, Set.of(SUE),
            Move.CANCEL, Set.of(SUE),
            Move.REOPEN, Set.of(SUE, OLE, TOM, MAREK));

    private static TicketFixture ready(Step step) {
        TicketFixture desk = atStep(step);
        meetAll(desk);
        return desk;
    }

    static MoveFact fact(Move move, TicketFixture desk) {
        return switch (move) {
            case ADVANCE -> new Advanced();
            case REFUTE -> new RuledOut();
            case RETHINK -> new Rethought("No effect", true);
            case FAIL -> new VerifyFailed("It is back");
            case CLOSE -> new Closed();
            case REOPEN -> new Reopened("It is back");
            case HOLD -> new Held(WaitingFor.PART, desk.now().plus(Duration.ofDays(1)), "");
            case RESUME -> new Resumed();
            case HAND_OVER -> new HandedOver("ole", OLE.roles(), "");
            case OFFER -> new HandOverOffered("ole", "");
            case END_OFFER -> new OfferWithdrawn("");
            case ESCALATE -> new Escalated("Supplier", "All");
            case RETURN -> new Returned("Nothing");
            case CANCEL -> new Cancelled("Same trouble", new TicketNumber(7).toString());
        };
    }

    /** What a move stands on besides the gate: a hold to resume, an escalation to return, a check that rules out. */
    private static void prepare(TicketFixture desk, Move move) {
        if (desk.sheet().course().standing() != Standing.OPEN) {
            return;
        }
        switch (move) {
            case RESUME -> desk.as(INES).records(fact(Move.HOLD, desk));
            case RETURN -> desk.as(INES).records(fact(Move.ESCALATE, desk));
            case END_OFFER -> desk.as(INES).records(fact(Move.OFFER, desk));
            case REFUTE -> {
                if (desk.step() == Step.TEST) {
                    int check = desk.as(INES).records(check(desk.latest(TheoryStated.class)));
                    desk.as(INES).records(result(check, CheckOutcome.REFUTES));
                }
            }
            default -> {}
        }
    }

    static Stream<Arguments> pairs() {
        return Stream.of(Place.values()).flatMap(p -> Stream.of(Move.values()).map(m -> Arguments.of(p, m)));
    }

    @ParameterizedTest
    @MethodSource("pairs")
    void moveIsPossible_exactlyWhereTheTableSaysSo(Place place, Move move) {
        TicketFixture desk = place.reached.get();
        prepare(desk, move);
        // the supervisor may cancel, reopen and assign without a condition; all the rest is the assignee's
        Actor actor = Set.of(Move.CANCEL, Move.REOPEN, Move.HAND_OVER).contains(move) ? SUE : INES;
        Course before = desk.sheet().course();
        if (FROM.get(move).contains(place)) {
            desk.as(actor).records(fact(move, desk));
            assertMoved(before, move, desk.sheet().course());
        } else {
            String code = place == Place.CLOSED
                    ? "ticket-closed"
                    : place == Place.CANCELLED ? "ticket-cancelled" : "no-such-move";
            desk.as(actor).lacks(code, fact(move, desk));
        }
    }

    private static void assertMoved(Course before, Move move, Course after) {
        Step step = switch (move) {
            case ADVANCE -> before.step().next();
            case REFUTE, RETHINK, FAIL -> Step.THEORIZE;
            case REOPEN -> Step.IDENTIFY;
            default -> before.step();
        };
        Standing standing = switch (move) {
            case CLOSE -> Standing.CLOSED;
            case CANCEL -> Standing.CANCELLED;
            default -> Standing.OPEN;
        };
        boolean again =
                Set.of(Move.REFUTE, Move.RETHINK, Move.FAIL, Move.REOPEN).contains(move);
        assertEquals(step, after.step());
        assertEquals(standing, after.standing());
        assertEquals(before.round() + (again ? 1 : 0), after.round());
        assertEquals(move == Move.HAND_OVER ? "ole" : "ines", after.assignee());
        assertEquals(move == Move.OFFER ? "ole" : null, after.offered());
        assertEquals(move == Move.HOLD, after.hold() != null);
        assertEquals(move == Move.ESCALATE, after.escalation() != null);
    }

    static Stream<Arguments> persons() {
        List<Arguments> all = new ArrayList<>();
        for (Move move : Move.values()) {
            for (Actor actor : List.of(INES, OLE, TOM, MAREK, SUE, ADA)) {
                all.add(Arguments.of(actor.account(), move));
            }
        }
        return all.stream();
    }

    @ParameterizedTest
    @MethodSource("persons")
    void moveIsMade_byThoseOfTheTableOnly(String account, Move move) {
        Place place = Stream.of(Place.values())
                .filter(p -> FROM.get(move).contains(p))
                .findFirst()
                .orElseThrow();
        TicketFixture desk = place.reached.get();
        prepare(desk, move);
        Actor actor = person(account);
        boolean may = (actor.equals(INES) && move != Move.HAND_OVER)
                || ALSO.getOrDefault(move, Set.of()).contains(actor);
        if (may) {
            desk.as(actor).records(fact(move, desk));
        } else {
            String code = actor.equals(ADA) || move == Move.CANCEL
                    ? "not-your-role"
                    : actor.equals(INES) ? "offer-it" : "not-yours";
            desk.as(actor).lacks(code, fact(move, desk));
        }
    }

    @Test
    void trainee_makesTheMovesOfATicketOfTheirOwn() {
        TicketFixture desk = demandingAtStep(Step.DOCUMENT);
        meetAll(desk);
        desk.as(INES).lacks("not-yours", new Closed());
        desk.as(MAREK).lacks("not-yours", new Closed());
        desk.as(TOM).records(new Closed());
        assertEquals(Standing.CLOSED, desk.sheet().course().standing());
        assertEquals(desk.now(), desk.sheet().course().closed());
    }

    @ParameterizedTest
    @EnumSource
    void openTicket_isReopenedByNobody(Step step) {
        TicketFixture desk = atStep(step);
        desk.as(OLE).lacks("no-such-move", fact(Move.REOPEN, desk));
        desk.as(SUE).lacks("no-such-move", fact(Move.REOPEN, desk));
    }

    @Test
    void reopenWindow_endsToTheSecond() {
        TicketFixture inTime = closed();
        inTime.passes(inTime.policy().reopenWindow().minusSeconds(60)); // the act itself takes the last minute
        inTime.as(OLE).records(fact(Move.REOPEN, inTime));
        TicketFixture late = closed();
        late.passes(late.policy().reopenWindow().minusSeconds(59));
        late.as(OLE).lacks("reopen-window-over", fact(Move.REOPEN, late));
        late.as(INES).lacks("reopen-window-over", fact(Move.REOPEN, late));
        late.as(SUE).records(fact(Move.REOPEN, late));
    }

    @Test
    void reopened_keepsItsFactsAndItsHands_andPassesAllStepsAgain() {
        TicketFixture desk = closed();
        int facts = desk.sheet().facts().size();
        desk.as(OLE).records(fact(Move.REOPEN, desk));
        assertEquals(facts + 1, desk.sheet().facts().size());
        assertEquals(
                List.of("symptom-observed", "hazards-screened", "data-protected", "evidence-attached"), desk.missing());
        assertEquals("ines", desk.sheet().course().assignee());
        bring(desk, Step.DOCUMENT);
        assertEquals(List.of("cause-named", "summary-written", "knowledge-linked", "effort-recorded"), desk.missing());
        meetAll(desk);
        desk.as(INES).records(new Closed());
    }

    @Test
    void ruledOutAtTest_andAtPlan_andPersistingAtVerify_allStartAtTheorizeAndReachClosure() {
        TicketFixture desk = atStep(Step.TEST);
        meet(desk, TestRequirement.EXPECTATION_FIRST);
        desk.as(INES).records(result(desk.latest(CheckPlanned.class), CheckOutcome.REFUTES));
        desk.as(INES).records(new RuledOut());
        desk.as(INES).records(choose(desk.as(INES).records(theory("Dry paste"))));
        desk.as(INES).records(new Advanced());
        bring(desk, Step.PLAN).as(INES).records(new Rethought("No effect", true));
        desk.as(INES).records(choose(desk.as(INES).records(theory("Weak supply"))));
        desk.as(INES).records(new Advanced());
        bring(desk, Step.VERIFY).as(INES).records(new VerifyFailed("Still dies"));
        assertEquals(4, desk.sheet().round());
        assertFalse(desk.sheet().ruledOut().isEmpty());
        desk.as(INES).records(choose(desk.as(INES).records(theory("Bad board"))));
        desk.as(INES).records(new Advanced());
        bring(desk, Step.DOCUMENT);
        meetAll(desk);
        desk.as(INES).records(new Closed());
        assertEquals(Standing.CLOSED, desk.sheet().course().standing());
    }

    @Test
    void decisionOnTheWay_neverThrowsForAMoveThatIsWellFormed() {
        for (Place place : Place.values()) {
            for (Move move : Move.values()) {
                for (Actor actor : EVERYBODY) {
                    TicketFixture desk = place.reached.get();
                    assertInstanceOf(Decision.class, desk.as(actor).does(fact(move, desk)));
                }
            }
        }
    }
}
