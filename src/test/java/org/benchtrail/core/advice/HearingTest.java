package org.benchtrail.core.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Deviation;
import org.benchtrail.core.diagnosis.Feed;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Hints;
import org.benchtrail.core.diagnosis.Limits;
import org.benchtrail.core.diagnosis.Making;
import org.benchtrail.core.diagnosis.Phrase;
import org.benchtrail.core.diagnosis.Phrases;
import org.benchtrail.core.diagnosis.QuantityWords;
import org.benchtrail.core.diagnosis.Repair;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Risk;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.identify.ChangeAnswer;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.Settlement;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What follows from recorded facts by the feeds of a catalogue, rule by rule. */
class HearingTest {
    private static final List<String> YES = List.of("no", "yes");

    private static Finding finding(
            String id, List<String> values, @Nullable Limits limits, @Nullable String narrows, boolean fleeting) {
        Finding.Kind kind = limits == null ? Finding.Kind.ANSWER : Finding.Kind.READING;
        Making.Way way = limits == null ? Making.Way.LOOK : Making.Way.MEASURE;
        Making making = new Making(id, "", way, false, Set.of(), List.of(), List.of(), narrows, fleeting);
        Map<String, Double> even = Map.of(values.get(0), .5, values.get(1), .5);
        return new Finding(id, id + "?", kind, values, even, 1, Risk.NONE, List.of(), null, limits, Set.of(), making);
    }

    private static final Finding CHANGED = finding("changed", YES, null, null, false);
    private static final Finding ADDED = finding("added", YES, null, "changed", false);
    private static final Finding SMELL = finding("smell", YES, null, null, false);
    private static final Finding COMES = finding("comes", YES, null, null, false);
    private static final Finding DRIVE = finding("drive", YES, null, null, true);
    private static final Finding FAN =
            finding("fan", List.of("inside", "below"), new Limits("1/min", 300.0, null, 0, 0.0, 30_000.0), null, true);
    private static final Finding OTHER_FAN = finding(
            "otherfan", List.of("inside", "below"), new Limits("1/min", 100.0, null, 0, 0.0, 30_000.0), null, false);

    private static final CauseCategory CATEGORY = category();

    private static CauseCategory category() {
        List<Finding> findings = List.of(CHANGED, ADDED, SMELL, COMES, DRIVE, FAN, OTHER_FAN);
        List<Deviation> all = findings.stream()
                .map(f -> new Deviation(f.id(), f.background()))
                .toList();
        Repair repair = new Repair("r", 5, 5, .9, 0, Risk.NONE, true, List.of());
        Hints hints = new Hints(
                List.of(
                        new Feed("changed/HARDWARE/YES", "changed", "yes", Source.REPORTED),
                        new Feed("changed/HARDWARE/NO", "changed", "no", Source.REPORTED),
                        new Feed("hazard/SMELL/present", "smell", "yes", Source.SEEN),
                        new Feed("hazard/SMELL/absent", "smell", "no", Source.PRESUMED),
                        new Feed("comes-and-goes/true", "comes", "yes", Source.REPORTED),
                        new Feed("comes-and-goes/false", "comes", "no", Source.REPORTED),
                        new Feed("drive-failure/true", "drive", "yes", Source.SEEN),
                        new Feed("read-in/drive-failing", "drive", "yes", Source.SEEN)),
                List.of(
                        new QuantityWords(List.of("fan speed"), "1/min", List.of("graphics", "pump"), "fan"),
                        new QuantityWords(List.of("pump fan"), "1/min", List.of(), "otherfan"),
                        new QuantityWords(List.of("rear fan speed"), "1/min", List.of(), "otherfan")),
                List.of(),
                List.of());
        return new CauseCategory(
                "heat",
                "Heat",
                240,
                List.of(),
                findings,
                List.of(
                        new Cause("a", "a", 1, all, "look", 1, repair, ""),
                        new Cause("b", "b", 1, List.of(), "l", 1, repair, "")),
                List.of(),
                hints);
    }

    private static List<Heard> heard(Fact... facts) {
        return SheetEvidence.heard(new HeatSheet().with(facts).sheet(), CATEGORY, SheetReader.PLAIN);
    }

    private static List<String> said(Fact... facts) {
        return heard(facts).stream()
                .map(h -> h.report().id() + " " + h.report().value() + " "
                        + h.report().reliability() + (h.report().superseded() ? " superseded" : ""))
                .toList();
    }

    private static ChangesAsked changes(ChangeAnswer hardware) {
        Map<ChangeKind, ChangeAnswer> answers = new EnumMap<>(ChangeKind.class);
        for (ChangeKind kind : ChangeKind.values()) {
            answers.put(kind, kind == ChangeKind.HARDWARE ? hardware : ChangeAnswer.UNKNOWN);
        }
        return new ChangesAsked(answers, hardware == ChangeAnswer.YES ? "a card" : "");
    }

