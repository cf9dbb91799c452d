package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Objects;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Escalated;
import org.benchtrail.core.method.desk.HandOverOffered;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Held;
import org.benchtrail.core.method.desk.OfferWithdrawn;
import org.benchtrail.core.method.desk.Returned;
import org.benchtrail.core.method.desk.WaitingFor;
import org.junit.jupiter.api.Test;

/** A ticket changes hands when the other takes it, or a supervisor assigns it; an offer is nobody's until then. */
class HandOverTest {
    private static final HandOverOffered TO_OLE = new HandOverOffered("ole", "He knows coolers");
    private static final HandedOver OLE_HAS_IT = new HandedOver("ole", OLE.roles(), "");
    private static final OfferWithdrawn NO_MORE = new OfferWithdrawn("");

    @Test
    void offered_isTakenByWhomItIsOfferedTo() {
        TicketFixture desk = plain();
        desk.as(INES).lacks("offer-it", OLE_HAS_IT);
        desk.as(OLE).lacks("not-yours", OLE_HAS_IT);
        desk.as(OLE).lacks("not-yours", TO_OLE);
        desk.as(INES).records(TO_OLE);
        assertEquals("ole", desk.sheet().course().offered());
        assertEquals("ines", desk.sheet().course().assignee());
        desk.as(TOM).lacks("not-yours", new HandedOver("tom", TOM.roles(), ""));
        desk.as(OLE).lacks("not-yours", new HandedOver("tom", TOM.roles(), ""));
        desk.as(OLE).records(OLE_HAS_IT);
        assertEquals("ole", desk.sheet().course().assignee());
        assertEquals(OLE.roles(), desk.sheet().course().assigneeRoles());
        assertNull(desk.sheet().course().offered());
        assertEquals(true, desk.sheet().isHand("ole"));
    }

    @Test
    void assigned_bySupervisorsOnly() {
        TicketFixture desk = unassigned();
        desk.as(INES).lacks("nobody-has-it", OLE_HAS_IT);
        desk.as(ADA).lacks("not-your-role", OLE_HAS_IT);
        desk.as(SUE).records(OLE_HAS_IT);
        desk.as(SUE).records(new HandedOver("ines", INES.roles(), ""));
        assertEquals("ines", desk.sheet().course().assignee());
    }

    @Test
    void offer_isNotMadeToWhoHasIt() {
        TicketFixture desk = plain();
        Invalid e = assertThrows(Invalid.class, () -> desk.as(INES).does(new HandOverOffered("ines", "")));
        assertEquals("to", e.problems().get(0).field());
    }

    @Test
    void offer_isEndedByWhoMadeItOrWhoGotIt() {
        for (Actor actor : Set.of(INES, OLE, SUE)) {
            TicketFixture desk = plain();
            desk.as(INES).lacks("not-offered", NO_MORE);
            desk.as(INES).records(TO_OLE);
            desk.as(MAREK).lacks("not-yours", NO_MORE);
            desk.as(actor).records(NO_MORE);
            assertNull(desk.sheet().course().offered(), actor.name());
            desk.as(OLE).lacks("not-yours", OLE_HAS_IT);
        }
    }

    @Test
    void escalated_byWhoHasItOrASupervisor_onceUntilItReturns() {
        Escalated away = new Escalated("The maker", "All of it");
        TicketFixture desk = plain();
        desk.as(INES).lacks("not-escalated", new Returned("A new board"));
        desk.as(OLE).lacks("not-yours", away);
        desk.as(INES).records(away);
        assertEquals(away, desk.sheet().course().escalation());
        desk.as(SUE).lacks("already-escalated", away);
        desk.as(OLE).lacks("not-yours", new Returned("A new board"));
        desk.as(SUE).records(new Returned("A new board"));
        assertNull(desk.sheet().course().escalation());
        desk.as(SUE).records(away);
    }

    @Test
    void held_onceUntilItIsResumed_andNoLongerThanTheFutureLasts() {
        TicketFixture desk = plain();
        Held now = new Held(WaitingFor.PART, desk.now().plusSeconds(60), "");
        assertThrows(Invalid.class, () -> desk.as(INES).does(now), "the act is a minute later: that is no future");
        Held later = new Held(WaitingFor.PART, desk.now().plusSeconds(600), "");
        desk.as(INES).records(later);
        desk.as(INES).lacks("already-on-hold", later);
        assertEquals(
                WaitingFor.PART,
                Objects.requireNonNull(desk.sheet().course().hold()).waitingFor());
    }
}
