package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.action;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.lang.reflect.RecordComponent;
import java.time.Instant;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.desk.Addendum;
import org.benchtrail.core.method.desk.AskKind;
import org.benchtrail.core.method.desk.Asked;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.desk.ForecastCommitted;
import org.benchtrail.core.method.desk.ForecastKind;
import org.benchtrail.core.method.desk.PresenceEnded;
import org.benchtrail.core.method.desk.Refused;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.desk.WorkMark;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.ChangeAnswer;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.LikenessChecked;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.MarkKind;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.PictureMarked;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.StopWorkCleared;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.MakerConsulted;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.theorize.Inspection;
import org.benchtrail.core.method.theorize.Obvious;
import org.benchtrail.core.method.theorize.ObviousQuestioned;
import org.benchtrail.core.method.theorize.RankedCause;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.benchtrail.core.method.verify.FunctionChecked;
import org.benchtrail.core.method.verify.ItemState;
import org.benchtrail.core.method.verify.PreventionConsidered;
import org.benchtrail.core.method.verify.RequesterAnswered;
import org.benchtrail.core.method.verify.RequesterState;
import org.benchtrail.core.method.verify.SoakRun;
import org.benchtrail.core.method.verify.SymptomRechecked;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The line in which a fact is read in trail and record says which of its two sides it is: yes or no, gone or still there. */
class FactSentencesTest {
    private static ChangesAsked changes(ChangeAnswer hardware, ChangeAnswer software) {
        Map<ChangeKind, ChangeAnswer> answers = new EnumMap<>(ChangeKind.class);
        for (ChangeKind kind : ChangeKind.values()) {
            answers.put(kind, ChangeAnswer.NO);
        }
        answers.put(ChangeKind.HARDWARE, hardware);
        answers.put(ChangeKind.SOFTWARE, software);
        return new ChangesAsked(answers, hardware == ChangeAnswer.YES ? "A hub" : "");
    }

    private static AttachmentAdded picture(Instant taken) {
        return new AttachmentAdded("fan.png", "image/png", 9, "a".repeat(64), "The fan", taken, null);
    }

    private static ObviousQuestioned cablesSuspect() {
        Map<Obvious, Inspection> looks = new EnumMap<>(Obvious.class);
        for (Obvious each : Obvious.values()) {
            looks.put(each, Inspection.IN_ORDER);
        }
        looks.put(Obvious.CABLES, Inspection.SUSPECT);
        return new ObviousQuestioned(looks, "");
    }

    private static TheoriesRanked ranked(int causes) {
        List<RankedCause> all = Stream.iterate(1, i -> i + 1)
                .limit(causes)
                .map(i -> new RankedCause("h" + i, "Cause " + i, "0.1000"))
                .toList();
        return new TheoriesRanked(List.of(), "catalogue", all, 1);
    }

    private static ReadingRecorded volts(String value, String lower, String upper) {
        return new ReadingRecorded("voltage", value, "V", "plug", "meter", lower, upper, "label");
    }

