package org.benchtrail.core.diagnosis.path;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Condition;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.PlanSettings;
import org.benchtrail.core.diagnosis.Report;
import org.junit.jupiter.api.Test;

/** A line of four places with a cause in each of the outer ones; two questions that tell of them, one act that needs a spare. */
class TestOrderTest {
    private static final CauseCategory CATEGORY = Rig.category(
            List.of(Rig.answer("hum", 0.1, 2), Rig.answer("glow", 0.1, 2), Rig.answer("proof", 0.02, 6)),
            List.of(
                    Rig.cause("A", 10, Rig.repair(40, 0.95), "hum", 0.7),
                    Rig.cause("B", 10, Rig.repair(40, 0.95), "glow", 0.7, "proof", 0.9)));

    private static CategoryPaths paths(TestNote note) {
        CategoryPaths plain = Rig.paths(
                0.35,
                List.of(
                        Rig.segment("first", 1, 40, List.of("A"), Rig.act(PathAct.BYPASS, 5)),
                        Rig.segment("second", 1, 40, List.of()),
                        Rig.segment("third", 1, 40, List.of()),
                        Rig.segment("last", 1, 40, List.of("B"), Rig.act(PathAct.BYPASS, 5))),
                Rig.point("second", 4));
        return new CategoryPaths(
                "c",
                0.35,
                plain.segments(),
                Map.of(),
                Map.of(),
                plain.paths(),
                List.of(),
                List.of(),
                List.of(),
                Map.of(),
                Map.of("bypass:first", note));
    }

    private static Localisation at(Evidence e, Cues cues, TestNote note) {
        PlanSettings plan = PlanSettings.STANDARD.withPrune(false).withPlannedReliability(0.95);
        Known known = Known.of(e);
        return new Localiser(CATEGORY, paths(note), ModelSettings.STANDARD, plan)
                .locate(new Known(e, Map.of(), Set.of(), Set.of(), Set.of(), false, false, known.situation(), cues));
    }

    private static List<String> order(Evidence e, Cues cues) {
        return at(e, cues, TestNote.NONE).order().stream().map(Action::id).toList();
    }

    private static Cues words(String finding) {
        return new Cues(Set.of(finding), Set.of(), false);
    }

    /** The words raise a question past all that settles no leading cause; what settles one stays before it. */
    @Test
    void whatTheWordsSuggest_isAskedSooner() {
        assertFalse(order(Evidence.NONE, Cues.NONE).contains("glow"));
        List<String> raised = order(Evidence.NONE, words("glow"));
        assertEquals(List.of("hum", "glow"), raised.subList(0, 2));
        assertTrue(raised.size() > 2, raised.toString());
    }

    /** Once something was found that puts it rather in one place, what was merely mentioned of another waits. */
    @Test
    void whatTheWordsSuggestOfAnotherPlace_waits_onceTheFaultIsPlaced() {
        Evidence found = Evidence.NONE.with(Rig.seen("glow", "yes", 1)).with(Rig.seen("proof", "yes", 2));
        assertTrue(at(found, Cues.NONE, TestNote.NONE).masses().get("last") >= 0.5);
        assertFalse(order(found, words("hum")).contains("hum"));
        assertTrue(order(Evidence.NONE, words("hum")).contains("hum"));
    }

    @Test
    void whatIsAboutAPlaceThatIsNamed_comesSooner() {
        List<String> plain = order(Evidence.NONE, Cues.NONE);
        List<String> last = order(Evidence.NONE, new Cues(Set.of(), Set.of("last"), false));
        assertTrue(plain.indexOf("hum") < plain.indexOf("proof"), plain.toString());
        assertTrue(last.indexOf("proof") < last.indexOf("hum"), last.toString());
    }

