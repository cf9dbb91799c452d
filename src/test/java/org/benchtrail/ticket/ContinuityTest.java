package org.benchtrail.ticket;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.SealRounds;
import org.benchtrail.trail.Mendings;
import org.benchtrail.trail.Tampering;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Attacks on what is stored of a ticket, by somebody who owns the database: the next act is refused, the alarm is kept and
 * shown, nothing heals by being worked on, and no page fails.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class ContinuityTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor TESS = new Actor("cont-tess", "Tess", Set.of(Role.TECHNICIAN));
    private static final Actor SAM = new Actor("cont-sam", "Sam", Set.of(Role.SUPERVISOR));
    private static final Actor ADA = new Actor("cont-ada", "Ada", Set.of(Role.ADMINISTRATOR));
    private static final String FINDING = "{\"kind\":\"finding-recorded\",\"text\":\"Seen\"}";
    private static final byte[] FILE = "a picture".getBytes(StandardCharsets.UTF_8);

    @Inject
    PeopleActs people;

    @Inject
    TicketMending mending;

    private String token = "";
    private String number = "";
    private int serial;

    /** A ticket of three entries. */
    @BeforeEach
    void ticket() {
        for (Actor person : List.of(TESS, SAM, ADA)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        token = people.createToken(TESS, "continuity", 1).secret();
        Response opened = api().body(
                        "{\"title\":\"Fan rattles\",\"category\":\"HEAT\",\"device\":\"Laptop\",\"place\":\"Desk 4\","
                                + "\"requester\":\"Rae\",\"contact\":\"room 4\",\"impact\":\"ONE_PERSON\",\"urgency\":\"CAN_WAIT\"}")
                .post("/api/tickets");
        assertEquals(201, opened.statusCode(), opened.asString());
        number = opened.jsonPath().getString("number");
        serial = TicketNumber.parse(number).serial();
        assertEquals(200, act(1, FINDING).statusCode());
        assertEquals(200, act(2, FINDING).statusCode());
    }

    private RequestSpecification api() {
        return given().header("Authorization", "Bearer " + token).contentType("application/json");
    }

    private Response get(String path) {
        return api().get("/api/tickets/" + number + path);
    }

    private Response act(int version, String fact) {
        return api().header("If-Match", "\"" + version + "\"").body(fact).post("/api/tickets/" + number + "/acts");
    }

    private static List<String> column(String sql, int serial) {
        try (Connection database = TestDatabase.owner();
                var statement = database.prepareStatement(sql)) {
            statement.setInt(1, serial);
            ResultSet rows = statement.executeQuery();
            List<String> found = new ArrayList<>();
            while (rows.next()) {
                found.add(rows.getString(1));
            }
            return found;
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private List<String> alarms() {
        return column("select sentence from alarm where ticket = ? and not holds order by id", serial);
    }

    /** Everything that is stored of the ticket but its alarms. */
    private List<String> stored() {
        List<String> all = column("select t::text from ticket t where serial = ?", serial);
        all.addAll(column("select e::text from trail_entry e where ticket = ? order by entry", serial));
        return all;
    }

    /** The act is refused with that sentence, by the API and by the page, however often; nothing changes but the alarm and the mark. */
    private void assertRefused(String sentence) {
        assertEquals(409, act(3, FINDING).statusCode());
        List<String> before = stored();
        for (int version : new int[] {3, 2, 4, 1}) {
            Response refused = act(version, FINDING);
            assertEquals(409, refused.statusCode(), refused.asString());
            assertEquals(
                    "urn:benchtrail:problem:trail-broken", refused.jsonPath().getString("type"));
            assertEquals(
                    "Nothing can be recorded on ticket " + number + ", because its record does not hold. " + sentence,
                    refused.jsonPath().getString("detail"));
        }
        Browser browser = Browser.signedIn(TESS.account(), PASSWORD);
        browser.get("/me");
        Response page =
                browser.post("/tickets/" + number + "/hand-over", Map.of("version", "3", "hand.to", "cont-sam"));
        assertEquals(409, page.statusCode());
        assertTrue(page.asString().contains("does not hold"), page.asString());
        assertEquals(before, stored(), "nothing was added, and nothing healed");
        assertEquals(List.of(sentence), alarms(), "told once");
        assertFalse(get("/trail/verification").jsonPath().getBoolean("holds"));
    }

    /** No page, list or answer fails, whatever stands in the trail. */
    private void assertAllCanBeRead() {
        assertEquals(200, get("/trail").statusCode());
        assertEquals(200, get("/trail/verification").statusCode());
        assertTrue(Set.of(200, 409).contains(get("").statusCode()));
        assertTrue(Set.of(200, 409).contains(get("/ranking").statusCode()));
        assertEquals(200, api().get("/api/tickets?place=Desk%204&size=100").statusCode());
        Browser browser = Browser.signedIn(SAM.account(), PASSWORD);
        for (String path : List.of(
                "/tickets/" + number,
                "/tickets/" + number + "/trail",
                "/queue",
                "/learning",
                "/knowledge",
                "/alarms")) {
            assertEquals(200, browser.get(path).statusCode(), path);
        }
        for (String path : List.of("/entries/1", "/entries/3", "/ranking", "/attachments/" + "0".repeat(64))) {
            int status = browser.get("/tickets/" + number + path).statusCode();
            assertTrue(Set.of(200, 404, 409).contains(status), () -> path + " answered " + status);
        }
    }

    @Test
    void untouchedTicket_goesOn_withoutAnAlarm() {
        assertEquals(200, act(3, FINDING).statusCode());
        assertTrue(get("/trail/verification").jsonPath().getBoolean("holds"));
        assertEquals(List.of(), alarms());
    }

    @Test
    void cutTail_stopsTheTicket() {
        Tampering.run("delete from trail_entry where ticket = ? and entry = 3", serial);
        assertRefused("The ticket has 3 entries, but 2 are there.");
        assertAllCanBeRead();
    }

    /** The row made to fit as well: the log knows what it has sealed. */
    @Test
    void sealedTail_cutTogetherWithTheRow_stopsTheTicket() {
        SealRounds.once();
        Tampering.run("delete from trail_entry where ticket = ? and entry = 3", serial);
        TestDatabase.run(
                "update ticket t set entries = 2, last_hash = e.hash, touched = e.at from trail_entry e where e.ticket = t.serial"
                        + " and e.entry = 2 and t.serial = ?",
                serial);
        assertRefused("Entry 3 was sealed, but only 2 entries are there.");
    }

    @Test
    void sealedEntry_writtenAnewTogetherWithTheRow_stopsTheTicket() {
        SealRounds.once();
        replace(3, canonical(3).replace("\"driveFailure\":false", "\"driveFailure\":true"));
        TestDatabase.run(
                "update ticket t set last_hash = e.hash from trail_entry e where e.ticket = t.serial and e.entry = 3"
                        + " and t.serial = ?",
                serial);
        assertRefused("Entry 3 is not the one that was sealed.");
    }

    @Test
    void emptiedTrail_stopsTheTicket() {
        Tampering.run("delete from trail_entry where ticket = ?", serial);
        assertRefused("The ticket has 3 entries, but 0 are there.");
        assertAllCanBeRead();
    }

    @Test
    void alteredLastEntry_stopsTheTicket() {
        Tampering.run(
                "update trail_entry set canonical = convert_to(replace(convert_from(canonical, 'UTF8'), '\"driveFailure\":false', '\"driveFailure\":true'), 'UTF8')"
                        + " where ticket = ? and entry = 3",
                serial);
        assertRefused("Entry 3 does not hold: its content was altered.");
        assertAllCanBeRead();
    }

    /** With its hash calculated anew it fits the chain; only the row still knows what was there. */
    @Test
    void lastEntryWrittenAnew_stopsTheTicket() {
        replace(3, canonical(3).replace("\"driveFailure\":false", "\"driveFailure\":true"));
        assertRefused("The ticket's row names another last entry than the trail has.");
        assertAllCanBeRead();
    }

    @Test
    void earlierEntryWrittenAnew_stopsTheTicket() {
        replace(2, canonical(2).replace("\"driveFailure\":false", "\"driveFailure\":true"));
        assertRefused("Entry 3 does not hold: it does not follow the entry before it.");
    }

    @Test
    void entryAddedBesideTheServer_stopsTheTicket() {
        String hash = column("select hash from trail_entry where ticket = ? and entry = 3", serial)
                .get(0);
        String added =
                canonical(3).replace("\"entry\":3", "\"entry\":4").replaceAll("(?<=\"previous\":\")[0-9a-f]{64}", hash);
        insert(4, "finding-recorded", added);
        assertRefused("The ticket has 3 entries, but 4 are there.");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "assignee = 'cont-sam'",
                "step = 'DOCUMENT'",
                "standing = 'CLOSED'",
                "priority = 'AT_ONCE'",
                "due = due + interval '1 hour'",
                "title = 'Another'"
            })
    void changedRow_stopsTheTicket(String set) {
        TestDatabase.run("update ticket set " + set + " where serial = ?", serial);
        assertRefused("The trail holds, but the ticket's row says something else than it.");
        assertAllCanBeRead();
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 4})
    void changedCountInTheRow_stopsTheTicket(int entries) {
        TestDatabase.run("update ticket set entries = ? where serial = ?", entries, serial);
        assertRefused("The ticket has " + entries + " entries, but 3 are there.");
    }

    @Test
    void changedHashInTheRow_stopsTheTicket() {
        TestDatabase.run("update ticket set last_hash = repeat('1', 64) where serial = ?", serial);
        assertRefused("The ticket's row names another last entry than the trail has.");
    }

    private String canonical(int entry) {
        return column(
                        "select convert_from(canonical, 'UTF8') from trail_entry where entry = " + entry
                                + " and ticket = ?",
                        serial)
                .get(0);
    }

    private void replace(int entry, String canonical) {
        byte[] bytes = canonical.getBytes(StandardCharsets.UTF_8);
        Tampering.run(
                "update trail_entry set canonical = ?, hash = ? where ticket = ? and entry = ?",
                bytes,
                HashChain.hash(bytes),
                serial,
                entry);
    }

    private void insert(int entry, String kind, String canonical) {
        byte[] bytes = canonical.getBytes(StandardCharsets.UTF_8);
        Tampering.run(
                "insert into trail_entry (ticket, entry, at, actor, kind, canonical, hash, words)"
                        + " select ticket, ?, at, actor, ?, ?, ?, words from trail_entry where ticket = ? and entry = 3",
                entry,
                kind,
                bytes,
                HashChain.hash(bytes),
                serial);
    }

    /** A last entry that fits the chain and the row, but is none. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "no JSON", "[]", "null", "{KIND", "{FORMAT", "{ROLES", "{DEEP",
            })
    void garbageAsTheLastEntry_isSaid_andStopsNothingElse(String what) {
        String garbage = switch (what) {
            case "{KIND" -> canonical(3).replace("finding-recorded", "vanished");
            case "{FORMAT" -> canonical(3).replace("\"format\":3", "\"format\":99");
            case "{ROLES" -> canonical(3).replace("[\"TECHNICIAN\"]", "[null]");
            case "{DEEP" -> "[".repeat(5_000) + "]".repeat(5_000);
            default -> what;
        };
        replace(3, garbage);
        TestDatabase.run(
                "update ticket set last_hash = (select hash from trail_entry where ticket = serial and entry = 3) where serial = ?",
                serial);
        assertRefused("Entry 3 does not hold: it cannot be read.");
        assertAllCanBeRead();
        Browser browser = Browser.signedIn(TESS.account(), PASSWORD);
        String page = browser.get("/tickets/" + number).asString();
        assertTrue(page.contains("Entry 3 does not hold: it cannot be read."), page);
        assertTrue(browser.get("/tickets/" + number + "/trail").asString().contains("it cannot be read"));
        assertEquals("urn:benchtrail:problem:trail-broken", get("").jsonPath().getString("type"));
    }

    /** An entry of a later release is no tampering, where one of that release has run. */
    @ParameterizedTest
    @ValueSource(strings = {"KIND", "FORMAT", "COMPONENT", "WORD"})
    void entryOfALaterRelease_isReadOnly_andNoAlarm(String what) {
        replace(
                3,
                switch (what) {
                    case "KIND" -> canonical(3).replace("finding-recorded", "bench-kept");
                    case "COMPONENT" ->
                        canonical(3).replace("\"kind\":\"finding", "\"aspect\":\"x\",\"kind\":\"finding");
                    case "WORD" -> canonical(3).replace("[\"TECHNICIAN\"]", "[\"VISITOR\"]");
                    default -> canonical(3).replace("\"format\":3", "\"format\":4");
                });
        TestDatabase.run(
                "update ticket set last_hash = (select hash from trail_entry where ticket = serial and entry = 3) where serial = ?",
                serial);
        TestDatabase.run(
                "insert into server_node (id, host, release, started, seen) values (gen_random_uuid(), 'h', '99.0', now(), now())");
        try {
            assertEquals(
                    "urn:benchtrail:problem:newer-release", get("").jsonPath().getString("type"));
            Browser browser = Browser.signedIn(TESS.account(), PASSWORD);
            String page = browser.get("/tickets/" + number).asString();
            assertTrue(page.contains("Read only."), page);
            assertFalse(page.contains("does not hold"), page);
            assertTrue(browser.get("/tickets/" + number + "/trail").statusCode() == 200);
            assertEquals(List.of(), alarms());
        } finally {
            TestDatabase.run("delete from server_node where release = '99.0'");
        }
    }

    @Test
    void garbageInTheMiddle_isSaid_andStopsNothingElse() {
        Tampering.run("update trail_entry set canonical = 'no entry' where ticket = ? and entry = 2", serial);
        assertRefused("Entry 2 does not hold: its content was altered, and it cannot be read.");
        assertAllCanBeRead();
    }

    /** Each entry can be read and the chain holds, but no ticket could have come about like this. */
    @Test
    void entriesThatTellNoTicket_areSaid() {
        replace(
                1,
                canonical(3)
                        .replace("\"entry\":3", "\"entry\":1")
                        .replaceAll("(?<=\"previous\":\")[0-9a-f]{64}", HashChain.START));
        Tampering.run(
                "update trail_entry set kind = 'finding-recorded', words = (select words from trail_entry where entry = 3 and ticket = ?)"
                        + " where entry = 1 and ticket = ?",
                serial,
                serial);
        Tampering.run(
                "update trail_entry set at = (select at from trail_entry where entry = 3 and ticket = ?) where entry = 1 and ticket = ?",
                serial,
                serial);
        Tampering.run("delete from trail_entry where entry > 1 and ticket = ?", serial);
        TestDatabase.run(
                "update ticket set entries = 1, last_hash = (select hash from trail_entry where ticket = serial and entry = 1) where serial = ?",
                serial);
        assertRefused("Each entry holds, but together they tell no ticket.");
        assertAllCanBeRead();
    }

    /** What was put back goes on, and the alarm ends by being checked, not by being worked on. */
    @Test
    void alarm_isShownToWhomItConcerns_andEndsWhenTheRecordHoldsAgain() {
        String kept = canonical(3);
        replace(3, kept.replace("\"driveFailure\":false", "\"driveFailure\":true"));
        assertEquals(409, act(3, FINDING).statusCode());
        Browser tess = Browser.signedIn(TESS.account(), PASSWORD);
        assertFalse(tess.get("/queue").asString().contains("/alarms"));
        assertEquals(403, tess.get("/alarms").statusCode());
        assertEquals(403, tess.post("/alarms/" + number + "/check", Map.of()).statusCode());
        for (Actor person : List.of(SAM, ADA)) {
            Browser browser = Browser.signedIn(person.account(), PASSWORD);
            assertTrue(browser.get("/queue").asString().contains("href=\"/alarms\""), person.name());
            String page = browser.get("/alarms").asString();
            assertTrue(page.contains("/alarms/" + number + "/check"), page);
            assertTrue(page.contains("names another last entry"), page);
            assertEquals(
                    303, browser.post("/alarms/" + number + "/check", Map.of()).statusCode());
            assertTrue(browser.get("/alarms").asString().contains("/alarms/" + number + "/check"), "it stands");
        }
        replace(3, kept);
        assertEquals(409, act(3, FINDING).statusCode(), "whatever was put right by hand");
        Browser sam = Browser.signedIn(SAM.account(), PASSWORD);
        assertEquals(303, sam.post("/alarms/" + number + "/check", Map.of()).statusCode());
        assertTrue(sam.get("/alarms").asString().contains("/alarms/" + number + "/check"), "looking does not end it");
        mend();
        assertEquals(200, act(3, FINDING).statusCode());
        String page = sam.get("/alarms").asString();
        assertFalse(page.contains("/alarms/" + number + "/check"), page);
        assertTrue(page.contains("Mended: put back what is missing."), page);
        assertTrue(page.contains("names another last entry"), "what was found stays");
    }

    private void mend() {
        TicketNumber ticket = TicketNumber.parse(number);
        mending.propose(ticket, new TicketMending.Wanted(Mendings.Way.PUT_BACK, "Put back"), new byte[0], SAM);
        mending.agree(
                ticket,
                Long.parseLong(column("select max(id) from mending where ticket = ?", serial)
                        .get(0)),
                ADA);
    }

    private String attach() {
        Response attached = given().header("Authorization", "Bearer " + token)
                .header("If-Match", "\"3\"")
                .contentType("image/png")
                .body(FILE)
                .post("/api/tickets/" + number + "/attachments?fileName=a.png&shows=The%20fan");
        assertEquals(200, attached.statusCode(), attached.asString());
        return column("select convert_from(canonical, 'UTF8') from trail_entry where entry = 4 and ticket = ?", serial)
                .get(0)
                .replaceAll(".*\"sha256\":\"([0-9a-f]{64})\".*", "$1");
    }

    private void assertFileRefused(String sha256, String fault) {
        Response refused = get("/attachments/" + sha256);
        assertEquals(409, refused.statusCode());
        assertEquals("urn:benchtrail:problem:trail-broken", refused.jsonPath().getString("type"));
        assertEquals(
                "The file " + fault + ", and is not given out.",
                refused.jsonPath().getString("detail"));
        assertEquals(List.of("A file " + fault + "."), alarms());
        Browser browser = Browser.signedIn(TESS.account(), PASSWORD);
        assertEquals(
                409,
                browser.get("/tickets/" + number + "/attachments/" + sha256).statusCode());
        var found = get("/trail/verification").jsonPath();
        assertFalse(found.getBoolean("holds"));
        assertEquals(4, found.getInt("brokenAt"));
        assertEquals("Entry 4 names a file that " + fault + ".", found.getString("sentence"));
        assertAllCanBeRead();
    }

    @Test
    void replacedBytesOfAFile_areNotGivenOut() {
        String sha256 = attach();
        assertArrayEquals(FILE, get("/attachments/" + sha256).asByteArray());
        assertTrue(get("/trail/verification").jsonPath().getBoolean("holds"));
        try {
            Tampering.run("update attachment set content = 'another' where sha256 = ?", sha256);
            assertFileRefused(sha256, "was altered since it was attached");
        } finally {
            Tampering.run("update attachment set content = ? where sha256 = ?", FILE, sha256);
        }
        assertArrayEquals(FILE, get("/attachments/" + sha256).asByteArray());
        assertTrue(get("/trail/verification").jsonPath().getBoolean("holds"));
    }

    @Test
    void fileThatIsGone_isToldAsThat() {
        String sha256 = attach();
        Tampering.run("delete from attachment where sha256 = ?", sha256);
        assertFileRefused(sha256, "is gone");
    }
}
