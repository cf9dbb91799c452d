package org.benchtrail.core.training;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.judging.Soak;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.Refused;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReadingVerdict;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.junit.jupiter.api.Test;

class RecallMakerTest {
    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");
    private static final CoachTexts TEXTS = new CoachTexts(Requirements.all().stream()
            .map(r -> CoachText.of(
                    r.code(),
                    "Why.",
                    "Good.",
                    "An [[example]] here.",
                    "Poor " + r.code() + ".",
                    "Fails " + r.code() + ".",
                    CoachText.Judge.P))
            .toList());

    private final List<Entry> entries = new ArrayList<>();

    RecallMakerTest() {
        add(
                "kim",
                new Opened(
                        "40718-6",
                        "Rae's till is dark",
                        "Rae says it is dark",
                        Category.HEAT,
                        "till",
                        "Rae's hall",
                        0,
                        Priority.Impact.ONE_PERSON,
                        Priority.Urgency.HINDERED,
                        "kim",
                        Set.of(Role.TRAINEE)));
    }

    private final Map<Integer, Soak.Input> soaks = new HashMap<>();

    private void add(String by, Fact fact) {
        entries.add(new Entry(new Stamp(entries.size() + 1, START, by, Set.of(Role.TRAINEE)), fact));
    }

    private List<RecallItem> made(Map<String, Integer> asked) {
        RecallItem.Source source =
                new RecallItem.Source("40718-6", "/whole", "/at/", "Overheating", START.plusSeconds(9000));
        return RecallMaker.of(
                List.of(new RecallJob(source, "kim", JobSheet.replay(entries), soaks, Optional.empty())), TEXTS, asked);
    }

    private List<RecallItem> made(RecallForm form) {
        return made(Map.of()).stream().filter(i -> i.form() == form).toList();
    }

    private void records() {
        add("kim", new SymptomRecorded("Rae says: dark", "No light", false));
        add("kim", new OnsetRecorded(true, "Rae came in"));
    }

    private static HazardsScreened screened(boolean smell) {
        Map<Hazard, Boolean> present = new EnumMap<>(Hazard.class);
        for (Hazard hazard : Hazard.values()) {
            present.put(hazard, hazard == Hazard.SMELL && smell);
        }
        return new HazardsScreened(present);
    }

    @Test
    void anEmptyJob_asksNothing() {
        assertEquals(List.of(), made(Map.of()));
    }

    @Test
    void whatWasMissing_isAskedFromTheKindsRecordedThen_andNobodyIsNamed() {
        records();
        add("kim", new Refused("advanced", List.of("hazards-screened", "scope-known", "forecast-first")));
        add("kim", new Refused("advanced", List.of("scope-known")));
        RecallItem item = made(RecallForm.NEXT_LACK).get(0);
        assertEquals(1, made(RecallForm.NEXT_LACK).size(), "the first of a step");
        assertEquals("next-lack:40718-6:4", item.id());
        assertEquals(List.of("symptom recorded", "onset recorded"), item.given());
        assertEquals(Requirements.of(Step.IDENTIFY).size(), item.choices().size());
        assertEquals(Set.of("hazards-screened", "scope-known"), new HashSet<>(item.key()));
        assertTrue(item.safety());
        assertTrue(item.isRight(List.of("scope-known", "hazards-screened")));
        assertFalse(item.isRight(List.of("scope-known")), "one short");
        assertFalse(item.isRight(List.of("scope-known", "hazards-screened", "onset-known")), "one too many");
        assertEquals("/at/4", item.link());
        made(Map.of()).forEach(i -> assertFalse(i.toString().contains("Rae"), i::toString));
    }

    @Test
    void anothersRefusal_andOneBeforeAnythingWasRecorded_askNothing() {
        add("kim", new Refused("advanced", List.of("scope-known")));
        records();
        add("lee", new Refused("advanced", List.of("scope-known")));
        add("kim", new Refused("action-settled", List.of("cautions-taken")));
        assertEquals(List.of(), made(RecallForm.NEXT_LACK));
        assertEquals(
                List.of("why:scope-known"),
                made(RecallForm.WHY).stream().map(RecallItem::id).toList());
    }

    @Test
    void aMissedRequirement_asksByThePoorEntryOfTheCoach() {
        records();
        add("kim", new Refused("advanced", List.of("scope-known")));
        RecallItem item = made(RecallForm.WHY).get(0);
        assertEquals(List.of("Poor scope-known."), item.given());
        assertEquals("Fails scope-known.", item.because());
        assertEquals(4, item.choices().size());
        assertEquals(4, new HashSet<>(item.choices()).size());
        for (RecallItem.Choice choice : item.choices()) {
            assertEquals(choice.id().equals("scope-known"), item.isRight(List.of(choice.id())));
            assertEquals(
                    Step.IDENTIFY,
                    Requirements.of(choice.id()).map(Requirement::step).orElseThrow());
        }
    }

    /** By where it stands a choice tells nothing: over all requirements the right one is in each place. */
    @Test
    void theRightChoice_isInEveryPlace() {
        records();
        add(
                "kim",
                new Refused(
                        "advanced",
                        Requirements.all().stream().map(Requirement::code).toList()));
        Map<Integer, Integer> places = new HashMap<>();
        for (RecallItem item : made(RecallForm.WHY)) {
            List<String> ids =
                    item.choices().stream().map(RecallItem.Choice::id).toList();
            places.merge(ids.indexOf(item.key().get(0)), 1, Integer::sum);
        }
        assertEquals(Set.of(0, 1, 2, 3), places.keySet(), places::toString);
        assertTrue(places.values().stream().allMatch(n -> n >= 3 && n <= 18), places::toString);
    }

