package org.benchtrail.ticket;

import static org.benchtrail.ticket.ApiDesk.ADVANCE;
import static org.benchtrail.ticket.ApiDesk.reading;
import static org.benchtrail.ticket.AttackSite.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

/** Ways to get rid of what a ticket owes, that hurried or dishonest people have tried: each is refused with its code and sentence. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class AttackTest extends AttackCase {
    private static final String LOOK_AGAIN = "Look for every symptom again, after the last action: ";
    private static final String MEASURE_AGAIN = "Measure again, after the last action, what was outside its limit: ";
    private static final String LET_IT_RUN = "The fault was intermittent: let it run 48 h without recurring";
    private static final String BACK_UP = "A drive is failing: back up all data now, or verify the backup";

    private static List<Object> lessened(ApiDesk desk) {
        return desk.sheet().getList("lessenings.entry");
    }

    // ---- closed with something open

    @Test
    void symptomRecordedAtTheEnd_orBack_keepsItOpen() {
        ApiDesk desk = site.atDocument("way-ines");
        int hum = desk.does(symptom("It hums", "A hum", false));
        desk.shut("way-ines", "symptoms-gone", LOOK_AGAIN + "A hum", CLOSE);
        String again = "{\"kind\":\"symptom-rechecked\",\"symptom\":" + hum + ",\"gone\":%s,\"how\":\"Listened\"}";
        desk.does(again.formatted("true"));
        desk.does(again.formatted("false"));
        desk.shut("way-ines", "symptoms-gone", LOOK_AGAIN + "A hum", CLOSE);
    }

    @Test
    void readingOutsideItsLimitAtTheEnd_keepsItOpen_andAWaiverCoversOnlyWhatWasKnown() {
        ApiDesk desk = site.atDocument("way-ines");
        desk.does(reading("97"));
        desk.shut("way-ines", "readings-back", MEASURE_AGAIN + "temperature, processor", CLOSE);
        desk.lets("way-boris", waived("readings-back"));
        desk.does(reading("98"));
        desk.shut("way-ines", "readings-back", MEASURE_AGAIN, CLOSE);
    }

    @Test
    void requesterWhoDisagreesAtTheEnd_keepsItOpen_andIsNotAnsweredByNotReaching() {
        ApiDesk desk = site.atDocument("way-ines");
        desk.does("{\"kind\":\"requester-answered\",\"state\":\"DISAGREES\"}");
        desk.shut("way-ines", "requester-agrees", "The requester does not agree: report what persists.", CLOSE);
        for (String other : List.of("\"NOT_REACHED\",\"tries\":3", "\"NO_USER\"")) {
            desk.does("{\"kind\":\"requester-answered\",\"state\":" + other + "}");
            desk.shut(
                    "way-ines",
                    "requester-agrees",
                    "The requester did not agree before: only that they agree now, or a waiver, answers that.",
                    CLOSE);
        }
    }

    @Test
    void widerLimit_lostAccuracy_orAnotherUnit_bringsNoReadingBack() {
        ApiDesk desk = site.atVerify("way-ines");
        desk.does(reading("97").replace("\"85\"", "\"120\""));
        desk.lacks("way-ines", "readings-back", MEASURE_AGAIN, ADVANCE);
        desk.does(reading("60").replace("\u00b0C", "%"));
        desk.lacks("way-ines", "readings-back", MEASURE_AGAIN, ADVANCE);
        desk.does(reading("331.15").replace("\u00b0C", "K").replace("\"85\"", "\"400\""));
        assertFalse(desk.refused("way-ines", ADVANCE).contains("readings-back"), "58 degrees, said in kelvin");
        String known = ",\"accuracy\":\"1\"}";
        desk.does(reading("97").replaceFirst("}$", known));
        desk.does(reading("70"));
        desk.lacks("way-ines", "readings-back", MEASURE_AGAIN, ADVANCE);
        desk.does(reading("84.5").replaceFirst("}$", known));
        desk.lacks("way-ines", "readings-back", MEASURE_AGAIN, ADVANCE);
        desk.does(reading("80").replaceFirst("}$", known));
        assertFalse(desk.refused("way-ines", ADVANCE).contains("readings-back"), "far enough from its limit");
    }

    // ---- corrected away

    @Test
    void symptomStruckOut_isOwedUntilASupervisorAgreesWhoHasNotWorkedOnIt() {
        ApiDesk desk = site.atVerify("way-ines");
        int symptom = first(desk, "symptom-recorded");
        int struck = desk.does(struck(symptom));
        desk.lacks("way-ines", "symptoms-gone", LOOK_AGAIN, ADVANCE);
        assertEquals(List.of(symptom), lessened(desk));
        String role = "Only a supervisor agrees that something is owed no longer.";
        desk.shut("way-ines", "not-your-role", role, agreed(struck));
        desk.shut("way-marek", "not-your-role", role, agreed(struck));
        desk.lets("way-sue", agreed(struck));
        assertEquals(List.of(), lessened(desk));
        desk.lacks("way-ines", "symptoms-gone", "There is no symptom left to look for", ADVANCE);
    }

    @Test
    void symptomMadeMilder_isLookedForAsItWas() {
        ApiDesk desk = site.atVerify("way-ines");
        int symptom = first(desk, "symptom-recorded");
        desk.does(corrected(symptom, symptom("It dies on me", "Nothing to be seen", false)));
        desk.lacks("way-ines", "symptoms-gone", LOOK_AGAIN + "Screen goes dark", ADVANCE);
        desk.does(offered("way-ole"));
        desk.lets("way-ole", handed("way-ole"));
        desk.lacks("way-ole", "symptoms-gone", LOOK_AGAIN + "Screen goes dark", ADVANCE);
    }

    @Test
    void intermittent_isNotTalkedAway_norSoakedInNoTime() {
        ApiDesk desk = site.atVerify("way-ines");
        int flicker = desk.does(symptom("Now and then", "It flickers", true));
        desk.lacks("way-ines", "soak-time-passed", LET_IT_RUN, ADVANCE);
        desk.does(corrected(flicker, symptom("Now and then", "It flickers", false)));
        desk.lacks("way-ines", "soak-time-passed", LET_IT_RUN, ADVANCE);
        String run = "{\"kind\":\"soak-run\",\"minutes\":2880,\"recurred\":false,\"note\":\"\"}";
        desk.malformed("way-ines", "minutes", "Record first that the run begins", run);
        desk.does("{\"kind\":\"soak-started\",\"note\":\"\"}");
        desk.malformed("way-ines", "minutes", "The run was started 0 min ago", run);
    }

    @Test
    void intermittentReproduction_isNotAnsweredAway() {
        ApiDesk desk = site.atVerify("way-ines");
        desk.does("{\"kind\":\"reproduction-tried\",\"outcome\":\"INTERMITTENT\",\"how\":\"Once in ten\"}");
        desk.does("{\"kind\":\"reproduction-tried\",\"outcome\":\"YES\",\"how\":\"Every time\"}");
        desk.lacks("way-ines", "soak-time-passed", LET_IT_RUN, ADVANCE);
    }

    @Test
    void readingCorrectedOrStruck_isOwedOn() {
        for (String instead : List.of(
                reading("71"),
                reading("96.5").replace("\"85\"", "\"120\""),
                reading("96.5").replace("processor", "outside air"),
                "null")) {
            ApiDesk desk = site.atVerify("way-ines");
            desk.does(corrected(first(desk, "reading-recorded"), instead));
            desk.lacks("way-ines", "readings-back", MEASURE_AGAIN + "temperature, processor", ADVANCE);
        }
    }

    @Test
    void driveFailureStruckOut_keepsDataFirst() {
        ApiDesk desk = site.atTheorize("way-ines");
        int finding =
                desk.does("{\"kind\":\"finding-recorded\",\"text\":\"Sectors reallocated\",\"driveFailure\":true}");
        for (String easy : List.of("\"NO_USER_DATA\"", "\"IMPOSSIBLE\",\"note\":\"It is too slow\"")) {
            desk.does("{\"kind\":\"data-answered\",\"state\":" + easy + "}");
            desk.lacks("way-ines", "data-protected", BACK_UP, ADVANCE);
        }
        desk.does(struck(finding));
        desk.lacks("way-ines", "data-protected", BACK_UP, ADVANCE);
        desk.does(struck(first(desk, "symptom-recorded")));
        desk.lacks("way-ines", "data-protected", BACK_UP, ADVANCE);
    }

    @Test
    void hazard_isNotScreenedOrStruckAway() {
        ApiDesk desk = site.atVerify("way-ines");
        int screened = desk.does(screened("LIQUID"));
        desk.does(screened());
        desk.shut("way-ines", "hazards-screened", "Work is stopped: ", reading("60"));
        desk.shut("way-ines", "hazards-screened", "Work is stopped: ", struck(screened));
        desk.shut("way-sue", "hazards-screened", "Work is stopped: ", waived("hazards-screened"));
        desk.lacks("way-ines", "hazards-screened", "Work is stopped: ", ADVANCE);
    }

    @Test
    void calculatedSoak_isNotShortenedByAnotherCalculation_norStruckAway() {
        ApiDesk desk = site.atVerify("way-ines");
        desk.does(symptom("Now and then", "It flickers", true));
        String longer = "The fault was intermittent: let it run 71 h";
        bench(desk, Map.of("calculation", "soak", "input", Map.of("every", 24, "doubt", 5)));
        desk.lacks("way-ines", "soak-time-passed", longer, ADVANCE);
        bench(desk, Map.of("calculation", "soak", "input", Map.of("every", 1, "doubt", 5)));
        desk.lacks("way-ines", "soak-time-passed", longer, ADVANCE);
        for (Object entry : desk.sheet().getList("facts.findAll { it.fact.kind == 'soak-time-reckoned' }.entry")) {
            desk.does(struck((Integer) entry));
        }
        desk.lacks("way-ines", "soak-time-passed", longer, ADVANCE);
    }

    @Test
    void kindOfTrouble_isNotChangedForAShorterChecklist() {
        ApiDesk desk = site.atVerify("way-ines");
        String opened = desk.entry(1).get("payload").toString();
        desk.does(corrected(1, opened.replace("\"HEAT\"", "\"OTHER\"")));
        assertTrue(desk.sheet().getList("checklist", String.class).get(0).contains("full load"));
        desk.lacks("way-ines", "function-checked", "Go through the whole checklist of functions", ADVANCE);
    }

    // ---- what is a slip

    @Test
    void slipInIdentify_isPutRightWithoutASupervisor_butNotOnceAnotherHasActed() {
        ApiDesk desk = site.desk("way-ines");
        desk.does(struck(desk.does(symptom("It dies", "Screen dark", true))));
        assertEquals(List.of(), lessened(desk));
        int seen = desk.does(symptom("It dies", "Screen dark", true));
        desk.lets("way-ole", reading("71"));
        desk.does(struck(seen));
        assertEquals(List.of(seen), lessened(desk));
    }

    @Test
    void afterReopening_nothingIsASlipAnyMore() {
        ApiDesk desk = site.atDocument("way-ines");
        desk.does(CLOSE);
        desk.does("{\"kind\":\"reopened\",\"reason\":\"It is back\"}");
        int seen = desk.does(symptom("It dies", "Screen dark", false));
        desk.does(struck(seen));
        assertEquals(List.of(seen), lessened(desk));
    }

    // ---- the bench overruled by hand

    @Test
    void partThatTheBenchRefuses_isLetThroughByNoWordOfTheTechnicians() {
        ApiDesk desk = site.atPlan("way-ines");
        String part = action(
                "Put the new one in bay 3",
                "\"irreversible\":false,\"touchesStorage\":true,\"usesPart\":true,\"part\":\"%s\"");
        int action = desk.does(part.formatted("SATA drive 4 TB"));
        int refused = fits(desk, action, "SATA");
        String says = "The bench says that a part does not fit: check another one there, or have an override approved";
        desk.lacks("way-ines", "parts-fit", says, ADVANCE);
        String byHand = "{\"kind\":\"part-fit-checked\",\"action\":%d,\"fit\":\"FITS\",\"basis\":\"It goes in\"}";
        desk.does(byHand.formatted(action));
        desk.lacks("way-ines", "parts-fit", says, ADVANCE);
        desk.does(corrected(action, part.formatted("Another drive, 4 TB")));
        desk.does(byHand.formatted(action));
        desk.lacks("way-ines", "parts-fit", says, ADVANCE);
        desk.malformed("way-ines", "entry", "An entry of this kind is not corrected", struck(refused));
        String override = "{\"kind\":\"part-override-approved\",\"action\":" + action + ",\"reason\":\"It goes in\"}";
        desk.shut("way-ines", "not-your-role", "A supervisor approves this", override);
        int other = desk.does(part.formatted("A third drive"));
        desk.does(byHand.formatted(other));
        desk.lacks("way-ines", "parts-fit", says, ADVANCE);
        desk.lets("way-boris", override);
        desk.lacks("way-ines", "parts-fit", says + ": A third drive.", ADVANCE);
    }

    /** Answers with the entry of the check of the part. */
    private int fits(ApiDesk desk, int action, String newInterface) {
        Map<String, Object> input = new HashMap<>(
                site.as("way-ines").get("/api/bench/drive-fit").jsonPath().getMap("example"));
        input.put("newInterface", newInterface);
        input.put("bayPower", 24);
        bench(desk, Map.of("calculation", "drive-fit", "action", action, "input", input));
        return first(desk, "part-fit-checked");
    }

    private void bench(ApiDesk desk, Map<String, Object> order) {
        var answer = site.as(desk.who)
                .header("If-Match", "\"" + desk.version + "\"")
                .contentType("application/json")
                .body(order)
                .post("/api/tickets/" + desk.number + "/bench-results");
        assertEquals(200, answer.statusCode(), answer.asString());
        desk.version = answer.jsonPath().getInt("version");
    }
}
