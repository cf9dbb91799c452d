package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.INES;
import static org.benchtrail.core.method.Sheets.anySymptom;
import static org.benchtrail.core.method.Sheets.closed;
import static org.benchtrail.core.method.Sheets.plain;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Refused;
import org.benchtrail.core.method.desk.Resumed;
import org.junit.jupiter.api.Test;

/** A trail in which somebody wrote past the gate, and what asking once more finds of it. */
class RedecidedTest {
    private static final String POLICY = "policy of the test";
    private static final Map<String, Optional<Policy>> KNOWN = Map.of(POLICY, Optional.of(Policy.usual()));

    private static List<Integer> found(List<Entry> trail, int after, Map<String, Optional<Policy>> policies) {
        return Redecided.of(trail, after, policies).stream()
                .map(r -> r.move().stamp().entry())
                .toList();
    }

    /** Opened, and moved on with nothing known. */
    private static TicketFixture forced() {
        TicketFixture desk = plain();
        desk.as(INES).records(anySymptom(false));
        desk.as(INES).forces(new Advanced());
        return desk;
    }

    @Test
    void honestTicket_isAsItWasDecided() {
        assertEquals(List.of(), Redecided.of(closed().trail(), 0, KNOWN));
    }

    @Test
    void moveThatTheGateRefuses_isNamed_withWhatItLacks() {
        List<Redecided> refused = Redecided.of(forced().trail(), 0, KNOWN);
        assertEquals(1, refused.size());
        assertEquals(3, refused.get(0).move().stamp().entry());
        List<String> lacks =
                refused.get(0).missing().stream().map(Missing::code).toList();
        assertTrue(lacks.contains("hazards-screened"), lacks.toString());
        String why = refused.get(0).why();
        refused.get(0).missing().forEach(missing -> assertTrue(why.contains(missing.sentence()), why));
    }

    @Test
    void onlyMovesOutOfAStep_afterThatEntry_areAsked() {
        TicketFixture desk = forced();
        assertEquals(List.of(3), found(desk.trail(), 2, KNOWN));
        assertEquals(List.of(), found(desk.trail(), 3, KNOWN));
        desk.as(INES).forces(new Refused("advanced", List.of("onset-known")));
        desk.as(INES).forces(new Resumed()); // refused by the method, and no move through the gate
        assertEquals(List.of(3), found(desk.trail(), 0, KNOWN));
    }

    @Test
    void policyThatTheSiteNeverHad_isNamed_andOneOfUnknownValuesTellsNothing() {
        List<Redecided> strange = Redecided.of(forced().trail(), 0, Map.of());
        assertEquals(
                List.of("policy-known"),
                strange.get(0).missing().stream().map(Missing::code).toList());
        assertEquals(List.of(), found(forced().trail(), 0, Map.of(POLICY, Optional.empty())));
    }

    /** What made it is not known of an entry of the first format. */
    @Test
    void entryOfTheFirstFormat_isNotAsked() {
        List<Entry> trail = new ArrayList<>(forced().trail());
        Stamp now = trail.get(2).stamp();
        trail.set(2, new Entry(new Stamp(3, now.at(), now.by(), Set.of(Role.TECHNICIAN)), new Advanced()));
        assertEquals(List.of(), found(trail, 0, KNOWN));
    }

    @Test
    void rules_haveAName() {
        assertTrue(Redecided.rules().matches("\\d+-[0-9a-f]{16}"), Redecided.rules());
    }
}