    private static FindingAnswered answer(String finding, String value) {
        return new FindingAnswered(finding, finding, value, Source.SEEN);
    }

    private static ReadingRecorded speed(String quantity, String value) {
        return new ReadingRecorded(quantity, value, "1/min", "processor", "", null, null, "");
    }

    @Test
    void latestAnswersAboutChanges_count_andUnknownIsNeverNo() {
        assertEquals(List.of("entry-2/changed yes 0.8"), said(changes(ChangeAnswer.YES)));
        assertEquals(List.of("entry-3/changed no 0.8"), said(changes(ChangeAnswer.YES), changes(ChangeAnswer.NO)));
        assertEquals(List.of(), said(changes(ChangeAnswer.YES), changes(ChangeAnswer.UNKNOWN)));
    }

    private static CauseCategory withComplaints(List<Phrases> phrases, String... complaints) {
        Hints own = CATEGORY.hints();
        return new CauseCategory(
                CATEGORY.id(),
                CATEGORY.title(),
                CATEGORY.escalateMinutes(),
                CATEGORY.groups(),
                CATEGORY.findings(),
                CATEGORY.causes(),
                CATEGORY.sharedRepairs(),
                new Hints(own.feeds(), own.readings(), phrases, List.of(complaints)));
    }

    private static List<String> notNamed(CauseCategory category, Fact... facts) {
        return SheetEvidence.heard(new HeatSheet().with(facts).sheet(), category, SheetReader.PLAIN).stream()
                .map(Heard::report)
                .filter(SheetEvidence::isNotNamed)
                .map(r -> r.id() + " " + r.value() + " " + r.reliability() + " " + r.presumed())
                .toList();
    }

    @Test
    void complaintThatWasNotNamed_isRatherNotSo_onceAnotherWasNamed() {
        CauseCategory category = withComplaints(List.of(), "comes", "drive", "added");
        assertEquals(List.of(), notNamed(category, answer("smell", "yes")), "no complaint was named");
        assertEquals(List.of(), notNamed(category, answer("comes", "no")), "nor by one that is not so");
        assertEquals(List.of(), notNamed(category, answer("comes", "unknown")));
        assertEquals(
                List.of("entry-2/not-named/drive no 0.4 true", "entry-2/not-named/added no 0.4 true"),
                notNamed(category, answer("comes", "yes"), answer("smell", "yes")));
        assertEquals(
                List.of("entry-2/not-named/added no 0.4 true"),
                notNamed(category, answer("comes", "yes"), answer("drive", "yes")),
                "whoever answered it is heard, not the silence");
        assertEquals(
                List.of("entry-2/not-named/drive no 0.4 true", "entry-2/not-named/added no 0.4 true"),
                notNamed(category, new SymptomRecorded("it stops", "it stops", true)),
                "it follows from the form as well");
    }

    @Test
    void complaintThatTheWordsSuggest_wasNamed_whetherAnsweredOrNot() {
        Phrases words = new Phrases("drive", "yes", List.of(Phrase.of("grinds")));
        Phrases raised = new Phrases("added", Phrases.ASK, List.of(Phrase.of("new card")));
        CauseCategory category = withComplaints(List.of(words, raised), "comes", "drive", "added");
        assertEquals(
                List.of("entry-2/not-named/added no 0.4 true"),
                notNamed(category, new SymptomRecorded("it grinds", "it grinds", true)));
        assertEquals(
                List.of(), notNamed(category, new SymptomRecorded("it grinds with the new card", "it grinds", true)));
    }

    @Test
    void answer_dropsWhatFollowed_whicheverCameFirst() {
        assertEquals(List.of("entry-3 no 0.95"), said(changes(ChangeAnswer.YES), answer("changed", "no")));
        assertEquals(List.of("entry-2 no 0.95"), said(answer("changed", "no"), changes(ChangeAnswer.YES)));
        assertEquals(
                List.of("entry-2 unknown 0.95", "entry-3/changed yes 0.8"),
                said(answer("changed", "unknown"), changes(ChangeAnswer.YES)));
    }

    @Test
    void narrowerAnswer_dropsWhatFollowedForTheWiderFinding() {
        assertEquals(List.of("entry-3 yes 0.95"), said(changes(ChangeAnswer.YES), answer("added", "yes")));
        assertEquals(
                List.of("entry-2/changed yes 0.8", "entry-3 unknown 0.95"),
                said(changes(ChangeAnswer.YES), answer("added", "unknown")));
    }

