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
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.FailedRepair;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.PlanSettings;
import org.benchtrail.core.diagnosis.Risk;
import org.junit.jupiter.api.Test;

/** Which kind of test has its turn before which, and what ends the testing, on a small invented structure. */
class TurnsTest {
    private static final CauseCategory CATEGORY = Rig.category(
            List.of(
                    Rig.answer("hum", 0.1, 2),
                    Rig.answer("long", 0.1, 30),
                    Rig.answer("trace", 0.1, 2),
                    Rig.answer("sign", 0.05, 6)),
            List.of(
                    Rig.cause("A", 10, Rig.repair(40, 0.95), "hum", 0.5, "long", 0.6),
                    Rig.cause("B", 10, Rig.repair(40, 0.95), "hum", 0.5),
                    Rig.cause("C", 10, Rig.repair(40, 0.95), "trace", 0.6, "sign", 0.95)));

    private static Segment segment(String id, String cause, boolean inside) {
        Segment s = Rig.segment(id, 1, 40, List.of(cause), Rig.act(PathAct.LOOK, 2), Rig.act(PathAct.SUBSTITUTE, 4));
        return new Segment(id, s.name(), s.present(), 1, s.causes(), Set.of(), Set.of(), inside, s.acts(), s.repair());
    }

    /** Three segments in a row with a log that names them; the last is inside the case. */
    private static CategoryPaths paths() {
        List<Segment> all =
                List.of(segment("first", "A", false), segment("second", "B", false), segment("last", "C", true));
        CategoryPaths plain = Rig.paths(0.35, all, Rig.point("first", 2), Rig.point("second", 2));
        WholeTest log = new WholeTest(
                PathAct.LOG,
                "Read the log.",
                List.of("first", "second", "last"),
                2,
                Risk.NONE,
                List.of(),
                List.of(),
                "");
        return new CategoryPaths("c", 0.35, all, Map.of(), Map.of(), plain.paths(), List.of(log), List.of(), List.of());
    }

    private static final Localiser PLACES = new Localiser(
            CATEGORY,
            paths(),
            ModelSettings.STANDARD,
            PlanSettings.STANDARD.withPrune(false).withPlannedReliability(0.95));

    private static Localisation at(Evidence e, boolean fleeting, boolean opened) {
        return PLACES.locate(
                Known.of(e).with(new Cues(Set.of(), Set.of(), fleeting)).withOpened(opened));
    }

    private static List<String> order(Evidence e, boolean fleeting, boolean opened) {
        return at(e, fleeting, opened).order().stream().map(Action::id).toList();
    }

    private static final Evidence HUM = Evidence.NONE.with(Rig.seen("hum", "yes", 1));
    private static final Evidence SIGN = Evidence.NONE.with(Rig.seen("sign", "yes", 1));

    @Test
    void whatShowsFromOutside_comesBeforeTheCaseIsOpened() {
        List<String> shut = order(Evidence.NONE, false, false);
        assertTrue(shut.indexOf("substitute:last") > shut.indexOf("substitute:first"), shut.toString());
        assertEquals("substitute:last", shut.get(shut.size() - 1));
        assertFalse(at(Evidence.NONE, false, false).near().stream().anyMatch(a -> a.id().endsWith(":last")));
    }

    @Test
    void theCaseIsOpened_whereNothingThatLeadsIsOutside() {
        Evidence trace = Evidence.NONE.with(Rig.seen("trace", "yes", 1));
        List<String> inside = order(trace, false, false);
        assertTrue(inside.indexOf("substitute:last") < inside.indexOf("point:way.second"), inside.toString());
        assertTrue(inside.contains("point:way.second"), inside.toString());
    }

    @Test
    void anOpenCase_isNoReasonToWait() {
        List<String> open = order(Evidence.NONE, false, true);
        assertTrue(open.indexOf("substitute:last") < open.indexOf("log"), open.toString());
    }