    @Test
    void aShortProofOfTheLeadingCause_comesFirst() {
        Evidence glow = Evidence.NONE.with(Rig.seen("glow", "yes", 1));
        Localisation at = at(glow, Cues.NONE, TestNote.NONE);
        assertTrue(at.ranking().probability("B") >= 0.3);
        assertEquals("proof", at.order().get(0).id());
        assertEquals(Optional.of("proof"), at.settling().map(Action::id));
        Localisation proved = at(glow.with(Rig.seen("proof", "yes", 2)), Cues.NONE, TestNote.NONE);
        assertEquals(Optional.empty(), proved.settling());
        Localisation raised = at(glow.with(Rig.seen("proof", "yes", 2)), words("hum"), TestNote.NONE);
        assertEquals(Optional.empty(), raised.settling());
    }

    @Test
    void whatIsWorthFarLessThanTheFirst_isNotNear() {
        Localisation plain = at(Evidence.NONE, new Cues(Set.of(), Set.of("last"), false), TestNote.NONE);
        Localisation named = at(Evidence.NONE, words("hum"), TestNote.NONE);
        assertEquals(plain.order().get(0), plain.near().get(0));
        assertTrue(plain.near().size() > 1, plain.near().toString());
        assertEquals(List.of("hum"), named.near().stream().map(Action::id).toList());
        assertTrue(named.order().size() > 1, named.order().toString());
    }

    @Test
    void besideTheFirst_isShownOnlyWhatHasAReasonOfItsOwn() {
        Localisation plain = at(Evidence.NONE, Cues.NONE, TestNote.NONE);
        Localisation named = at(Evidence.NONE, new Cues(Set.of(), Set.of("first", "last"), false), TestNote.NONE);
        assertTrue(plain.order().stream().anyMatch(a -> a.id().equals("bypass:first")));
        assertEquals(
                List.of("hum", "proof"), plain.near().stream().map(Action::id).toList());
        assertEquals(
                List.of("hum", "bypass:first", "proof"),
                named.near().stream().map(Action::id).toList());
    }

    @Test
    void whatIsPresumedToBeAsUsual_isLookedAt_onlyWhereTheWordsRaiseIt() {
        assertTrue(order(Evidence.NONE, Cues.NONE).contains("hum"));
        Evidence presumed = Evidence.NONE.with(presumed("no"));
        assertFalse(order(presumed, Cues.NONE).contains("hum"));
        assertTrue(order(presumed, words("hum")).contains("hum"));
        assertTrue(order(Evidence.NONE.with(presumed("yes")), Cues.NONE).contains("hum"));
    }

    private static Report presumed(String value) {
        Report weak = Rig.seen("hum", value, 1).atMost(0.1);
        return new Report(weak.id(), weak.finding(), value, weak.reliability(), weak.at(), false, true);
    }

    @Test
    void aPlaceThatNothingSpeaksFor_isLeftOut() {
        Evidence sure = Evidence.NONE.with(Rig.seen("glow", "yes", 1)).with(Rig.seen("proof", "yes", 2));
        assertTrue(order(Evidence.NONE, Cues.NONE).contains("bypass:first"));
        assertFalse(order(sure, Cues.NONE).contains("bypass:first"));
    }

    @Test
    void aTestOfTheStructure_hasTheWordsOfTheFile_andItsConditions() {
        TestNote note = new TestNote("good without it", "Leave it out.", List.of(new Condition("hum", List.of("no"))));
        Localisation open = at(Evidence.NONE, Cues.NONE, note);
        GenericTest test = open.test("bypass:first").orElseThrow();
        assertEquals("good without it", test.name());
        assertEquals("Leave it out.", test.instruction());
        assertTrue(offers(open));
        assertFalse(offers(at(Evidence.NONE.with(Rig.seen("hum", "no", 1)), Cues.NONE, note)));
        assertTrue(offers(at(Evidence.NONE.with(Rig.seen("hum", "yes", 1)), Cues.NONE, note)));
    }

    private static boolean offers(Localisation at) {
        return at.advice().actions().stream().anyMatch(a -> a.id().equals("bypass:first"));
    }
}
