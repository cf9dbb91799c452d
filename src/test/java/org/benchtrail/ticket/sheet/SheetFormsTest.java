package org.benchtrail.ticket.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.measure.LimitLibrary;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.ServerOnly;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Held;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Lesson;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.Work;
import org.benchtrail.ticket.form.FieldGroup;
import org.benchtrail.ticket.form.FormContext;
import org.benchtrail.ticket.form.SheetForm;
import org.junit.jupiter.api.Test;

/** What the forms of the job sheet become. */
class SheetFormsTest {
    /** What no group of fields becomes, and where it is recorded instead. */
    private static final Map<String, String> OTHERWISE = Map.of(
            "advanced", "the button that leaves the step",
            "closed", "the button that leaves the last step",
            "ruled-out", "the button of the step test",
            "attachment-added", "AttachmentActs: a file is sent",
            "picture-marked", "MarkForm, on the picture's own page",
            "presence-ended", "PresenceActs, on the mentor's page",
            "theories-ranked", "the server ranks; programs may give an order");

    private static final ZoneId ZONE = ZoneId.of("Europe/Vienna");
    private static final FormContext CONTEXT = new FormContext(Optional.empty(), LimitLibrary.published(), ZONE);
    private static final Instant START = Instant.parse("2031-03-03T08:00:00Z");

    private static JobSheet sheet(Fact... facts) {
        JobSheet sheet = JobSheet.open(new Entry(
                stamp(1),
                new Opened(
                        "40718-6",
                        "Switches off",
                        "It just goes dark",
                        Category.HEAT,
                        "Workstation",
                        "Office",
                        17,
                        Priority.Impact.ONE_PERSON,
                        Priority.Urgency.HINDERED,
                        "ines",
                        Set.of(Role.TECHNICIAN))));
        for (Fact fact : facts) {
            sheet = sheet.with(new Entry(stamp(sheet.entries() + 1), fact));
        }
        return sheet;
    }

    private static Stamp stamp(int entry) {
        return new Stamp(entry, START.plusSeconds(60L * entry), "ines", Set.of(Role.TECHNICIAN));
    }