    static Stream<Arguments> lines() {
        return Stream.of(
                Arguments.of(changes(ChangeAnswer.NO, ChangeAnswer.NO), "nothing known to have changed"),
                Arguments.of(
                        changes(ChangeAnswer.YES, ChangeAnswer.UNKNOWN),
                        "changed: " + ChangeKind.HARDWARE.words() + "; unknown: " + ChangeKind.SOFTWARE.words()
                                + ": A hub"),
                Arguments.of(Sheets.noHazard(), "none found"),
                Arguments.of(Sheets.hazard(Hazard.SMELL), "found: " + Hazard.SMELL.words()),
                Arguments.of(new LikenessChecked(List.of()), "nothing alike was there"),
                Arguments.of(new LikenessChecked(List.of("40719-4")), "looked at 40719-4"),
                Arguments.of(new LogsReviewed(true, "Clean"), "read: Clean"),
                Arguments.of(new LogsReviewed(false, "There are none"), "not read: There are none"),
                Arguments.of(new OnsetRecorded(true, "Monday"), "Monday"),
                Arguments.of(new OnsetRecorded(false, ""), "nobody knows"),
                Arguments.of(
                        new SymptomRecorded("Dark", "No light", false), "No light; in the requester's words: Dark"),
                Arguments.of(new SymptomRecorded("Dark", "Dark", true), "Dark; it comes and goes"),
                Arguments.of(new FindingRecorded("It clicks", true), "It clicks; a drive has failed"),
                Arguments.of(new FindingRecorded("It clicks", false), "It clicks"),
                Arguments.of(new FindingAnswered("h1", "Does it turn?", "no", Source.SEEN), "Does it turn? no (seen)"),
                Arguments.of(new FindingAnswered("h1", "The fan", "stands", Source.SEEN), "The fan: stands (seen)"),
                Arguments.of(picture(Instant.EPOCH), "fan.png: The fan; taken 09:30 by the clock of the device"),
                Arguments.of(picture(null), "fan.png: The fan"),
                Arguments.of(
                        new PictureMarked(9, MarkKind.CIRCLE, 1, 2, 3, 4, "Bent"),
                        "on the picture of entry 9, circle: Bent"),
                Arguments.of(
                        cablesSuspect(),
                        "power on, supply and switch in order, cables and seating suspect,"
                                + " settings in order, what changed last in order"),
                Arguments.of(new TheoriesRanked(List.of(4, 3), "Looks"), "entries 4, 3; Looks"),
                Arguments.of(ranked(1), "Cause 1, about 1 in 10; catalogue"),
                Arguments.of(
                        ranked(5),
                        "Cause 1, about 1 in 10, Cause 2, about 1 in 10, Cause 3, about 1 in 10 and 2 more; catalogue"),
                Arguments.of(new MakerConsulted(true, "Sheet 7"), "what the maker says: Sheet 7"),
                Arguments.of(new MakerConsulted(false, "Searched"), "the maker says nothing on it: Searched"),
                Arguments.of(new StopWorkCleared("Cooled", true), "Cooled"),
                Arguments.of(new PreventionConsidered(true, "Filter"), "there is some: Filter"),
                Arguments.of(new PreventionConsidered(false, "Age"), "none is needed: Age"),
                Arguments.of(new RequesterAnswered(RequesterState.NOT_REACHED, 3, ""), "could not be reached, 3 tries"),
                Arguments.of(new RequesterAnswered(RequesterState.AGREES, 1, ""), "agrees that it is solved"),
                Arguments.of(new SoakRun(60, true, ""), "60 min, it came back"),
                Arguments.of(new SoakRun(60, false, ""), "60 min, it stayed away"),
                Arguments.of(new SymptomRechecked(2, true, "Ran"), "that of entry 2 is gone: Ran"),
                Arguments.of(new SymptomRechecked(2, false, "Ran"), "that of entry 2 is still there: Ran"),
                Arguments.of(
                        new FunctionChecked(Map.of(), "", Map.of("Fans turn", ItemState.WORKS)), "Fans turn: works"),
                Arguments.of(
                        volts("12", "11.4", "12.6"),
                        "voltage, plug: 12 V, within its limit; limit: 11.4 to 12.6\u202fV, label; meter"),
                Arguments.of(
                        volts("11", "11.4", null),
                        "voltage, plug: 11 V, outside its limit; limit: at least 11.4\u202fV, label; meter"),
                Arguments.of(
                        volts("12", null, "12.6"),
                        "voltage, plug: 12 V, within its limit; limit: at most 12.6\u202fV, label; meter"),
                Arguments.of(
                        new ReadingRecorded("voltage", "12", "V", "plug", "meter", null, null, ""),
                        "voltage, plug: 12 V, no limit given; meter"),
                Arguments.of(
                        action(true, true, true, true, "84.50", "Cooler"),
                        "Clean the cooler; effect: Temperature under load falls; impact: One person, half an hour;"
                                + " irreversible; touches storage; reaches beyond the one device; of high risk;"
                                + " cost: 84.50; part: Cooler"),
                Arguments.of(
                        action(false, false, false, false, null, null),
                        "Clean the cooler; effect: Temperature under load falls; impact: One person, half an hour;"
                                + " way back: Put the cover back"),
                Arguments.of(new CheckPlanned(3, "Look", "Dust", true, Set.of()), "Look; expected: Dust; invasive"),
                Arguments.of(new CheckPlanned(3, "Look", "Dust", false, Set.of()), "Look; expected: Dust"),
                Arguments.of(new Rethought("Dry", true), "Dry; the theory is wrong"),
                Arguments.of(new Rethought("Dry", false), "Dry; the theory still stands"),
                Arguments.of(new VerifyFailed("Dark"), "Dark; a symptom persists"),
                Arguments.of(new VerifyFailed("Hum", false), "Hum; only something new appeared"),
                Arguments.of(new Addendum(Addendum.About.CAUSE, "Worn", null), "a better cause: Worn"),
                Arguments.of(
                        new Addendum(Addendum.About.CAUSE, "Worn", "onset-known"),
                        "a better cause on " + title("onset-known") + ": Worn"),
                Arguments.of(new Asked(AskKind.MENTOR, null, "Look"), AskKind.MENTOR.words() + ": Look"),
                Arguments.of(
                        new Asked(AskKind.WAIVER, "reproduced", "No second"),
                        AskKind.WAIVER.words() + " of " + title("reproduced") + ": No second"),
                Arguments.of(
                        new CautionsAcknowledged(23, Set.of(Caution.HEAT)), "for entry 23: " + Caution.HEAT.title()),
                Arguments.of(
                        new ForecastCommitted(ForecastKind.CAUSES, null, 2, "ab".repeat(32)),
                        "the causes, before their ranking is shown, round 2"),
                Arguments.of(new PresenceEnded(61, true, "Cord out"), "that of entry 61, stayed: Cord out"),
                Arguments.of(new PresenceEnded(61, false, "Left"), "that of entry 61, did not stay: Left"),
                Arguments.of(new Refused("advanced", List.of("onset-known")), "advanced: " + title("onset-known")),
                Arguments.of(new Refused("soak-run", List.of()), "soak run"),
                Arguments.of(new Remarked(12, null, "Where?", null), "Where?"),
                Arguments.of(
                        new Remarked(null, "onset-known", "Good", WorkMark.SATISFIED),
                        "on " + title("onset-known") + ", satisfied: Good"),
                Arguments.of(new Remarked(null, "onset-known", "Good", null), "on " + title("onset-known") + ": Good"),
                Arguments.of(new Signed(Signatory.MENTOR), "as mentor"));
    }

    private static String title(String requirement) {
        return Requirements.of(requirement).orElseThrow().title();
    }

    @ParameterizedTest
    @MethodSource("lines")
    void line_saysWhichSideItIs(Fact fact, String line) {
        assertEquals(line, fact.told(FactToldTest.PLAIN));
    }

    @Test
    void everyKindWithAYesOrNo_hasARow() {
        Set<Class<?>> here = lines().map(row -> row.get()[0].getClass()).collect(Collectors.toSet());
        assertEquals(
                List.of(),
                FactKinds.all().values().stream()
                        .filter(kind -> Arrays.stream(kind.getRecordComponents())
                                .map(RecordComponent::getType)
                                .anyMatch(type -> type == boolean.class || type == Boolean.class))
                        .filter(kind -> !here.contains(kind))
                        .map(Class::getSimpleName)
                        .sorted()
                        .toList(),
                "say here how each of its sides is read");
    }
}
