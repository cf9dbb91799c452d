package org.benchtrail.ticket.mending;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.Forbidden;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.SealRounds;
import org.benchtrail.seal.offline.VerifyCommand;
import org.benchtrail.ticket.TicketMending;
import org.benchtrail.ticket.WordsErasure;
import org.benchtrail.trail.Mendings.Outcome;
import org.benchtrail.trail.Mendings.Way;
import org.benchtrail.trail.Tampering;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A ticket whose trail was cut or altered: it stands still, and only an administrator and a supervisor let it go on. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class TrailMendingTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor TESS = new Actor("mend-tess", "Tess", Set.of(Role.TECHNICIAN));
    private static final Actor SAM = new Actor("mend-sam", "Sam", Set.of(Role.SUPERVISOR));
    private static final Actor SID = new Actor("mend-sid", "Sid", Set.of(Role.SUPERVISOR));
    private static final Actor ADA = new Actor("mend-ada", "Ada", Set.of(Role.ADMINISTRATOR));
    private static final Actor ABE = new Actor("mend-abe", "Abe", Set.of(Role.ADMINISTRATOR));
    private static final Actor BEA = new Actor("mend-bea", "Bea", Set.of(Role.ADMINISTRATOR, Role.SUPERVISOR));
    private static final String FINDING = "{\"kind\":\"finding-recorded\",\"text\":\"Seen\"}";
    private static final byte[] NONE = new byte[0];
    private static final TicketMending.Wanted PUT_BACK = new TicketMending.Wanted(Way.PUT_BACK, "A disk failed");
    private static final TicketMending.Wanted GO_ON = new TicketMending.Wanted(Way.GO_ON, "A disk failed");

    @Inject
    PeopleActs people;

    @Inject
    WordsErasure erasure;

    @Inject
    TicketMending mending;

    @TempDir
    Path folder;

    private String token = "";
    private String number = "";
    private TicketNumber ticket = new TicketNumber(1);
    private int serial;

    /** A ticket of four entries, of which all are sealed. */
    @BeforeEach
    void ticket() {
        for (Actor person : List.of(TESS, SAM, SID, ADA, ABE, BEA)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        token = people.createToken(TESS, "mending", 1).secret();
        number = opened();
        ticket = TicketNumber.parse(number);
        serial = ticket.serial();
        for (int version = 1; version <= 3; version++) {
            assertEquals(200, act(version).statusCode());
        }
        SealRounds.once();
    }

    private String opened() {
        Response opened = api().body(
                        "{\"title\":\"Fan rattles\",\"category\":\"HEAT\",\"device\":\"Laptop\",\"place\":\"Desk 4\","
                                + "\"requester\":\"Rae\",\"contact\":\"room 4\",\"impact\":\"ONE_PERSON\",\"urgency\":\"CAN_WAIT\"}")
                .post("/api/tickets");
        assertEquals(201, opened.statusCode(), opened.asString());
        return opened.jsonPath().getString("number");
    }

    private RequestSpecification api() {
        return given().header("Authorization", "Bearer " + token).contentType("application/json");
    }

    private Response get(String path) {
        return api().get("/api/tickets/" + number + path);
    }

    private Response act(int version) {
        return api().header("If-Match", "\"" + version + "\"").body(FINDING).post("/api/tickets/" + number + "/acts");
    }

    private static List<String> column(String sql, Object... values) {
        try (Connection database = TestDatabase.owner();
                var statement = database.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
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

    private List<String> hashes() {
        return column("select hash from trail_entry where ticket = ? order by entry", serial);
    }

    private List<String> entries() {
        return column(
                "select convert_from(canonical, 'UTF8') from trail_entry where ticket = ? order by entry", serial);
    }

    /** Lines with the words of the entries, which stay the same whatever a test makes of the entries. */
    private String words() {
        return String.join(
                "\n",
                column(
                        "select json_build_object('hash', hash, 'words', convert_from(words, 'UTF8'))::text from trail_entry"
                                + " where ticket = ? and words is not null order by entry",
                        serial));
    }

    /** What the incidents say of this ticket, oldest first. */
    private List<String> incidents() {
        return column(
                "select j ->> 'what' || coalesce(' ' || (j #>> '{content,outcome}'), '') from (select place, convert_from(canonical, 'UTF8')::jsonb as j"
                        + " from site_record where stream = 'incidents') r"
                        + " where j #>> '{content,about}' = ? or j #>> '{content,ticket}' = ? order by place",
                "ticket " + number,
                "" + serial);
    }

    private String export() {
        Response file = Browser.signedIn(TESS.account(), PASSWORD).get("/tickets/" + number + "/trail.jsonl");
        assertEquals(200, file.statusCode());
        return file.asString();
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private void cut(int from) {
        Tampering.run("delete from trail_entry where ticket = ? and entry >= ?", serial, from);
    }

    /** The row is made to fit what is left as well. */
    private void cutWithRow(int from) {
        cut(from);
        TestDatabase.run(
                "update ticket t set entries = e.entry, last_hash = e.hash, touched = e.at from trail_entry e"
                        + " where e.ticket = t.serial and e.entry = ? and t.serial = ?",
                from - 1,
                serial);
    }

    private void rewrite(int entry, String canonical) {
        byte[] bytes = bytes(canonical);
        Tampering.run(
                "update trail_entry set canonical = ?, hash = ? where ticket = ? and entry = ?",
                bytes,
                HashChain.hash(bytes),
                serial,
                entry);
    }

    private long proposed() {
        return Long.parseLong(
                column("select max(id) from mending where ticket = ?", serial).get(0));
    }

    private String refused(Runnable act) {
        return assertThrows(Invalid.class, act::run).problems().get(0).sentence();
    }

    private Outcome mend(TicketMending.Wanted wanted, byte[] file) {
        mending.propose(ticket, wanted, file, SAM);
        return mending.agree(ticket, proposed(), ADA);
    }

    private void assertBroken(int version) {
        Response refused = act(version);
        assertEquals(409, refused.statusCode(), refused.asString());
        assertEquals("urn:benchtrail:problem:trail-broken", refused.jsonPath().getString("type"));
    }

    private void assertHolds() {
        assertTrue(get("/trail/verification").jsonPath().getBoolean("holds"));
    }

    /** Cut a tail; act: refused, recorded, not healed. Mend both ways. Two administrators cannot mend alone. */
    @Test
    void cutTail_isRefused_recorded_notHealed_andMendedBothWays_byAnAdministratorAndASupervisorOnly() {
        String kept = export();
        List<String> before = hashes();
        cutWithRow(3);
        assertBroken(2);
        assertBroken(4);
        Browser tess = Browser.signedIn(TESS.account(), PASSWORD);
        tess.get("/me");
        assertEquals(
                409,
                tess.post("/tickets/" + number + "/hand-over", Map.of("version", "2", "hand.to", SAM.account()))
                        .statusCode());
        assertEquals(before.subList(0, 2), hashes(), "nothing is healed");
        assertEquals(List.of("trail-broken"), incidents(), "recorded once");
        String record = column(
                        "select convert_from(canonical, 'UTF8') from site_record where stream = 'incidents' and place ="
                                + " (select broken from ticket where serial = ?)",
                        serial)
                .get(0);
        for (String said : List.of(
                "\"check\":\"A3\"",
                "\"by\":\"mend-tess\"",
                "\"act\":\"POST /api/tickets/" + number + "/acts\"",
                "\"expected\":{\"hash\":\"" + before.get(3) + "\",\"place\":4}",
                "\"found\":{\"hash\":\"" + before.get(1) + "\",\"place\":2}")) {
            assertTrue(record.contains(said), said + " in " + record);
        }

        mending.propose(ticket, PUT_BACK, bytes(kept), ADA);
        assertTrue(refused(() -> mending.agree(ticket, proposed(), ABE))
                .startsWith("It takes an administrator and a supervisor"));
        assertEquals(Outcome.AGREED, mending.agree(ticket, proposed(), SAM));
        assertEquals(before, hashes(), "all are back, byte by byte");
        assertHolds();
        assertEquals(200, act(4).statusCode());
        SealRounds.once();
        assertEquals(List.of(), SealRounds.look(number, "mending"));

        cut(4);
        assertBroken(5);
        Browser sam = Browser.signedIn(SAM.account(), PASSWORD);
        String page = sam.get("/tickets/" + number + "/mending").asString();
        assertTrue(page.contains("entries 4 to 5"), page);
        Response sent = sam.request()
                .multiPart("csrf-token", sam.formToken())
                .multiPart("way", "GO_ON")
                .multiPart("reason", "Nobody kept them")
                .post("/tickets/" + number + "/mending");
        assertEquals(303, sent.statusCode(), sent.asString());
        assertBroken(5);
        Browser ada = Browser.signedIn(ADA.account(), PASSWORD);
        assertTrue(ada.get("/tickets/" + number + "/mending").asString().contains("Nobody kept them"));
        assertEquals(
                303,
                ada.post("/tickets/" + number + "/mending/" + proposed() + "/agreement", Map.of())
                        .statusCode());
        assertHolds();
        Response next = act(5);
        assertEquals(200, next.statusCode(), next.asString());
        assertEquals(
                List.of("1", "2", "3", "6"),
                column("select entry from trail_entry where ticket = ? order by entry", serial),
                "no number is given twice");
        assertEquals(
                List.of("trail-broken", "mending", "mending AGREED", "trail-broken", "mending", "mending AGREED"),
                incidents());
        assertHoleIsTold(4, 5);
    }

    /** Everywhere a hole is called one, and nowhere is the trail called whole or altered. */
    private void assertHoleIsTold(int first, int last) {
        String incident = column(
                        "select max(place) from site_record where stream = 'incidents' and convert_from(canonical, 'UTF8') like ?",
                        "%\"GO_ON\"%")
                .get(0);
        String told = "Entries " + first + " to " + last + " are a hole, mended by incident " + incident;
        SealRounds.once();
        assertTrue(get("/trail/verification").jsonPath().getString("sentence").contains(told));
        assertEquals(List.of(first), get("").jsonPath().getList("holes.first"));
        Browser sam = Browser.signedIn(SAM.account(), PASSWORD);
        assertTrue(sam.get("/tickets/" + number).asString().contains(told), "on the sheet");
        assertTrue(sam.get("/tickets/" + number + "/trail").asString().contains(told), "on the trail");
        List<String> found = SealRounds.look(number, "mending");
        assertEquals(1, found.size(), found::toString);
        assertTrue(found.get(0).startsWith("hole: ticket/" + number + ": " + told), found::toString);
        String verified = verified(export());
        assertTrue(verified.contains(told) && verified.startsWith("2 Holds as far as can be told."), verified);
    }

    private String verified(String file) {
        try {
            Path export = Files.writeString(folder.resolve("trail.jsonl"), file);
            ByteArrayOutputStream said = new ByteArrayOutputStream();
            int exit =
                    VerifyCommand.run(List.of(export.toString()), new PrintStream(said, true, StandardCharsets.UTF_8));
            return exit + " " + said.toString(StandardCharsets.UTF_8);
        } catch (java.io.IOException e) {
            throw new IllegalStateException(e);
        }
    }

    /** A hole that nobody agreed to, or another's, is a missing entry to the verifier. */
    @Test
    void hole_thatIsMovedToAnotherPlace_doesNotHold() {
        cut(3);
        assertEquals(Outcome.AGREED, mend(GO_ON, NONE));
        assertEquals(200, act(4).statusCode());
        SealRounds.once();
        List<String> lines = new ArrayList<>(export().lines().toList());
        assertTrue(lines.get(3).startsWith("{\"hole\""), lines::toString);
        String moved = lines.remove(2);
        assertFalse(verified(String.join("\n", lines) + "\n").startsWith("2"), "an entry before it is left out");
        lines.add(2, moved);
        lines.remove(3);
        assertTrue(verified(String.join("\n", lines) + "\n").startsWith("1"), "without it an entry is missing");
    }

    @ParameterizedTest
    @ValueSource(strings = {"row and queue", "queue"})
    void unsealedTail_cutAndGoneOnAfter_isAHole_andItsLeavesAreNotAsked(String what) {
        assertEquals(200, act(4).statusCode());
        assertEquals(200, act(5).statusCode());
        cut(5);
        TestDatabase.run("delete from seal_queue where stream = ?", "ticket/" + number);
        if (what.equals("row and queue")) {
            assertBroken(6);
            TestDatabase.run(
                    "update ticket t set entries = 4, last_hash = e.hash from trail_entry e where e.ticket = t.serial and e.entry = 4"
                            + " and t.serial = ?",
                    serial);
            assertBroken(4);
        }
        assertEquals(Outcome.AGREED, mend(GO_ON, NONE));
        assertEquals(List.of(), SealRounds.look("seal_queue", "not sealed: ticket/" + number));
        Response next = act(6);
        assertEquals(200, next.statusCode(), next.asString());
        assertEquals(
                "7",
                column("select max(entry) from trail_entry where ticket = ?", serial)
                        .get(0));
        assertHoleIsTold(5, 6);
        assertEquals(
                List.of("1 2 3 4 5 6 7"),
                column(
                        "select string_agg(place::text, ' ' order by place) from seal_leaf where stream = ?",
                        "ticket/" + number),
                "whoever follows the log misses no place");
        assertEquals(
                List.of(),
                column("select stream from seal_stuck where stream = ?", "ticket/" + number),
                "all is sealed");
    }

    @Test
    void whatWasFoundBroken_staysShut_thoughSomebodyMadeTheRowFit() {
        assertEquals(200, act(4).statusCode());
        cut(5);
        assertBroken(5);
        TestDatabase.run(
                "update ticket t set entries = 4, last_hash = e.hash, touched = e.at from trail_entry e where e.ticket = t.serial"
                        + " and e.entry = 4 and t.serial = ?",
                serial);
        assertBroken(4);
        assertTrue(get("/trail/verification").jsonPath().getString("sentence").contains("has not been mended since"));
        assertEquals(Outcome.AGREED, mend(GO_ON, NONE));
        assertEquals(200, act(5).statusCode());
        assertEquals(
                "6",
                column("select max(entry) from trail_entry where ticket = ?", serial)
                        .get(0),
                "number 5 is not given twice");
    }

    @Test
    void mark_takenAwayByHand_isNamedByTheLook() {
        cut(4);
        assertBroken(4);
        TestDatabase.run("update ticket set broken = null where serial = ?", serial);
        assertTrue(SealRounds.look("ticket " + number).stream()
                .anyMatch(line -> line.contains("not what the incidents say")));
        assertEquals(Outcome.AGREED, mend(GO_ON, NONE));
    }

    @Test
    void alteredEntry_takesItsOwnBytesBack_withTheColumnsBesideThem() {
        String kept = export();
        List<String> before = hashes();
        rewrite(3, entries().get(2).replace("\"driveFailure\":false", "\"driveFailure\":true"));
        Tampering.run("update trail_entry set actor = 'nobody' where ticket = ? and entry = 2", serial);
        assertBroken(4);
        assertEquals(Outcome.AGREED, mend(PUT_BACK, bytes(kept)));
        assertEquals(before, hashes());
        assertHolds();
        assertEquals(200, act(4).statusCode());
        SealRounds.once();
        assertEquals(List.of(), SealRounds.look(number));
    }

    @Test
    void unsealedTail_putBack_isSealedInItsOrder() {
        assertEquals(200, act(4).statusCode());
        assertEquals(200, act(5).statusCode());
        String kept = String.join("\n", entries()) + "\n" + words();
        cut(5);
        TestDatabase.run("delete from seal_queue where stream = ?", "ticket/" + number);
        assertBroken(6);
        assertEquals(Outcome.AGREED, mend(PUT_BACK, bytes(kept)));
        assertEquals(200, act(6).statusCode());
        SealRounds.once();
        assertEquals(List.of(), SealRounds.look(number));
    }

    @Test
    void whatIsBackByHand_needsTheTwoAllTheSame_andNoFile() {
        String before = entries().get(2);
        rewrite(3, before.replace("\"driveFailure\":false", "\"driveFailure\":true"));
        assertBroken(4);
        rewrite(3, before);
        assertBroken(4);
        assertEquals(Outcome.AGREED, mend(PUT_BACK, NONE));
        assertEquals(200, act(4).statusCode());
    }

    @Test
    void entriesOfAnotherTicket_orAForgedTail_orAFileWithEntriesLeftOut_putNothingBack() {
        List<String> mine = entries();
        String words = words();
        String first = number;
        number = opened();
        String other = number;
        number = first;
        List<String> strange = column(
                "select convert_from(canonical, 'UTF8') from trail_entry where ticket = ? order by entry",
                TicketNumber.parse(other).serial());
        cut(3);
        assertBroken(4);
        String forged3 = mine.get(2).replace("\"driveFailure\":false", "\"driveFailure\":true");
        String forged4 = mine.get(3).replace(HashChain.hash(bytes(mine.get(2))), HashChain.hash(bytes(forged3)));
        for (String file : List.of(
                String.join("\n", strange),
                String.join("\n", strange).replace(other, number),
                String.join("\n", List.of(mine.get(0), mine.get(1), forged3, forged4)),
                String.join("\n", List.of(mine.get(0), mine.get(1), mine.get(3))),
                String.join("\n", mine).replace("\"previous\"", "\"Previous\""),
                "",
                "{\"entry\":[]}\nnull\n[[[")) {
            String refusal = refused(() -> mending.propose(ticket, PUT_BACK, bytes(file + "\n" + words), SAM));
            assertTrue(refusal.contains("neither here nor in the file"), refusal);
        }
        assertEquals(2, hashes().size());
        assertEquals(List.of("trail-broken"), incidents());
    }

    /** A longer tail than was ever there adds nothing: the trail ends where row, log or incident say. */
    @Test
    void longerTail_isNotTaken() {
        List<String> mine = new ArrayList<>(entries());
        String words = words();
        mine.add(mine.get(3)
                .replace("\"entry\":4", "\"entry\":5")
                .replaceAll("(?<=\"previous\":\")[0-9a-f]{64}", HashChain.hash(bytes(mine.get(3)))));
        cut(3);
        assertEquals(Outcome.AGREED, mend(PUT_BACK, bytes(String.join("\n", mine) + "\n" + words)));
        assertEquals(4, hashes().size());
    }

    /** Words that were erased do not come back with an entry from an old file; those of the others do. */
    @Test
    void erasedWords_stayErased_whateverTheFileHas() {
        String kept = export();
        erasure.erase(TicketNumber.parse(number), List.of(3), "mend-sam, mend-ada", "asked");
        cut(2);
        assertEquals(Outcome.AGREED, mend(PUT_BACK, bytes(kept)));
        assertHolds();
        assertEquals(
                List.of("2", "4"),
                column(
                        "select entry from trail_entry where ticket = ? and entry > 1 and words is not null order by entry",
                        serial));
        assertRefusedByOwner(
                "the words of entry 3 were erased",
                "update trail_entry set words = '{}' where ticket = " + serial + " and entry = 3");
    }

    private static void assertRefusedByOwner(String why, String sql) {
        try (Connection owner = TestDatabase.owner();
                var statement = owner.createStatement()) {
            String said = assertThrows(SQLException.class, () -> statement.execute(sql))
                    .getMessage();
            assertTrue(said.contains(why), said);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The parts of a whole log have no words: with them alone an entry does not come back. */
    @Test
    void entryWithoutItsWords_isNotPutBack() {
        String bare = String.join("\n", entries());
        cut(3);
        assertTrue(refused(() -> mending.propose(ticket, PUT_BACK, bytes(bare), SAM))
                .contains("without its words"));
    }

    /** An entry too much is taken away by nothing here. */
    @Test
    void entryTooMuch_isMendedByNeitherWay() {
        String added = entries()
                .get(3)
                .replace("\"entry\":4", "\"entry\":5")
                .replaceAll("(?<=\"previous\":\")[0-9a-f]{64}", hashes().get(3));
        Tampering.run(
                "insert into trail_entry (ticket, entry, at, actor, kind, canonical, hash)"
                        + " select ticket, 5, at, actor, kind, ?, ? from trail_entry where ticket = ? and entry = 4",
                bytes(added),
                HashChain.hash(bytes(added)),
                serial);
        assertBroken(4);
        for (TicketMending.Wanted way : List.of(GO_ON, PUT_BACK)) {
            assertTrue(refused(() -> mending.propose(ticket, way, NONE, SAM))
                    .startsWith("There are entries after entry 4"));
        }
    }

    @Test
    void firstEntry_isNotGoneOnWithout() {
        cut(1);
        assertBroken(4);
        assertTrue(refused(() -> mending.propose(ticket, GO_ON, NONE, SAM)).contains("can only be put back"));
    }

    @Test
    void whatHolds_isNotMended() {
        assertEquals("There is nothing to mend.", refused(() -> mending.propose(ticket, GO_ON, NONE, SAM)));
        assertEquals("There is nothing to mend.", refused(() -> mending.propose(ticket, PUT_BACK, NONE, SAM)));
        assertEquals(List.of(), incidents());
    }

    @Test
    void onePersonWithBothRoles_doesNotMendAlone_butWithEither() {
        cut(4);
        mending.propose(ticket, GO_ON, NONE, BEA);
        assertTrue(refused(() -> mending.agree(ticket, proposed(), BEA)).startsWith("You proposed this yourself"));
        assertThrows(Forbidden.class, () -> mending.agree(ticket, proposed(), TESS));
        assertEquals(Outcome.AGREED, mending.agree(ticket, proposed(), SAM));
    }

    @Test
    void roleGivenSinceTheProposal_doesNotCount_andOneLostNeither() {
        cut(4);
        mending.propose(ticket, GO_ON, NONE, ADA);
        people.setRoles(ADA, ABE.account(), Set.of(Role.ADMINISTRATOR, Role.SUPERVISOR));
        try {
            Actor raised = new Actor(ABE.account(), "Abe", Set.of(Role.ADMINISTRATOR, Role.SUPERVISOR));
            assertTrue(refused(() -> mending.agree(ticket, proposed(), raised)).startsWith("It takes"));
            mending.withdraw(ticket, proposed(), SAM);
            mending.propose(ticket, GO_ON, NONE, ABE.account().isEmpty() ? ADA : raised);
            people.setRoles(ADA, ABE.account(), Set.of(Role.SUPERVISOR));
            assertTrue(refused(() -> mending.agree(ticket, proposed(), SID)).startsWith("It takes"));
            assertEquals(Outcome.AGREED, mending.agree(ticket, proposed(), ADA));
        } finally {
            people.setRoles(ADA, ABE.account(), ABE.roles());
        }
    }

    @Test
    void proposal_lapsesWhenWhatIsStoredHasChanged_andIsAgreedToOnce() {
        String kept = export();
        cut(4);
        mending.propose(ticket, GO_ON, NONE, SAM);
        long early = proposed();
        assertTrue(refused(() -> mending.propose(ticket, PUT_BACK, bytes(kept), SAM))
                .startsWith("Something is proposed already"));
        assertBroken(4);
        cut(3);
        assertEquals(Outcome.LAPSED, mending.agree(ticket, early, ADA));
        assertBroken(4);
        assertTrue(refused(() -> mending.agree(ticket, early, ADA)).contains("does not wait any more"));
        assertEquals(Outcome.AGREED, mend(PUT_BACK, bytes(kept)));
        assertTrue(
                refused(() -> mending.agree(ticket, proposed(), ADA)).contains("does not wait any more"),
                "in a second tab");
        assertEquals(List.of("trail-broken", "mending", "mending LAPSED", "mending", "mending AGREED"), incidents());
    }

    /** The server's account has no other way to write into a trail, whatever it sends. */
    @Test
    void database_takesOnlyWhatIsProven_andOnlyAfterTwoAgreed() throws SQLException {
        String third = entries().get(2);
        rewrite(3, third.replace("\"driveFailure\":false", "\"driveFailure\":true"));
        String putBack = "select put_back_entry(?, 3, ?, ?)";
        assertRefusedByDatabase("nobody agreed", putBack, serial, bytes(third), bytes("{}"));
        assertRefusedByDatabase(
                "permission denied",
                "update trail_entry set canonical = ? where ticket = ? and entry = 3",
                bytes(third),
                serial);
        assertRefusedByDatabase("permission denied", "delete from trail_entry where ticket = ?", serial);
        assertEquals(Outcome.AGREED, mend(PUT_BACK, bytes(third)));
        assertRefusedByDatabase(
                "the trail goes on at entry 5",
                putBack,
                serial,
                bytes(third.replace("\"driveFailure\":false", "\"driveFailure\":true")),
                bytes("{}"));
        assertRefusedByDatabase(
                "what was proposed stays",
                "update mending set outcome = null, ended = null, ended_by = null" + " where ticket = ?",
                serial);
        assertRefusedByDatabase("permission denied", "update mending set last = 9 where ticket = ?", serial);
    }

    private static void assertRefusedByDatabase(String why, String sql, Object... values) throws SQLException {
        try (Connection server = TestDatabase.server();
                var statement = server.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            String said = assertThrows(SQLException.class, statement::execute).getMessage();
            assertTrue(said.contains(why), said);
        }
    }

    /** A hole that somebody writes into the table beside the server excuses nothing. */
    @Test
    void holeWithoutARecord_isNone() {
        cut(4);
        TestDatabase.run("alter table mending disable trigger user");
        try {
            TestDatabase.run(
                    "insert into mending (ticket, way, reason, first, last, hash, state, proposed, by, administrators, supervisors, ended,"
                            + " outcome, ended_by) values (?, 'GO_ON', 'x', 4, 4, ?, 'x', now(), 'mend-sam', 'x', 'x', now(), 'AGREED', 'mend-ada')",
                    serial,
                    column("select last_hash from ticket where serial = ?", serial)
                            .get(0));
            TestDatabase.run("alter table mending enable trigger user");
            // all else of the row fits such a hole
            TestDatabase.run(
                    "update ticket t set touched = e.at from trail_entry e where e.ticket = t.serial and e.entry = 3 and t.serial = ?",
                    serial);
            assertBroken(4);
            List<String> found = SealRounds.look("mending " + proposed());
            assertTrue(found.get(0).contains("has no record"), found::toString);
        } finally {
            TestDatabase.run("alter table mending disable trigger user");
            TestDatabase.run("delete from mending where ticket = ?", serial);
            TestDatabase.run("alter table mending enable trigger user");
        }
    }

    @Test
    void everybodyElse_findsTheDoorShut() {
        cut(4);
        Browser tess = Browser.signedIn(TESS.account(), PASSWORD);
        tess.get("/me");
        String at = "/tickets/" + number + "/mending";
        assertEquals(403, tess.get(at).statusCode());
        assertEquals(403, tess.post(at + "/1/agreement", Map.of()).statusCode());
        assertEquals(403, tess.post(at + "/1/withdrawal", Map.of()).statusCode());
        String shown = Set.of("/mending").stream().collect(Collectors.joining());
        assertFalse(tess.get("/tickets/" + number).asString().contains(shown));
        assertTrue(Browser.signedIn(SAM.account(), PASSWORD)
                .get("/tickets/" + number)
                .asString()
                .contains(shown));
    }
}