    private static Work read(String form, JobSheet sheet, String... namesAndValues) {
        Map<String, List<String>> typed = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            typed.put(namesAndValues[i], List.of(namesAndValues[i + 1]));
        }
        return SheetForms.find(form).orElseThrow().read(new PostedForm(typed), sheet, CONTEXT);
    }

    /** What the acts record when each takes its turn. */
    private static List<Fact> facts(Work work, JobSheet start) {
        List<Fact> facts = new ArrayList<>();
        JobSheet sheet = start;
        for (Act act : work.acts()) {
            facts.add(act.on(sheet));
            sheet = sheet.with(new Entry(stamp(sheet.entries() + 1), act.on(sheet)));
        }
        return facts;
    }

    @Test
    void forms_haveDifferentNames() {
        List<String> names = SheetForms.ALL.stream().map(SheetForm::name).toList();
        assertEquals(names.stream().distinct().toList(), names);
        assertEquals(Optional.empty(), SheetForms.find("no-such-form"));
    }

    @Test
    void forms_takeEveryComponentOfTheirGroups_andNothingElse() {
        for (SheetForm form : SheetForms.ALL) {
            for (FieldGroup<?> group : form.groups()) {
                for (RecordComponent component : group.kind().getRecordComponents()) {
                    assertTrue(form.takes(group.name() + "." + component.getName()), form::name);
                }
                assertFalse(form.takes(group.name() + ".nosuch"), form::name);
            }
            assertTrue(form.takes("version"), form::name);
            assertFalse(form.takes("nosuch.when"), form::name);
        }
        assertTrue(SheetForms.find("carry-out").orElseThrow().takes("settle-12.note"));
        assertTrue(SheetForms.find("identify").orElseThrow().takes("hazards.present.SMOKE"));
        assertFalse(SheetForms.find("identify").orElseThrow().takes("onset.when.SMOKE"));
    }

    @Test
    void answer_isRecordedOnlyIfItSaysSomethingElse() {
        JobSheet sheet = sheet(new OnsetRecorded(true, "Monday"));
        Work changed = read("identify", sheet, "onset.known", "true", "onset.when", "Sunday");
        assertEquals(List.of(new OnsetRecorded(true, "Sunday")), facts(changed, sheet));
        Work same = read("identify", sheet, "onset.known", "true", "onset.when", "Monday", "then", "move");
        assertEquals(List.of(), same.acts());
        assertEquals(new Advanced(), same.move());
    }

    @Test
    void form_inWhichNothingIsNew_isRefused() {
        Invalid refused = assertThrows(
                Invalid.class,
                () -> read(
                        "identify",
                        sheet(new OnsetRecorded(true, "Monday")),
                        "onset.known",
                        "true",
                        "onset.when",
                        "Monday"));
        assertEquals("form", refused.problems().get(0).field());
    }

    /** The report says who is affected: shown, taken with going on, and no answer of whoever only saves something else. */
    @Test
    void whoIsAffected_standsAsItWasReported_andIsSavedWithTheRest() {
        JobSheet sheet = sheet();
        assertEquals("ONE", SheetForms.values(sheet, CONTEXT).value("scope.scope"));
        for (String then : List.of("stay", "move")) {
            assertEquals(
                    List.of(new ScopeRecorded(Scope.ONE, ""), new LogsReviewed(true, "Nothing of note")),
                    facts(read("identify", sheet, "scope.scope", "ONE", "logs.looked", "nothing", "then", then), sheet),
                    then);
        }
        assertEquals(
                List.of(new ScopeRecorded(Scope.SITE, "")),
                facts(read("identify", sheet, "scope.scope", "SITE", "then", "stay"), sheet));
        JobSheet found = sheet(new ScopeRecorded(Scope.SITE, ""));
        assertEquals("SITE", SheetForms.values(found, CONTEXT).value("scope.scope"));
        assertThrows(Invalid.class, () -> read("identify", found, "scope.scope", "SITE", "then", "stay"));
    }

    /** What the form works out by itself is no answer as long as something else is saved. */
    @Test
    void whatTheFormOffers_countsWithGoingOn() {
        JobSheet sheet = sheet();
        String minutes = SheetForms.values(sheet, CONTEXT).value("effort.minutes");
        String[] sent = {
            "knowledge.learned", "NOTHING", "knowledge.text", "Common", "effort.minutes", minutes, "then", "stay"
        };
        KnowledgeLinked nothing = new KnowledgeLinked(Lesson.NOTHING, "Common");
        assertEquals(List.of(nothing), facts(read("document", sheet, sent), sheet));
        sent[7] = "move";
        assertTrue(facts(read("document", sheet, sent), sheet).stream().anyMatch(EffortRecorded.class::isInstance));
    }

    /** Under all that is recorded with it, and not again while it stands. */
    @Test
    void whoCloses_signs() {
        SummaryWritten summary = new SummaryWritten("Dust", "Cleaned", "Runs cool");
        Signed signature = new Signed(Signatory.ASSIGNEE);
        JobSheet unsigned = sheet(summary);
        assertEquals(List.of(signature), facts(read("document", unsigned, "then", "move"), unsigned));
        JobSheet signed = sheet(summary, signature);
        assertEquals(List.of(), read("document", signed, "then", "move").acts());
        String[] lesson = {"knowledge.learned", "NOTHING", "knowledge.text", "Common", "then", "stay"};
        KnowledgeLinked nothing = new KnowledgeLinked(Lesson.NOTHING, "Common");
        assertEquals(List.of(nothing), facts(read("document", signed, lesson), signed));
        lesson[5] = "move";
        assertEquals(List.of(nothing, signature), facts(read("document", signed, lesson), signed));
    }

    @Test
    void onset_isKnownOnceItIsSaid() {
        JobSheet sheet = sheet();
        assertEquals(
                List.of(new OnsetRecorded(true, "Monday")),
                facts(read("identify", sheet, "onset.when", "Monday"), sheet));
        assertEquals(
                List.of(new OnsetRecorded(false, "asked two people")),
                facts(read("identify", sheet, "onset.known", "false", "onset.when", "asked two people"), sheet));
    }

    @Test
    void wordsOfTheReport_aloneAreNoSymptom() {
        JobSheet sheet = sheet();
        assertEquals("It just goes dark", SheetForms.values(sheet, CONTEXT).value("symptom.words"));
        Work offered = read("identify", sheet, "symptom.words", "It just goes dark", "then", "move");
        assertEquals(List.of(), offered.acts());
        Work observed = read(
                "identify", sheet, "symptom.words", "It just goes dark", "symptom.observable", "No light on the front");
        assertEquals(
                List.of(new SymptomRecorded("It just goes dark", "No light on the front", false)),
                facts(observed, sheet));
        assertNull(observed.move());
    }

    @Test
    void newTheory_isChosenByTheEntryThatStatesIt() {
        JobSheet sheet = sheet();
        Work work = read("theorize", sheet, "theory.text", "The fan is blocked", "othertheory.text", "Dry paste");
        assertEquals(
                List.of(
                        new TheoryStated("The fan is blocked", null),
                        new TheoryChosen(2, "", ""),
                        new TheoryStated("Dry paste", null)),
                facts(work, sheet));
    }

    @Test
    void answerFromBeforeReopening_isAskedForAgain() {
        DataAnswered none = new DataAnswered(DataState.NO_USER_DATA, "");
        JobSheet first = sheet(none);
        assertEquals("NO_USER_DATA", SheetForms.values(first, CONTEXT).value("data.state"));
        assertEquals(
                List.of(),
                read("identify", first, "data.state", "NO_USER_DATA", "then", "move")
                        .acts());
        JobSheet again = sheet(none, new Closed(), new Reopened("It is back"));
        assertEquals("", SheetForms.values(again, CONTEXT).value("data.state"));
        assertEquals(List.of(none), facts(read("identify", again, "data.state", "NO_USER_DATA"), again));
    }

    @Test
    void result_restsOnTheReadingOfTheSameForm() {
        JobSheet sheet = sheet(
                new TheoryStated("Dry paste", null), new CheckPlanned(2, "Measure it", "Above 90", false, Set.of()));
        List<Fact> facts = facts(
                read(
                        "result",
                        sheet,
                        "reading.quantity",
                        "processor temperature",
                        "reading.point",
                        "core",
                        "reading.value",
                        "97",
                        "reading.unit",
                        "\u00b0C",
                        "reading.instrument",
                        "sensor",
                        "result.check",
                        "3",
                        "result.observation",
                        "97",
                        "result.outcome",
                        "SUPPORTS"),
                sheet);
        assertEquals(new ResultRecorded(3, "97", CheckOutcome.SUPPORTS, 4), facts.get(1));
    }

    @Test
    void readingTakenAgain_keepsTheLimitOfTheFirst() {
        ReadingRecorded first = (ReadingRecorded) facts(
                        read(
                                "evidence",
                                sheet(),
                                "reading.quantity",
                                "processor temperature",
                                "reading.point",
                                "core",
                                "reading.value",
                                "97",
                                "reading.unit",
                                "°C",
                                "reading.instrument",
                                "sensor",
                                "reading.upper",
                                "90",
                                "reading.limitSource",
                                "maker"),
                        sheet())
                .get(0);
        JobSheet sheet = sheet(first);
        Work work = read("verify", sheet, "again-2.value", "71", "again-2.instrument", "sensor");
        ReadingRecorded again = (ReadingRecorded) facts(work, sheet).get(0);
        assertEquals("71", again.value());
        assertEquals(first.upper(), again.upper());
        assertEquals(first.quantity(), again.quantity());
        assertEquals(first.limitSource(), again.limitSource());
    }

    @Test
    void followUp_isTypedInTheViewersZone() {
        JobSheet sheet = sheet();
        Work work = read(
                "hold", sheet, "hold.waitingFor", "PART", "hold.followUp", "2031-03-04T09:30", "hold.note", "ordered");
        assertEquals(
                Instant.parse("2031-03-04T08:30:00Z"),
                ((Held) facts(work, sheet).get(0)).followUp());
        Invalid refused = assertThrows(
                Invalid.class, () -> read("hold", sheet, "hold.waitingFor", "PART", "hold.followUp", "tomorrow"));
        assertEquals("hold.followUp", refused.problems().get(0).field());
    }

    @Test
    void approval_hasToBeChosen() {
        Invalid refused = assertThrows(Invalid.class, () -> read("approve", sheet(), "approval.note", "fine"));
        assertEquals("answer", refused.problems().get(0).field());
    }

    /** A draft of a form that went with its step is shown as typed elsewhere; of one taken to be there still, nowhere. */
    @Test
    void formOfOneStepsTemplate_isThatStepsOwn() throws IOException {
        for (Step step : Step.values()) {
            String folder = step.name().toLowerCase(Locale.ROOT);
            String page = Files.readString(Path.of("src/main/resources/templates/ticket", folder, "step.html"));
            Stream.of(Step.values())
                    .filter(other -> other != step)
                    .flatMap(other -> SheetForms.at(other).stream())
                    .filter(form ->
                            !form.equals("ask") && !form.equals("identify")) // other templates have these as well
                    .forEach(form -> assertFalse(
                            page.contains("to='" + form + "'"),
                            form + " of " + step + ": name it in SheetForms.OF_STEP"));
        }
    }

    @Test
    void everyFactThatPeopleRecord_hasAGroupOfFields_orItsOtherPlaceIsNamed() {
        Set<String> typed = SheetForms.ALL.stream()
                .flatMap(form -> form.groups().stream())
                .map(group -> FactKinds.name(group.kind()))
                .collect(Collectors.toSet());
        Set<String> without = new TreeSet<>();
        FactKinds.all().forEach((name, kind) -> {
            if (!typed.contains(name) && !kind.isAnnotationPresent(ServerOnly.class)) {
                without.add(name);
            }
        });
        assertEquals(
                new TreeSet<>(OTHERWISE.keySet()),
                without,
                "nobody can type these: give them a drawn form, or the form of their step a group, or say here where they are recorded");
    }
}
