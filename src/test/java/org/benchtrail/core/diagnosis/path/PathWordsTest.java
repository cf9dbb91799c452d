package org.benchtrail.core.diagnosis.path;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.benchtrail.catalogue.PathsFile;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.PlanSettings;
import org.junit.jupiter.api.Test;

/** How a line of four places is drawn and named, with a point behind each of the first three. */
class PathWordsTest {
    private static final Localiser LINE = new Localiser(
            Rig.category(
                    List.of(Rig.answer("hum", 0.1, 2)),
                    List.of(
                            Rig.cause("A", 1, Rig.repair(40, 0.95), "hum", 0.9),
                            Rig.cause("B", 1, Rig.repair(40, 0.95)))),
            Rig.paths(
                    0.35,
                    List.of(
                            Rig.segment("outlet", 1, 40, List.of()),
                            Rig.segment("cord", 1, 40, List.of("A")),
                            Rig.segment("supply", 1, 40, List.of()),
                            Rig.segment("board", 1, 40, List.of("B"))),
                    Rig.point("outlet", 2),
                    Rig.point("cord", 2),
                    Rig.point("supply", 2)),
            ModelSettings.STANDARD,
            PlanSettings.STANDARD);

    private static Localisation at(String... points) {
        Evidence e = Evidence.NONE;
        for (String p : points) {
            String[] part = p.split("=");
            e = e.with(Rig.seen(
                    part[0].equals("hum") ? "hum" : "point:way." + part[0],
                    part[1],
                    e.reports().size()));
        }
        return LINE.locate(Known.of(e));
    }

    /** "Take the driver out of the way" tells nobody what to do. */
    @Test
    void everyTestOfADeliveredPlace_saysWhatToDo_inWordsOfItsOwn() {
        List<String> without = PathsFile.delivered().categories().stream()
                .flatMap(c -> c.segments().stream()
                        .flatMap(s -> s.acts().stream()
                                .filter(a -> c.stands().stream()
                                        .noneMatch(l -> l.act() == a.act()
                                                && l.segments().equals(List.of(s.id()))))
                                .map(a -> GenericTest.id(a.act(), s.id()))
                                .filter(id -> c.note(id).instruction().isEmpty())
                                .map(id -> c.category() + " " + id)))
                .toList();
        assertEquals(List.of(), without);
    }

    @Test
    void strip_showsEachPlaceWithWhatItsPointSaid() {
        PathStrip strip = PathStrip.of(at("outlet=good", "cord=bad")).get(0);
        assertEquals(
                List.of("outlet", "cord", "supply", "board"),
                strip.boxes().stream().map(PathStrip.Box::segment).toList());
        assertEquals(
                List.of(PathStrip.Mark.GOOD, PathStrip.Mark.BAD, PathStrip.Mark.OPEN, PathStrip.Mark.NONE),
                strip.boxes().stream().map(PathStrip.Box::mark).toList());
        assertEquals("behind the cord", strip.boxes().get(1).at());
        double all = strip.boxes().stream().mapToDouble(PathStrip.Box::mass).sum();
        assertTrue(all > 0.9 && all < 1);
    }

    @Test
    void strip_ofTheLatestWord() {
        assertEquals(
                PathStrip.Mark.GOOD,
                PathStrip.of(at("cord=bad", "cord=good")).get(0).boxes().get(1).mark());
    }

    @Test
    void where_namesThePlaceOrTheStretchBetweenTwoPoints() {
        assertEquals("not placed yet", new PlaceWords(LINE.locate(Known.of(Evidence.NONE))).where());
        assertTrue(new PlaceWords(at("outlet=good", "cord=bad", "hum=yes"))
                .where()
                .startsWith("most likely here: the cord ("));
        PlaceWords beyond = new PlaceWords(at("cord=good", "hum=no"));
        assertTrue(beyond.where().startsWith("most likely here: the board ("), beyond.where());
        assertEquals("something else: the supply about 1 in 10", beyond.elsewhere());
        PlaceWords before = new PlaceWords(at("cord=bad"));
        assertTrue(before.where().startsWith("most likely here: the cord ("), before.where());
    }

    @Test
    void sentence_saysWhereSomethingUnlistedIs() {
        assertEquals(
                "Probably something that is not listed, here: the outlet.",
                new PlaceWords(at("outlet=bad", "cord=bad", "hum=no")).sentence());
        assertEquals("", new PlaceWords(at("hum=yes", "cord=bad", "outlet=good")).sentence());
    }
}