    @Test
    void aLogIsReadAfterWhatCanBeSeen_butOfAFaultThatComesAndGoesAtOnce() {
        List<String> steady = order(Evidence.NONE, false, false);
        List<String> fleeting = order(Evidence.NONE, true, false);
        assertTrue(steady.indexOf("log") > steady.indexOf("substitute:second"), steady.toString());
        assertFalse(at(Evidence.NONE, false, false).near().stream().anyMatch(a -> a.id().equals("log")));
        assertTrue(fleeting.indexOf("log") < fleeting.indexOf("point:way.first"), fleeting.toString());
    }

    @Test
    void aLogIsNotRead_onceTheFaultIsRatherInOnePlace() {
        Evidence trace = Evidence.NONE.with(Rig.seen("trace", "yes", 1));
        double last = at(trace, false, false).masses().get("last");
        assertTrue(last > 0.5 && last < 0.75, "mass " + last);
        assertFalse(order(trace, false, false).contains("log"));
        assertTrue(order(trace, true, false).contains("log"));
        assertTrue(order(Evidence.NONE, false, false).contains("log"));
    }

    @Test
    void aLongTrial_doesNotComeFirst_becauseTheWordsRaiseIt() {
        Cues raised = new Cues(Set.of("long", "trace"), Set.of(), false);
        List<String> near = PLACES.locate(Known.of(HUM).with(raised)).near().stream()
                .map(Action::id)
                .toList();
        assertEquals("trace", near.get(0));
        assertFalse(near.contains("long"), near.toString());
    }

    @Test
    void whatIsDoneToPlacesThatLead_comesBeforeWhatOnlyPartsThePlaces() {
        List<String> hum = order(HUM, false, false);
        assertTrue(hum.indexOf("substitute:first") < hum.indexOf("point:way.first"), hum.toString());
        assertTrue(hum.contains("point:way.first"), hum.toString());
        assertFalse(at(HUM, false, false).near().stream().anyMatch(a -> a.id().startsWith("point:")));
    }

    @Test
    void aCure_endsTheTesting_untilARepairFailedAfterIt() {
        Evidence gone = HUM.with(Rig.seen("substitute:first", "yes", 2));
        assertEquals(Set.of(), at(HUM, false, false).mended());
        assertEquals(
                Set.of(),
                at(HUM.with(Rig.seen("substitute:first", "no", 2)), false, false)
                        .mended());
        assertEquals(Set.of("first"), at(gone, false, false).mended());
        assertEquals(Set.of("first"), at(failed(gone, 1), false, false).mended());
        assertEquals(Set.of(), at(failed(gone, 3), false, false).mended());
    }

    private static Evidence failed(Evidence e, int minute) {
        return new Evidence(e.reports(), List.of(new FailedRepair("C", 0.1, Rig.T0.plusSeconds(60L * minute))));
    }

    @Test
    void aCureWhereTheFaultHardlyIs_endsNothing() {
        Evidence sign = SIGN.with(Rig.seen("substitute:last", "no", 2)).with(Rig.seen("substitute:first", "yes", 3));
        Evidence unsure = SIGN.with(Rig.seen("trace", "yes", 1)).with(Rig.seen("substitute:first", "yes", 2));
        assertEquals(Set.of("first"), at(sign, false, false).mended());
        assertTrue(at(unsure, false, false).masses().get("first") < 0.5);
        assertEquals(Set.of(), at(unsure, false, false).mended());
    }

    @Test
    void whatProvesTheLeadingCause_provesIt_andNothingElseDoes() {
        assertEquals(Optional.of("C"), at(SIGN, false, false).proven());
        assertEquals(Optional.empty(), at(Evidence.NONE, false, false).proven());
        // it hums with two causes alike, and each only half of the time
        assertEquals(Optional.empty(), at(HUM, false, false).proven());
        assertEquals(
                Optional.empty(),
                at(Evidence.NONE.with(Rig.seen("sign", "no", 1)), false, false).proven());
    }
}