    @Test
    void noAnswer_isNeitherRightNorWrong() {
        records();
        add("kim", new Refused("advanced", List.of("scope-known")));
        RecallItem item = made(RecallForm.WHY).get(0);
        for (List<String> none :
                List.of(List.<String>of(), List.of(""), List.of("no-such"), List.of("scope-known", "onset-known"))) {
            assertThrows(Invalid.class, () -> item.isRight(none), none::toString);
        }
    }

    /** The verdict is that of the readings of a job sheet, for values drawn on all sides of the limit. */
    @Test
    void aReading_isAskedWithAnotherValue_eachTime_judgedByItsInstrument() {
        add(
                "kim",
                new ReadingRecorded(
                        "supply",
                        "11.98",
                        "V",
                        "Rae's plug",
                        "meter",
                        "11.40",
                        "12.60",
                        "standard",
                        "0.5 % + 2 digits",
                        "2",
                        null));
        Set<String> verdicts = new HashSet<>();
        Set<String> values = new HashSet<>();
        for (int time = 0; time < 60; time++) {
            RecallItem item = made(Map.of("value:40718-6:2", time)).get(0);
            String value = item.asks().replaceFirst("Does ([0-9.]+) V .*", "$1");
            values.add(value);
            verdicts.add(item.key().get(0));
            ReadingRecorded same = new ReadingRecorded(
                    "supply", value, "V", "plug", "meter", "11.40", "12.60", "standard", "0.5 % + 2 digits", "2", null);
            assertEquals(List.of(same.verdict().name()), item.key());
            double u = same.standardUncertainty().orElseThrow();
            assertTrue(Math.abs(Double.parseDouble(value) - 12.60) <= 3 * u * 1.02 + 0.005, value);
            assertFalse(item.toString().contains("Rae"), item::toString);
        }
        assertTrue(values.size() >= 10, values::toString);
        assertEquals(
                Set.of(ReadingVerdict.WITHIN.name(), ReadingVerdict.OUTSIDE.name(), ReadingVerdict.TOO_CLOSE.name()),
                verdicts);
    }

    @Test
    void aReadingWithoutLimitOrAccuracy_orOfAnother_asksNothing() {
        add("kim", new ReadingRecorded("supply", "11.98", "V", "plug", "", null, null, "", "1 %", "2", null));
        add("kim", new ReadingRecorded("supply", "11.98", "V", "plug", "", "11.40", "12.60", "standard"));
        add(
                "lee",
                new ReadingRecorded(
                        "supply", "11.98", "V", "plug", "", "11.40", "12.60", "standard", "1 %", "2", null));
        assertEquals(List.of(), made(RecallForm.VALUE));
    }

    @Test
    void whatComesFirst_isAskedWhereSomethingCouldComeToHarm_neverInItsOrder() {
        add("kim", new DataAnswered(DataState.NO_USER_DATA, ""));
        add("kim", screened(false));
        assertEquals(List.of(), made(RecallForm.WHAT_FIRST));
        add("kim", new DataAnswered(DataState.NOT_YET, ""));
        RecallItem data = made(RecallForm.WHAT_FIRST).get(0);
        assertEquals(List.of("data-protected", "expectation-first", "action-planned", "cautions-taken"), data.key());
        assertFalse(data.choices().stream().map(RecallItem.Choice::id).toList().equals(data.key()));
        assertTrue(data.isRight(data.key()));
        assertFalse(data.isRight(List.of("data-protected", "expectation-first", "cautions-taken", "action-planned")));
        assertThrows(Invalid.class, () -> data.isRight(data.key().subList(0, 3)));
        add("kim", screened(true));
        assertEquals(
                "hazards-screened", made(RecallForm.WHAT_FIRST).get(0).key().get(0));
    }

    @Test
    void aSoakTime_isAskedWithItsNumbers_toFivePerCent() {
        add(
                "kim",
                new BenchResultAttached(
                        "soak",
                        2,
                        "Soak time",
                        "{\"every\":6,\"doubt\":5,\"clean\":null}",
                        Result.Level.NONE,
                        "x",
                        "y",
                        List.of()));
        assertEquals(List.of(), made(RecallForm.ESTIMATE), "nobody can say what it was made from");
        soaks.put(entries.size(), new Soak.Input(6, 5, null));
        RecallItem item = made(RecallForm.ESTIMATE).get(0);
        double right = Double.parseDouble(item.key().get(0));
        Published.check("Poisson process, none in t with chance e^(-t/T)", 6 * Math.log(20), right, 1e-9);
        assertEquals(17.97, right, 0.005);
        assertTrue(item.isRight(List.of("17.97")) && item.isRight(List.of("18,8")) && item.isRight(List.of("17.1")));
        assertFalse(item.isRight(List.of("18.9")) || item.isRight(List.of("17.0")));
        assertThrows(Invalid.class, () -> item.isRight(List.of("about 18")));
        assertThrows(Invalid.class, () -> item.isRight(List.of()));
        assertFalse(item.given().toString().contains("17.97") || item.asks().contains("17.97"));
    }
}
