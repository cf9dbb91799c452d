package org.benchtrail.proposals;

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
import java.sql.Connection;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.benchtrail.catalogue.CatalogueActs;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.limits.LimitBook;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** Ways for one supervisor alone to change figures, catalogue or limits: none is open. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SecondSupervisorTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor OMAR = new Actor("two-omar", "Omar", Set.of(Role.SUPERVISOR));
    private static final Actor NADIA = new Actor("two-nadia", "Nadia Second", Set.of(Role.SUPERVISOR));
    private static final Actor INES = new Actor("two-ines", "Ines", Set.of(Role.TECHNICIAN));
    private static final Actor LENA = new Actor("two-lena", "Lena", Set.of(Role.ADMINISTRATOR));

    @Inject
    PeopleActs people;

    @Inject
    ProposalActs proposals;

    @Inject
    CatalogueActs catalogue;

    @Inject
    Catalogues catalogues;

    @Inject
    LimitBook limits;

    private final Map<Actor, String> tokens = new HashMap<>();
    private int start;
    private String text = "";

    @BeforeEach
    void atTheStart() {
        for (Actor who : List.of(OMAR, NADIA, INES, LENA)) {
            people.ensureAccount(who.account(), who.name(), who.roles(), PASSWORD);
            tokens.computeIfAbsent(who, w -> people.createToken(w, "two", 1).secret());
        }
        start = catalogues.inForce().number();
        text = catalogue.text(start, OMAR);
    }

    @AfterEach
    void nothingWaits_andTheCatalogueIsAsItWas() {
        proposals.waiting(OMAR).forEach(p -> {
            Actor own = p.proposedBy().equals(OMAR.account()) ? OMAR : NADIA;
            if (p.proposedBy().startsWith("two-")) {
                proposals.withdraw(p.id(), own);
            }
        });
        int now = catalogues.inForce().number();
        if (!catalogue.text(now, OMAR).equals(text)) {
            proposals.confirm(
                    catalogue.restore(now, start, "End of the test", OMAR).id(), NADIA);
        }
    }

    private RequestSpecification program(Actor who) {
        return given().header("Authorization", "Bearer " + tokens.get(who)).contentType("application/json");
    }

    private static Browser page(Actor who) {
        Browser browser = Browser.signedIn(who.account(), PASSWORD);
        browser.get("/me");
        return browser;
    }

    private String edited() {
        return text.replaceFirst("weight: 36", "weight: 72");
    }

    private ProposalView edit() {
        return catalogue.save(start, edited(), "Dust is twice as frequent here", OMAR);
    }

    private static void assertRefused(String sentence, Response answer) {
        assertEquals(422, answer.statusCode(), answer.asString());
        assertTrue(answer.asString().contains(sentence), answer.asString());
    }

    private void assertUnchanged() {
        assertEquals(start, catalogues.inForce().number());
    }

    @Test
    void editedText_isInForceOnlyOnceAnotherConfirms_byProgram() {
        Response proposed = program(OMAR)
                .body(Map.of("base", start, "text", edited(), "note", "More dust"))
                .post("/api/catalogue/versions");
        assertEquals(202, proposed.statusCode(), proposed.asString());
        long id = proposed.jsonPath().getLong("id");
        assertTrue(proposed.header("Location").endsWith("/api/proposals/" + id));
        assertEquals("OPEN", proposed.jsonPath().getString("state"));
        assertTrue(proposed.jsonPath().getString("waitsFor").contains("Nadia Second"), proposed.asString());
        assertUnchanged();
        assertRefused("You proposed this yourself", program(OMAR).post("/api/proposals/" + id + "/confirmation"));
        assertUnchanged();
        Response seen = program(NADIA).get("/api/proposals/" + id);
        assertEquals(
                List.of("heat / causes / heat/dust / weight", "36.0", "72.0"),
                List.of(
                        seen.jsonPath().getString("differences[0].what"),
                        seen.jsonPath().getString("differences[0].before"),
                        seen.jsonPath().getString("differences[0].after")));
        Response confirmed = program(NADIA).post("/api/proposals/" + id + "/confirmation");
        assertEquals("CONFIRMED", confirmed.jsonPath().getString("state"), confirmed.asString());
        assertEquals("/catalogue/versions/" + (start + 1), confirmed.jsonPath().getString("made"));
        assertEquals(start + 1, catalogues.inForce().number());
        Response version = program(INES).get("/api/catalogue/versions/" + (start + 1));
        assertEquals("two-omar", version.jsonPath().getString("version.madeBy"));
        assertEquals("two-nadia", version.jsonPath().getString("version.confirmedBy"));
    }

    @Test
    void goingBack_isConfirmedByAnother_onThePages() {
        proposals.confirm(edit().id(), NADIA);
        int edited = start + 1;
        Browser omar = page(OMAR);
        Response sent = omar.post(
                "/catalogue/versions/" + start + "/restoration", Map.of("base", "" + edited, "note", "It was wrong"));
        assertEquals(303, sent.statusCode(), sent.asString());
        String at = sent.header("Location").replaceFirst("^https?://[^/]+", "");
        assertTrue(at.startsWith("/proposals/"), at);
        String own = omar.get(at).asString();
        assertTrue(own.contains("Nothing is changed yet") && own.contains("Withdraw it"), own);
        assertFalse(own.contains("Confirm it: make the change"), "no such door is shown to who proposed it");
        assertRefused("You proposed this yourself", omar.post(at + "/confirmation", Map.of()));
        assertEquals(edited, catalogues.inForce().number());
        Browser nadia = page(NADIA);
        assertTrue(nadia.get("/proposals").asString().contains("Go back from version " + edited));
        assertTrue(nadia.get(at).asString().contains("heat / causes / heat/dust / weight"));
        assertEquals(303, nadia.post(at + "/confirmation", Map.of()).statusCode());
        assertEquals(text, catalogue.text(catalogues.inForce().number(), OMAR));
        assertTrue(nadia.get("/catalogue/versions").asString().contains("Omar, confirmed by Nadia Second"));
    }

    @Test
    void nobodyElseThanASupervisor_confirmsDeclinesOrSees() {
        long id = edit().id();
        for (Actor other : List.of(INES, LENA)) {
            assertEquals(403, program(other).get("/api/proposals").statusCode());
            assertEquals(403, program(other).get("/api/proposals/" + id).statusCode());
            assertEquals(
                    403,
                    program(other)
                            .post("/api/proposals/" + id + "/confirmation")
                            .statusCode());
            assertEquals(
                    403,
                    program(other)
                            .body(Map.of("reason", "x"))
                            .post("/api/proposals/" + id + "/declining")
                            .statusCode());
            assertEquals(
                    403,
                    page(other)
                            .post("/proposals/" + id + "/confirmation", Map.of())
                            .statusCode());
        }
        assertUnchanged();
    }

    @Test
    void whatIsDecided_isDecidedOnce() {
        long withdrawn = edit().id();
        assertRefused(
                "Only who proposed it withdraws it",
                program(NADIA).post("/api/proposals/" + withdrawn + "/withdrawal"));
        assertEquals(
                "WITHDRAWN",
                program(OMAR)
                        .post("/api/proposals/" + withdrawn + "/withdrawal")
                        .jsonPath()
                        .getString("state"));
        assertRefused("decided already", program(NADIA).post("/api/proposals/" + withdrawn + "/confirmation"));
        long declined = edit().id();
        assertRefused(
                "Say why not",
                program(NADIA).body(Map.of("reason", " ")).post("/api/proposals/" + declined + "/declining"));
        assertRefused(
                "You proposed this yourself",
                program(OMAR).body(Map.of("reason", "No")).post("/api/proposals/" + declined + "/declining"));
        assertEquals(
                303,
                page(NADIA)
                        .post("/proposals/" + declined + "/declining", Map.of("reason", "Too few cases"))
                        .statusCode());
        assertRefused("decided already", program(NADIA).post("/api/proposals/" + declined + "/confirmation"));
        assertRefused("decided already", program(OMAR).post("/api/proposals/" + declined + "/withdrawal"));
        assertTrue(page(OMAR).get("/proposals").asString().contains("Too few cases"));
        assertUnchanged();
    }

    @Test
    void whatHasAnotherBaseSince_cannotBeConfirmed_andSaysSo() {
        long first = edit().id();
        long second = catalogue.save(start, edited() + "\n", "Another", NADIA).id();
        proposals.confirm(first, NADIA);
        Response seen = program(OMAR).get("/api/proposals/" + second);
        assertTrue(seen.jsonPath().getString("obstacle").contains("Look at version " + (start + 1)), seen.asString());
        assertRefused(
                "Look at version " + (start + 1), program(OMAR).post("/api/proposals/" + second + "/confirmation"));
        assertEquals(start + 1, catalogues.inForce().number());
        assertTrue(page(OMAR).get("/proposals/" + second).asString().contains("cannot be made any more"));
    }

    @Test
    void theSameTwice_waitsOnce() {
        edit();
        Invalid again = assertThrows(Invalid.class, this::edit);
        assertTrue(again.getMessage().contains("proposed already"), again.getMessage());
    }

    @Test
    void aSupervisorAlone_isToldWhatToDo() {
        TestDatabase.run(
                "update account set active = false where 'SUPERVISOR' = any(roles) and login <> ?", OMAR.account());
        try {
            ProposalView alone = edit();
            assertTrue(alone.waitsFor().contains("ask an administrator"), alone.waitsFor());
            assertTrue(page(OMAR)
                    .get("/proposals/" + alone.id())
                    .asString()
                    .contains("There is no other supervisor here"));
            assertRefused("ask an administrator", program(OMAR).post("/api/proposals/" + alone.id() + "/confirmation"));
            assertUnchanged();
        } finally {
            TestDatabase.run("update account set active = true where 'SUPERVISOR' = any(roles)");
        }
    }

    // ---- limits

    private static LimitBook.Proposed limit(String id, String quantity, String unit, String upper) {
        return new LimitBook.Proposed(id, quantity, unit, "", upper, "nameplate", "");
    }

    private boolean isOffered(String id) {
        return limits.library().rows().stream().anyMatch(row -> row.id().equals(id));
    }

    @Test
    void limit_isTakenOutOrLoosenedByTwo_howeverItIsWritten() {
        String id = "two-" + UUID.randomUUID().toString().substring(0, 8);
        String quantity = "Load of the cabinet " + id;
        assertTrue(limits.add(limit(id, quantity, "V", "70"), OMAR).isEmpty(), "a new one is no loosening");
        assertTrue(limits.add(limit(id + ".tight", quantity, "V", "60"), OMAR).isEmpty(), "nor a tighter one");
        Map<String, String> looser =
                Map.of("id", id + ".loose", "quantity", quantity, "unit", "V", "upper", "80", "source", "nameplate");
        Response sent = page(OMAR).post("/limits", looser);
        assertTrue(sent.header("Location").contains("/proposals/"), sent.asString());
        assertFalse(isOffered(id + ".loose"));
        String shouted = " LOAD of the  cabinet, " + id.toUpperCase(java.util.Locale.ROOT) + "!";
        assertTrue(limits.add(limit(id + ".mv", shouted, "mV", "80000"), OMAR).isPresent());
        assertFalse(isOffered(id + ".mv"));

        Response out = page(OMAR).post("/limits/" + id + ".tight/offer", Map.of("offered", "false"));
        String at = out.header("Location").replaceFirst("^https?://[^/]+", "");
        assertTrue(isOffered(id + ".tight"));
        assertRefused("You proposed this yourself", page(OMAR).post(at + "/confirmation", Map.of()));
        assertTrue(isOffered(id + ".tight"));
        assertEquals(303, page(NADIA).post(at + "/confirmation", Map.of()).statusCode());
        assertFalse(isOffered(id + ".tight"));
        assertTrue(limits.offer(id + ".tight", true, OMAR).isEmpty(), "back in, it forbids more");
        assertTrue(isOffered(id + ".tight"));
    }

    @Test
    void limitThatWasTakenOut_comesBackAlone_onlyIfItIsNoLooser() {
        String id = "two-" + UUID.randomUUID().toString().substring(0, 8);
        limits.add(limit(id, "Ripple " + id, "V", "70"), OMAR);
        proposals.confirm(limits.offer(id, false, OMAR).orElseThrow().id(), NADIA);
        limits.add(limit(id + ".tight", "Ripple " + id, "V", "60"), OMAR);
        assertTrue(limits.offer(id, true, OMAR).isPresent());
        assertFalse(isOffered(id));
    }

    // ---- below the server

    @Test
    void database_takesNoChangeOfOnePerson() throws SQLException {
        long id = edit().id();
        try (Connection server = TestDatabase.server();
                var statement = server.createStatement()) {
            for (String sql : List.of(
                    "update proposal set state = 'CONFIRMED', decided_by = proposed_by, decided_at = now(), made = '/'"
                            + " where id = " + id,
                    "update proposal set proposed_by = 'two-nadia' where id = " + id,
                    "update proposal set change = '{}' where id = " + id,
                    "delete from proposal",
                    "insert into catalogue_version (number, made_at, made_by, note, origin, practice)"
                            + " values (99999, now(), 'two-omar', 'x', 'EDITED', 'x')",
                    "insert into catalogue_version (number, made_at, made_by, confirmed_by, note, origin, practice)"
                            + " values (99999, now(), 'two-omar', 'two-omar', 'x', 'EDITED', 'x')")) {
                assertThrows(SQLException.class, () -> statement.execute(sql), sql);
            }
        }
        assertThrows(
                IllegalStateException.class, () -> TestDatabase.run("update proposal set note = 'x' where id = ?", id));
        assertUnchanged();
    }

    @Test
    void anAgreement_takesTwoPeople() {
        assertThrows(IllegalArgumentException.class, () -> Agreements.between("two-omar", "two-omar", "Mine"));
    }
}
