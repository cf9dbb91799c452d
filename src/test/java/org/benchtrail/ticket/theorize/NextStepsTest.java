package org.benchtrail.ticket.theorize;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.catalogue.CatalogueFile;
import org.benchtrail.catalogue.CatalogueVersion;
import org.benchtrail.catalogue.PathsFile;
import org.benchtrail.core.advice.Diagnosis;
import org.benchtrail.core.advice.SheetReader;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.junit.jupiter.api.Test;

/** The words in which it is said that testing is over, and why. */
class NextStepsTest {
    private static final Instant START = Instant.parse("2031-03-03T08:00:00Z");

    private static Entry entry(int number, Fact fact) {
        return new Entry(new Stamp(number, START.plusSeconds(60L * number), "ines", Set.of(Role.TECHNICIAN)), fact);
    }

    private static NextView next(Category kind, String... answers) {
        return next(sheet(kind, answers), kind);
    }

    private static JobSheet sheet(Category kind, String... answers) {
        JobSheet sheet = JobSheet.open(entry(
                1,
                new Opened(
                        "40718-6",
                        "It does not work",
                        "",
                        kind,
                        "Desk computer",
                        "Office",
                        1,
                        Priority.Impact.ONE_PERSON,
                        Priority.Urgency.HINDERED,
                        "ines",
                        Set.of(Role.TECHNICIAN))));
        Map<Hazard, Boolean> none = new EnumMap<>(Hazard.class);
        for (Hazard h : Hazard.values()) {
            none.put(h, false);
        }
        sheet = sheet.with(entry(2, new HazardsScreened(none)));
        for (String answer : answers) {
            String[] parts = answer.split("=");
            sheet = sheet.with(entry(sheet.entries() + 1, new FindingAnswered(parts[0], "?", parts[1], Source.SEEN)));
        }
        return sheet;
    }

    private static JobSheet with(JobSheet sheet, Fact... facts) {
        JobSheet more = sheet;
        for (Fact fact : facts) {
            more = more.with(entry(more.entries() + 1, fact));
        }
        return more;
    }

    private static NextView next(JobSheet sheet, Category kind) {
        Diagnosis now = Diagnosis.of(
                sheet,
                Optional.ofNullable(CatalogueVersion.of(1, CatalogueFile.delivered(), PathsFile.delivered())
                                .localisers()
                                .get(kind.catalogue()))
                        .orElseThrow(),
                SheetReader.PLAIN);
        return NextView.of(sheet, now);
    }

    @Test
    void onceTheFaultIsGone_itIsLeftSo() {
        NextView gone = next(Category.WIRED, "n5=yes", "bypass:names=yes");
        assertEquals(List.of(), gone.tests());
        assertTrue(gone.act().startsWith("The fault is gone, so nothing shows it to another test"), gone.act());
    }

    /** What waits for its result is no next test; withdrawn or made, it may be one again. */
    @Test
    void aTestThatIsACheckAlready_isNotOfferedAgain() {
        JobSheet tested = with(
                sheet(Category.DISPLAY),
                new TheoryStated("Cable", "display/cable-or-plug"),
                new TheoryChosen(3, "", ""),
                new Advanced(),
                new Advanced());
        NextView before = next(tested, Category.DISPLAY);
        String first = before.tests().get(0).finding();
        JobSheet planned = with(tested, new CheckPlanned(3, "Look", "It shows", false, Set.of(), first, null));
        assertEquals(
                before.tests().stream()
                        .map(NextView.Test::finding)
                        .filter(f -> !f.equals(first))
                        .toList(),
                next(planned, Category.DISPLAY).tests().stream()
                        .map(NextView.Test::finding)
                        .toList());
        List<CheckPlanned> all = before.tests().stream()
                .map(t -> new CheckPlanned(3, "Look", "It shows", false, Set.of(), t.finding(), null))
                .toList();
        NextView none = next(with(tested, all.toArray(Fact[]::new)), Category.DISPLAY);
        assertEquals(List.of(), none.tests());
        assertEquals("What tells this theory from its rivals best is planned: make it.", none.lead());
    }

    @Test
    void whereAProofWasSeen_itIsSaid() {
        NextView proven = next(Category.PRINTING, "r11=yes");
        assertEquals(List.of(), proven.tests());
        assertTrue(proven.act().startsWith("What proves it was seen"), proven.act());
    }

    @Test
    void aRepairThatWaits_saysWhatFor_alsoWhereATestWouldSaveMore() {
        NextView waits = next(Category.STORAGE, "s5=yes", "s12=yes", "log=drive");
        assertTrue(waits.act().contains("copy") || waits.act().contains("backup"), waits.act());
    }
}
