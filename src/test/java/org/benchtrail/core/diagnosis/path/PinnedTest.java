package org.benchtrail.core.diagnosis.path;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.PlanSettings;
import org.junit.jupiter.api.Test;

/** Which part of the path a case is put in: invented, three segments, each with a cause or none. */
class PinnedTest {
    private static final Localiser KIND = new Localiser(
            Rig.category(
                    List.of(Rig.answer("f0", 0.2, 2), Rig.answer("f1", 0.2, 2)),
                    List.of(Rig.cause("c0", 1, Rig.repair(5, 0.9), "f0", 0.9), Rig.cause("c1", 1, Rig.repair(5, 0.9)))),
            new CategoryPaths(
                    "c",
                    0.35,
                    List.of(segment("cord", "c0"), segment("supply", "c1"), segment("board")),
                    Map.of(),
                    Map.of(),
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of(
                            new StandsFor("f0", PathAct.SUBSTITUTE, List.of("cord", "supply"), "yes"),
                            new StandsFor("f1", PathAct.SISTER, List.of("board"), "yes"))),
            ModelSettings.STANDARD,
            PlanSettings.STANDARD);

    private static Segment segment(String id, String... causes) {
        return Rig.segment(id, 1, 10, List.of(causes), Rig.act(PathAct.LOOK, 1), Rig.act(PathAct.RESEAT, 3));
    }

    private static Set<String> pinned(String... findings) {
        return Pinned.segments(KIND, null, List.of(findings));
    }

    @Test
    void causeOfTheCatalogue_isInItsHome_whateverElseWasAnswered() {
        assertEquals(Set.of("supply"), Pinned.segments(KIND, "c1", List.of("reseat:cord=yes")));
    }

    @Test
    void causeThatTheCatalogueDoesNotHave_isWhereTheAnswersPutIt() {
        assertEquals(Set.of("cord"), Pinned.segments(KIND, "gone", List.of("reseat:cord=yes")));
        assertEquals(Set.of(), Pinned.segments(KIND, "gone", List.of()));
    }

    @Test
    void testOfOneSegment_namesItOnlyIfItCameOutSo() {
        assertEquals(Set.of("cord"), pinned("reseat:cord=yes"));
        assertEquals(Set.of("board", "cord"), pinned("look:board=yes", "reseat:cord=yes", "move:supply=no"));
        assertEquals(Set.of(), pinned("reseat:cord=no", "substitute:nowhere=yes"));
    }

    @Test
    void logNamesWhatItNames() {
        assertEquals(Set.of("board"), pinned("log=board"));
        assertEquals(Set.of(), pinned("log=none"));
    }

    /** A listed test of segments tells where it is; that another device has it too tells only what both share. */
    @Test
    void listedTestOfSegments_namesThem_andNoOther() {
        assertEquals(Set.of("cord", "supply"), pinned("f0=yes"));
        assertEquals(Set.of(), pinned("f0=no", "f1=yes"));
    }
}
