package org.benchtrail.core.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.catalogue.CatalogueFile;
import org.benchtrail.catalogue.CatalogueVersion;
import org.benchtrail.catalogue.PathsFile;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.path.Localiser;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.identify.ChangeAnswer;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a sheet's words raise, name and allow with the delivered catalogue: the log, the scope, the change to take back. */
class WordsPointTest {
    private static final Map<String, Localiser> PLACES = CatalogueVersion.of(
                    1, CatalogueFile.delivered(), PathsFile.delivered())
            .localisers();

    private static HeatSheet wired(Fact... facts) {
        return new HeatSheet(JobSheet.open(new Entry(
                        HeatSheet.stamp(1),
                        new Opened(
                                "40718-6",
                                "No network",
                                "",
                                Category.WIRED,
                                "Desk computer",
                                "Office",
                                1,
                                Priority.Impact.ONE_PERSON,
                                Priority.Urgency.HINDERED,
                                "ines",
                                Set.of(Role.TECHNICIAN)))))
                .with(facts);
    }

    private static Diagnosis diagnosis(HeatSheet sheet) {
        return Diagnosis.of(sheet.sheet(), PLACES.get("wired"), SheetReader.PLAIN);
    }

    private static List<String> suggested(HeatSheet sheet) {
        return Suggestions.of(sheet.sheet(), diagnosis(sheet)).stream()
                .map(s -> s.finding() + "=" + s.value())
                .toList();
    }

    private static boolean suggestsOfTheLog(Fact fact, String value) {
        return suggested(wired(fact)).contains("log=" + value);
    }

    @Test
    void thePlaceThatALogNames_isOneTapAway_andOnlyOfALog() {
        String line = "dhcp: no free addresses left";
        assertEquals(true, suggestsOfTheLog(new ExtractRecorded("address server", line), "dhcp"));
        assertEquals(false, suggestsOfTheLog(new FindingRecorded(line, false), "dhcp"));
    }

    @Test
    void aLogThatNamesSeveralPlaces_namesNone() {
        ExtractRecorded both = new ExtractRecorded("log", "dhcp: refused by the firewall");
        assertEquals(
                List.of(),
                suggested(wired(both)).stream()
                        .filter(s -> s.startsWith("log="))
                        .toList());
    }

    @Test
    void whatIsSaidOfTheScope_isHeard() {
        assertEquals(
                true,
                suggested(wired(new ScopeRecorded(Scope.ONE, "Only me, the others are fine")))
                        .contains("n6=no"));
    }

    @ParameterizedTest
    @CsvSource({
        "SETTINGS, the port was set anew, true",
        "HARDWARE, a second switch was added, true",
        "HARDWARE, it was cleaned, false",
        "PLACE, moved to a new room, false"
    })
    void onlyWhatCanBeTakenBack_isOfferedToBeUndone(ChangeKind kind, String note, boolean offered) {
        Map<ChangeKind, ChangeAnswer> answers = new EnumMap<>(ChangeKind.class);
        for (ChangeKind k : ChangeKind.values()) {
            answers.put(k, k == kind ? ChangeAnswer.YES : ChangeAnswer.NO);
        }
        Diagnosis now = diagnosis(wired(new ChangesAsked(answers, note)));
        assertEquals(offered, now.advice().actions().stream().map(Action::id).anyMatch("undo"::equals));
    }

    @Test
    void anAnswerThatTheWordsSuggest_isNoTest_aQuestionThatTheyRaiseIs() {
        Diagnosis answer = diagnosis(wired(new FindingRecorded("It is slow, it takes forever", false)));
        Diagnosis question = diagnosis(wired(new FindingRecorded("Two desks were swapped on Monday", false)));
        assertEquals(false, answer.where().order().get(0).id().equals("n34"));
        assertEquals("n46", question.where().order().get(0).id());
    }
}
