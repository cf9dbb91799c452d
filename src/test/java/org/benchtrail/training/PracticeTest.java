package org.benchtrail.training;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.practice.job.DesktopAct;
import org.benchtrail.core.practice.job.DeviceAct;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.Truth;
import org.benchtrail.core.training.FaultWords;
import org.benchtrail.core.training.Ties;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Practice jobs through their pages, and the ways round their rules. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class PracticeTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor TESS = new Actor("practice-tess", "Tess", Set.of(Role.TRAINEE));
    private static final Actor TOM = new Actor("practice-tom", "Tom", Set.of(Role.TECHNICIAN, Role.SUPERVISOR));

    @Inject
    PeopleActs people;

    @Inject
    PracticeActs acts;

    @Inject
    PracticeQueries queries;

    private Browser tess = new Browser();

    @BeforeEach
    void signIn() {
        for (Actor person : List.of(TESS, TOM)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        tess = Browser.signedIn(TESS.account(), PASSWORD);
        tess.get("/practice");
    }

    private int begun(Family family, String fault) {
        String seed = Truth.of(family, new byte[] {1, 2, 3, 4, 5, 6, 7, 8, 9}).seed();
        return acts.begin(new Truth(family, seed, fault), TESS);
    }

    private int version(int job) {
        return queries.job(job, TESS).trail().size();
    }

    private Response sends(Browser who, int job, String path, String... fields) {
        Map<String, String> all = new HashMap<>(Map.of("version", Integer.toString(version(job))));
        for (int i = 0; i < fields.length; i += 2) {
            all.put(fields[i], fields[i + 1]);
        }
        return who.post("/practice/" + job + path, all);
    }

    private int does(int job, String act) {
        return sends(tess, job, "/act", "act", act).statusCode();
    }

    private int done(int job) {
        return queries.job(job, TESS).done().size();
    }

    @Test
    void jobIsBegun_fromTheListOfDevices_andStandsInIt() {
        Response begun = tess.post("/practice", Map.of("family", "drive"));
        assertEquals(303, begun.statusCode(), begun.asString());
        String at = begun.header("Location").replaceFirst(".*/practice", "/practice");
        String page = tess.get(at).asString();
        assertTrue(page.contains("Workstation hangs for seconds at a time"), page);
        assertTrue(page.contains("reallocated and pending sectors"));
        assertTrue(tess.get("/practice").asString().contains("href=\"" + at + "\""));
        assertEquals(422, tess.post("/practice", Map.of("family", "toaster")).statusCode());
    }

    @Test
    void acts_showWhatTheDeviceShows_onTheSheet_inTheJobsOwnTime() {
        int job = begun(Family.DESKTOP, "DUST");
        assertEquals(303, does(job, "save-work"));
        assertEquals(303, does(job, "die-load"));
        assertEquals(303, does(job, "look-dust"));
        String page = tess.get("/practice/" + job).asString();
        assertTrue(page.contains("A grey mat lies between fan and fins."), page);
        assertTrue(page.contains("13 min worked, 12 min waited"), page);
        PracticeJob kept = queries.job(job, TESS);
        assertEquals(
                List.of("finding-recorded", "reading-recorded", "finding-answered"),
                kept.trail().stream().skip(2).map(e -> e.kind()).toList());
        assertEquals(kept.morning().plusSeconds(25 * 60), kept.trail().get(4).at());
        assertEquals(422, does(job, "replace"), "an act of another device");
        assertEquals(303, does(job, "wait-a-day"));
        assertEquals(24 * 60 + 12, queries.job(job, TESS).played().clock().waiting());
    }

    @Test
    void stepsAreLeftByTheSameGates() {
        int job = begun(Family.DESKTOP, "DUST");
        Response refused = sends(tess, job, "/sheet/identify", "then", "move");
        assertEquals(409, refused.statusCode());
        assertTrue(refused.asString().contains("Look for every hazard of the list"), refused.asString());
        Response saved = sends(tess, job, "/sheet/identify", "symptom.words", "hot", "symptom.observable", "98 °C");
        assertEquals(303, saved.statusCode(), saved.asString());
        assertTrue(tess.get("/practice/" + job + "/sheet/trail").asString().contains("98 °C"));
    }

    /** Its moment would tell what the act would have come to: how long it takes, and the harm. */
    @Test
    void actThatIsRefused_takesNoTime() {
        int job = begun(Family.DRIVE, "SCAR_AND_CABLE");
        List<String> screened = new ArrayList<>(List.of("then", "stay"));
        for (Hazard hazard : Hazard.values()) {
            screened.addAll(List.of("hazards.present." + hazard, Boolean.toString(hazard == Hazard.SMELL)));
        }
        assertEquals(
                303,
                sends(tess, job, "/sheet/identify", screened.toArray(String[]::new))
                        .statusCode());
        Instant before = queries.job(job, TESS).played().clock().now();
        assertEquals(409, does(job, "replace"));
        PracticeJob after = queries.job(job, TESS);
        assertEquals("refused", after.trail().get(after.trail().size() - 1).kind());
        assertEquals(before, after.trail().get(after.trail().size() - 1).at());
        assertEquals(0, after.done().size());
    }

    @Test
    void whatTheDeviceShowed_isNotCorrected() {
        int job = begun(Family.DESKTOP, "DUST");
        assertEquals(303, does(job, "die-load"));
        int measured = version(job);
        Response corrected = sends(
                tess,
                job,
                "/sheet/correct",
                "correct.entry",
                Integer.toString(measured),
                "correct.reason",
                "I say so",
                "new.value",
                "60");
        assertEquals(404, corrected.statusCode(), corrected.asString());
        Response struck = sends(
                tess, job, "/sheet/strike", "strike.entry", Integer.toString(measured), "strike.reason", "I say so");
        assertEquals(422, struck.statusCode(), struck.asString());
        assertEquals(measured, version(job));
    }

    @Test
    void readingThatIsTyped_isNotTaken() {
        int job = begun(Family.DESKTOP, "DUST");
        int before = version(job);
        Response typed = sends(
                tess,
                job,
                "/sheet/evidence",
                "reading.quantity",
                "processor temperature",
                "reading.value",
                "71",
                "reading.unit",
                "°C",
                "reading.point",
                "die sensor");
        assertEquals(422, typed.statusCode());
        assertTrue(typed.asString().contains("a reading comes from the device"), typed.asString());
        assertEquals(before, version(job));
    }

    /** Neither as a reading nor as an answer: else a job could be won from what the reader would like to see. */
    @Test
    void whatTheDeviceAnswers_isNotAnsweredByHand() {
        int job = begun(Family.DESKTOP, "DUST");
        int before = version(job);
        String dust = Ties.of(Family.DESKTOP).finding(DesktopAct.LOOK_DUST).orElseThrow();
        Response typed = sends(tess, job, "/sheet/findings", "known.source", "SEEN", "answer." + dust, "yes");
        assertEquals(422, typed.statusCode(), typed.asString());
        assertTrue(typed.asString().contains("On practice the device answers that"), typed.asString());
        assertEquals(before, version(job));
        assertEquals(303, does(job, "look-dust"));
        assertEquals(before + 1, version(job));
    }

    /** Before the end no answer holds a byte of the truth; after it the debrief does, so that the search is not blind. */
    @Test
    void truth_isInNoAnswerBeforeTheEnd_andOpensAfterIt() {
        int job = begun(Family.DRIVE, "SCAR_AND_CABLE");
        PracticeJob kept = queries.job(job, TESS);
        List<String> secrets = List.of(
                kept.truth().seed(),
                kept.truth().fault(),
                FaultWords.of(kept.truth().fault()),
                HexFormat.of().formatHex(kept.salt()));
        StringBuilder told = new StringBuilder();
        for (String act : List.of("counters", "crc-growth", "whole-read", "wait-an-hour", "no-such-act")) {
            Response answer = sends(tess, job, "/act", "act", act);
            told.append(answer.asString()).append(answer.headers());
        }
        told.append(sends(tess, job, "/sheet/identify", "then", "move").asString());
        told.append(sends(tess, job, "/mentor").asString());
        for (String path : List.of("", "/sheet/trail")) {
            Response page = tess.get("/practice/" + job + path);
            told.append(page.asString()).append(page.headers());
        }
        told.append(tess.get("/practice").asString())
                .append(tess.get("/me/data").asString());
        secrets.forEach(secret -> assertFalse(told.toString().contains(secret), secret));
        assertTrue(told.toString().contains(kept.commitment()), "what stands for it is told");
        assertEquals(303, sends(tess, job, "/give-up").statusCode());
        String debrief = tess.get("/practice/" + job).asString();
        secrets.forEach(secret -> assertTrue(debrief.contains(secret), secret));
        assertTrue(debrief.contains("It is what was sealed before the first act."), debrief);
        assertTrue(queries.job(job, TESS).opens());
        TestDatabase.run("update practice_truth set fault = 'PORT' where job = " + job);
        assertTrue(tess.get("/practice/" + job).asString().contains("It is not what was sealed."));
    }

    /** What is sealed moves nothing that anybody can see before the debrief. */
    @Test
    void coach_learnsOfAJobOnceItHasEnded() {
        Actor una = new Actor("practice-una", "Una Reed", Set.of(Role.TRAINEE));
        people.ensureAccount(una.account(), una.name(), una.roles(), PASSWORD);
        Browser browser = Browser.signedIn(una.account(), PASSWORD);
        String seed =
                Truth.of(Family.DESKTOP, new byte[] {1, 2, 3, 4, 5, 6, 7, 8, 9}).seed();
        int job = acts.begin(new Truth(Family.DESKTOP, seed, "DUST"), una);
        String before = levels(browser);
        for (String act : List.of("save-work", "die-load", "clean", "try-load")) {
            String version = "" + queries.job(job, una).trail().size();
            assertEquals(
                    303,
                    browser.post("/practice/" + job + "/act", Map.of("version", version, "act", act))
                            .statusCode());
        }
        String version = "" + queries.job(job, una).trail().size();
        Response refused =
                browser.post("/practice/" + job + "/sheet/identify", Map.of("version", version, "then", "move"));
        assertEquals(409, refused.statusCode());
        assertTrue(refused.asString().contains("class=\"coach\""), "the coach is there on practice too");
        assertEquals(before, levels(browser));
        browser.post("/practice/" + job + "/give-up", Map.of());
        String after = levels(browser);
        assertTrue(after.contains("0 of 1 met at this level"), after);
        assertFalse(before.contains("0 of 1 met"));
    }

    private static String levels(Browser who) {
        return who.get("/coach").asString().replaceAll("value=\"[^\"]*\"", "");
    }

    @Test
    void anothersJob_isNotThere() {
        int job = begun(Family.DESKTOP, "DUST");
        Browser tom = Browser.signedIn(TOM.account(), PASSWORD);
        assertFalse(tom.get("/practice").asString().contains("/practice/" + job + "\""));
        assertEquals(404, tom.get("/practice/" + job).statusCode());
        assertEquals(404, tom.get("/practice/" + job + "/sheet/trail").statusCode());
        for (String path : List.of("/act", "/mentor", "/give-up", "/sheet/evidence")) {
            Response tried = sends(tom, job, path, "act", "look-dust", "finding.text", "Seen");
            assertEquals(404, tried.statusCode(), path);
        }
        assertEquals(0, done(job));
        assertEquals(2, version(job));
        assertTrue(queries.job(job, TESS).isOpen());
    }

    @Test
    void nothingIsDoneOnAJobThatHasEnded_norTwiceByTheSameForm_norFromAPageThatIsOld() {
        int job = begun(Family.DESKTOP, "DUST");
        Map<String, String> form = Map.of("version", "2", "act", "look-dust", "csrf-key", "the-same-page-sent-again-1");
        int first = tess.post("/practice/" + job + "/act", form).statusCode();
        int again = tess.post("/practice/" + job + "/act", form).statusCode();
        assertEquals(List.of(303, 303), List.of(first, again));
        assertEquals(1, done(job));
        Response old = tess.post("/practice/" + job + "/act", Map.of("version", "2", "act", "listen"));
        assertEquals(409, old.statusCode());
        assertEquals(1, done(job));
        sends(tess, job, "/give-up");
        assertEquals(422, does(job, "clean"));
        assertEquals(
                422, sends(tess, job, "/sheet/evidence", "finding.text", "More").statusCode());
        assertEquals(422, sends(tess, job, "/mentor").statusCode());
        assertEquals(1, done(job));
        assertEquals(3, version(job));
    }

    @Test
    void formsOfTheDesk_areNotThere() {
        int job = begun(Family.DESKTOP, "DUST");
        for (String form : List.of("hand-over", "hold", "cancel", "approve", "mentor", "waive", "nothing")) {
            assertEquals(404, sends(tess, job, "/sheet/" + form).statusCode(), form);
        }
        assertEquals(404, tess.get("/tickets/" + PracticeJob.number(job)).statusCode());
    }

    @Test
    void harmIsDebriefed_withWhatWouldHaveStoppedIt() {
        int job = begun(Family.DESKTOP, "DUST");
        for (String act : List.of("save-work", "die-load", "clean", "try-load")) {
            assertEquals(303, does(job, act), act);
        }
        sends(tess, job, "/give-up");
        String debrief = tess.get("/practice/" + job).asString();
        assertTrue(debrief.contains("The sink was touched while hot: a burn."), debrief);
        assertTrue(debrief.contains("What would have stopped it: Switch it off and let it cool"), debrief);
        assertTrue(debrief.contains("The device is well again."));
        assertTrue(debrief.contains("Repaired before there was a plan: Clean fins"), debrief);
        int wiring = begun(Family.POWER, "LONG_CIRCUIT");
        does(wiring, "open-wiring");
        assertFalse(queries.job(wiring, TESS).isOpen());
    }

    /** The words of each, from the list of devices to the debrief. */
    @Test
    void laterDevices_arePlayedThroughThePage() {
        debriefed(
                "A desk computer that was found off",
                begun(Family.SUPPLY, "HIGH_RESISTANCE"),
                List.of("look-dark", "save-work", "strap", "new-supply", "try-work"),
                "It starts, and stays on at rest.",
                "Hands in the case with the plug in",
                "a supply whose +12 V falls under load and is good at rest");
        debriefed(
                "A computer that stops at random",
                begun(Family.MEMORY, "SLOT"),
                List.of("save-work", "long-test", "save-work", "pull-plug", "strap", "other-slots", "repair-files"),
                "errors in six hours",
                "The device is well again.",
                "a slot that errs with whichever module is in it");
        debriefed(
                "A file server whose array complains",
                begun(Family.ARRAY, "MEMBER"),
                List.of("look-members", "latency", "pull-to-see"),
                "One member is marked failed.",
                "the set is gone",
                "a member drive that has failed");
    }

    private void debriefed(String title, int job, List<String> acts, String shown, String harm, String truth) {
        assertTrue(tess.get("/practice").asString().contains(title));
        acts.forEach(act -> assertEquals(303, does(job, act), act));
        String page = tess.get("/practice/" + job).asString();
        assertTrue(page.contains(shown), page);
        assertFalse(page.contains(truth), "sealed");
        sends(tess, job, "/give-up");
        String debrief = tess.get("/practice/" + job).asString();
        assertTrue(debrief.contains(harm), debrief);
        assertTrue(debrief.contains(truth), debrief);
    }

    /** Acts that do harm, in order, and what somebody does who lets nothing come to harm. No gate keeps either from them. */
    @ParameterizedTest
    @CsvSource({
        "DESKTOP, DUST, save-work die-load clean, save-work die-load let-cool clean",
        "DESKTOP, DUST, firmware-defaults, note-settings firmware-defaults",
        "DESKTOP, FAN_STALLED, try-load, save-work try-load",
        "DESKTOP, DRIED_PASTE, let-cool let-cool let-cool paste, hand-warm paste",
        "DRIVE, DATA_CABLE, other-cable, shut-down other-cable",
        "DRIVE, DATA_CABLE, write-test, copy-data write-test",
        "POWER, BAD_BLOCK, new-battery, insulate new-battery",
        "POWER, LONG_CIRCUIT, printer-on-battery, other-circuit",
        "POWER, LONG_CIRCUIT, open-case pull-mains, save-work pull-mains",
        "POWER, LONG_CIRCUIT, open-wiring, other-circuit",
        "SUPPLY, HIGH_RESISTANCE, open-supply, pull-plug strap new-supply",
        "SUPPLY, HIGH_RESISTANCE, rail-load, save-work rail-load",
        "SUPPLY, HIGH_RESISTANCE, strap new-supply, pull-plug strap new-supply",
        "MEMORY, SLOT, long-test, save-work long-test",
        "MEMORY, SLOT, repair-files, save-work pull-plug strap other-slots repair-files",
        "ARRAY, MEMBER, pull-to-see, copy-data locate replace",
        "ARRAY, MEMBER, new-volume, copy-data locate replace",
        "ARRAY, CACHE, cache-battery, shut-down cache-battery"
    })
    void harm_isReached_throughTheGates_andTheHonestTwinMeetsNone(
            Family family, String fault, String careless, String honest) {
        int harmed = begun(family, fault);
        List.of(careless.split(" ")).forEach(act -> assertEquals(303, does(harmed, act), act));
        assertNotEquals(List.of(), queries.job(harmed, TESS).played().harm());
        sends(tess, harmed, "/give-up");
        int twin = begun(family, fault);
        List.of(honest.split(" ")).forEach(act -> assertEquals(303, does(twin, act), act));
        assertEquals(List.of(), queries.job(twin, TESS).played().harm());
        sends(tess, twin, "/give-up");
    }

    /** Two jobs of one seed that differ in their fault alone: the coach, and all of the sheet, says the same of both. */
    @ParameterizedTest
    @EnumSource(Family.class)
    void whatIsSaidBeforeTheFirstAct_doesNotDependOnTheTruth(Family family) {
        String first = untouched(begun(family, family.faults().get(0)));
        assertTrue(first.contains("class=\"coach\""), first);
        for (String fault : family.faults()) {
            assertEquals(first, untouched(begun(family, fault)), fault);
        }
    }

    /** The sheet of a job without what is each job's own: its number, its commitment, keys of forms. */
    private String untouched(int job) {
        String page = shown(tess, "/practice/" + job);
        return page.replaceAll("[0-9a-f]{64}", "")
                .replace("/practice/" + job, "/practice")
                .replaceAll("(?<![0-9])" + PracticeJob.number(job) + "(?![0-9])", "")
                .replaceAll("(id|name|for|nonce)=\"[^\"]*" + job + "[^\"]*\"", "");
    }

    private static String shown(Browser who, String path) {
        // tokens of forms, and how long it is to something
        return who.get(path)
                .asString()
                .replaceAll("value=\"[^\"]*\"", "")
                .replaceAll("\\d+\\s(days?|d|h|min|s)\\b|\\d\\d:\\d\\d", "");
    }

    /** Whatever is done on practice, the live rooms are what they were, byte for byte. */
    @Test
    void liveRooms_areTheSameAfterPractice() {
        Browser tom = Browser.signedIn(TOM.account(), PASSWORD);
        tom.get("/me");
        List<String> rooms = List.of(
                "/queue",
                "/queue.csv",
                "/search?q=hot",
                "/search?q=drive",
                "/knowledge",
                "/knowledge?q=hot",
                "/learning",
                "/learning/preview",
                "/learning/calibration",
                "/today",
                "/catalogue",
                "/devices",
                "/new-ticket/alike?title=hot");
        List<String> before = rooms.stream().map(room -> shown(tom, room)).toList();
        for (Family family : Family.values()) {
            int job = begun(family, family.faults().get(0));
            family.acts().stream().map(DeviceAct::id).limit(4).forEach(act -> does(job, act));
            sends(tess, job, "/give-up");
        }
        List<String> after = rooms.stream().map(room -> shown(tom, room)).toList();
        Stream.iterate(0, i -> i < rooms.size(), i -> i + 1)
                .forEach(i -> assertEquals(before.get(i), after.get(i), rooms.get(i)));
    }
}