    @Test
    void hazards_areHeard_absenceOnlyPresumed() {
        Map<Hazard, Boolean> present = new EnumMap<>(Hazard.class);
        for (Hazard hazard : Hazard.values()) {
            present.put(hazard, false);
        }
        Report absent = heard(new HazardsScreened(present)).get(0).report();
        assertTrue(absent.presumed());
        assertEquals("no", absent.value());
        present.put(Hazard.SMELL, true);
        Report there = heard(new HazardsScreened(present)).get(0).report();
        assertEquals("yes", there.value());
        assertEquals(Source.SEEN.reliability(), there.reliability());
    }

    @ParameterizedTest
    @CsvSource({"INTERMITTENT, yes", "YES, no", "NO, ", "UNSAFE_TO_TRY, "})
    void reproduction_tellsWhetherItComesAndGoes(Reproduction outcome, @Nullable String expected) {
        List<String> values = heard(new ReproductionTried(outcome, "as told")).stream()
                .map(h -> h.report().value())
                .toList();
        assertEquals(Optional.ofNullable(expected).map(List::of).orElse(List.of()), values);
    }

    @Test
    void intermittentSymptom_isHeardOnce_evenIfItWasReproduced() {
        assertEquals(
                List.of("entry-2/comes yes 0.8"),
                said(
                        new SymptomRecorded("stops", "it stops", true),
                        new SymptomRecorded("hums", "it hums", true),
                        new ReproductionTried(Reproduction.YES, "ran it")));
    }

    @Test
    void reading_isTheFindingThatItsWordsName() {
        assertEquals(List.of("entry-2/fan below 0.95"), said(speed("Fan speed", "200")));
        assertEquals(List.of(), said(speed("graphics fan speed", "200")));
        assertEquals(List.of(), said(speed("speed", "200")));
        assertEquals(List.of(), said(speed("rear fan speed", "200")), "two findings are meant: nobody can say");
        ReadingRecorded volts = new ReadingRecorded("fan speed", "12", "V", "processor", "", null, null, "");
        assertEquals(List.of(), said(volts));
    }

    @Test
    void severalNumbersOfOneReadIn_countOnce_theFarthestOut() {
        HeatSheet sheet = new HeatSheet()
                .withTogether(speed("fan speed", "250"), speed("fan speed", "120"), speed("fan speed", "900"));
        List<Heard> heard = SheetEvidence.heard(sheet.sheet(), CATEGORY, SheetReader.PLAIN);
        assertEquals(
                List.of("entry-3/fan"), heard.stream().map(h -> h.report().id()).toList());
        assertEquals(180, heard.get(0).excess(), 1e-9);
    }

    @Test
    void laterNumberAfterWork_takesTheWeight_butNotFromIntake() {
        ActionSettled done = new ActionSettled(99, Settlement.CARRIED_OUT, "");
        assertEquals(
                List.of("entry-2/fan below 0.95 superseded", "entry-4/fan inside 0.95"),
                said(speed("fan speed", "200"), done, speed("fan speed", "900")));
        assertEquals(
                List.of("entry-2/fan below 0.95", "entry-3/fan inside 0.95"),
                said(speed("fan speed", "200"), speed("fan speed", "900")));
        assertEquals(List.of("entry-2/changed yes 0.8"), said(changes(ChangeAnswer.YES), done));
    }

    /** Not seen says little where the fault comes and goes; seen says what it says. */
    @Test
    void fleetingFinding_weighsLessInItsNormalValue() {
        SymptomRecorded now = new SymptomRecorded("stops", "it stops", true);
        assertEquals(
                List.of("entry-2/comes yes 0.8", "entry-3 no 0.6", "entry-4/fan inside 0.6"),
                said(now, answer("drive", "no"), speed("fan speed", "900")));
        assertEquals(
                List.of("entry-2/comes yes 0.8", "entry-3 yes 0.95", "entry-4/fan below 0.95"),
                said(now, answer("drive", "yes"), speed("fan speed", "200")));
    }

    @Test
    void driveFailure_isHeard_andEndsWithItsCorrection() {
        assertEquals(List.of("entry-2/drive yes 0.95"), said(new FindingRecorded("It clicks", true)));
        assertEquals(List.of(), said(new FindingRecorded("It clicks", false)));
        assertEquals(
                List.of("entry-2/drive yes 0.95"),
                said(new FindingRecorded("Drive health, failing. Spare used up.", false)));
    }

    @Test
    void whatIsNotPossible_weighsNothing_andSaysWhy() {
        ReadingRecorded wrong = speed("fan speed", "99999");
        assertEquals(List.of(), said(wrong));
        Map<Integer, String> why =
                SheetEvidence.unheard(new HeatSheet().with(wrong).sheet(), CATEGORY, SheetReader.PLAIN);
        assertEquals(Set.of(2), why.keySet());
        assertTrue(why.get(2).contains("physically possible"), why.toString());
    }
}
