package org.benchtrail.catalogue;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.Forbidden;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.proposals.Agreements;
import org.benchtrail.proposals.ProposalActs;
import org.benchtrail.proposals.ProposalView;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Versions of the catalogue as a supervisor makes them, by the page and by the API. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class CatalogueEditTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor OMAR = new Actor("cat-omar", "Omar", Set.of(Role.SUPERVISOR));
    private static final Actor NADIA = new Actor("cat-nadia", "Nadia", Set.of(Role.SUPERVISOR));
    private static final Actor INES = new Actor("cat-ines", "Ines", Set.of(Role.TECHNICIAN));

    @Inject
    PeopleActs people;

    @Inject
    CatalogueActs acts;

    @Inject
    NewVersions newVersions;

    @Inject
    ProposalActs proposals;

    @Inject
    Catalogues catalogues;

    @Inject
    Versions versions;

    private int start;
    private String text = "";

    @BeforeEach
    void atTheStart() {
        people.ensureAccount("cat-omar", "Omar", OMAR.roles(), PASSWORD);
        people.ensureAccount("cat-nadia", "Nadia", NADIA.roles(), PASSWORD);
        people.ensureAccount("cat-ines", "Ines", INES.roles(), PASSWORD);
        start = catalogues.inForce().number();
        text = acts.text(start, OMAR);
    }

    @AfterEach
    void asItWas() {
        int now = catalogues.inForce().number();
        if (now != start && !acts.text(now, OMAR).equals(text)) {
            confirmed(acts.restore(now, start, "End of the test", OMAR));
        }
    }

    /** The version that is made of it, once another supervisor confirms it. */
    private VersionView confirmed(ProposalView proposal) {
        proposals.confirm(proposal.id(), NADIA);
        return acts.version(catalogues.inForce().number(), OMAR);
    }

    private String edited() {
        String other = text.replaceFirst("weight: 36", "weight: 72");
        assertFalse(other.equals(text));
        return other;
    }

    /** Every probability of the ranking of nothing, bit by bit. */
    private static double[] ranked(CatalogueVersion version) {
        return Ranking.of(version.model("heat").orElseThrow(), Evidence.NONE).all().stream()
                .mapToDouble(Ranking.Ranked::probability)
                .toArray();
    }

    /** As another node sees it, which has kept nothing. */
    private CatalogueVersion readAnew(int number) {
        return QuarkusTransaction.requiringNew().call(() -> new Catalogues(versions).version(number));
    }

    @Test
    void deliveredFile_isVersionOne() {
        assertEquals("As delivered", acts.version(1, INES).note());
        assertEquals(VersionOrigin.DELIVERED, acts.version(1, INES).origin());
        assertEquals(CatalogueFile.deliveredText(), acts.text(1, INES));
        assertTrue(acts.offered(OMAR).isEmpty(), "this release brings nothing else");
        assertThrows(NotFound.class, () -> catalogues.version(999_999));
    }

    @Test
    void savedText_isInForceAtOnce_andOldVersionsRankAsTheyDid() {
        double[] before = ranked(catalogues.version(start));
        VersionView made = confirmed(acts.save(start, edited(), "Dust is twice as frequent here", OMAR));
        assertEquals(start + 1, made.number());
        assertEquals(made.number(), catalogues.inForce().number());
        double[] after = ranked(catalogues.inForce());
        assertTrue(after[0] > before[0]);
        assertArrayEquals(before, ranked(catalogues.version(start)));
        assertArrayEquals(before, ranked(readAnew(start)));
        assertArrayEquals(after, ranked(readAnew(made.number())));
        confirmed(acts.restore(made.number(), start, "No, it is not", OMAR));
        assertArrayEquals(before, ranked(catalogues.inForce()));
        assertEquals(start, acts.version(made.number() + 1, INES).restores());
    }

    @Test
    void draft_namesEveryEntryThatDiffers_andEveryFigureThatMoves() {
        CatalogueActs.CheckedText draft = acts.check(edited(), OMAR);
        assertTrue(draft.acceptable());
        assertEquals(List.of(new EntryChange("heat / causes / heat/dust / weight", "36.0", "72.0")), draft.changes());
        ShiftLine largest = draft.shifts().get(0);
        assertEquals("heatsink or filter clogged by dust", largest.cause());
        // .95 x 36/111 and .95 x 72/147
        double sum = catalogues.inForce().figures().get("heat").category().causes().stream()
                .mapToDouble(c -> c.weight())
                .sum();
        assertEquals(0.95 * 36 / sum, largest.before(), 1e-12);
        assertEquals(0.95 * 72 / (sum + 36), largest.after(), 1e-12);
        assertTrue(largest.needsApproval());
        assertEquals(start, catalogues.inForce().number());
    }

    @Test
    void learnedFigures_areLearnedAgainOnAnEditedText() {
        LearningBasis nothing = new LearningBasis(java.time.Instant.EPOCH, List.of());
        Map<String, org.benchtrail.core.diagnosis.Learned> now =
                catalogues.inForce().figures();
        QuarkusTransaction.requiringNew()
                .call(() -> newVersions.learned(
                        start, now, nothing, Agreements.between("cat-omar", "cat-nadia", "Nothing was learned")));
        confirmed(acts.save(start + 1, edited(), "On top", OMAR));
        assertEquals(nothing, acts.basis(start + 2, OMAR).orElseThrow());
        double weight = catalogues
                .inForce()
                .figures()
                .get("heat")
                .category()
                .causes()
                .get(0)
                .weight();
        assertEquals(72, weight);
    }

    /** The form of the page, encoded as a browser does it. */
    private static Response sends(Browser browser, int base, String text, String note, String act) {
        Map<String, String> fields =
                Map.of("csrf-token", browser.formToken(), "base", "" + base, "text", text, "note", note, "act", act);
        String body = fields.entrySet().stream()
                .map(f -> f.getKey() + "=" + URLEncoder.encode(f.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return browser.request()
                .contentType("application/x-www-form-urlencoded")
                .body(body)
                .post("/catalogue/edit");
    }

    @Test
    void malformedText_isRefusedWithRowAndReason_nothingStored_textKept() {
        String bad = text.replaceFirst("weight: 36", "weight: -36").replaceFirst("minutes: 10\n", "minutes: soon\n");
        int row = 1
                + (int) bad.substring(0, bad.indexOf("weight: -36"))
                        .chars()
                        .filter(c -> c == '\n')
                        .count();
        Invalid refused = assertThrows(Invalid.class, () -> acts.save(start, bad, "Bad", OMAR));
        assertEquals(2, refused.problems().size());
        assertEquals("row " + row, refused.problems().get(1).field());
        assertEquals(start, catalogues.inForce().number());

        Browser omar = Browser.signedIn("cat-omar", PASSWORD);
        assertEquals(200, omar.get("/catalogue/edit").statusCode());
        for (String act : List.of("check", "save")) {
            Response page = sends(omar, start, bad, "Mine & yours", act);
            assertEquals(422, page.statusCode());
            assertTrue(page.asString().contains(">" + row + "</th>"), page.asString());
            assertTrue(page.asString().contains("give a number, not &#39;soon&#39;"));
            assertTrue(page.asString().contains("weight: -36"), "the text is kept");
            assertTrue(page.asString().contains("Mine &amp; yours"));
        }
        assertEquals(start, catalogues.inForce().number());
        for (String odd : List.of("", "just words", "\u0000", text + "\ud800", "a: &x 1\nb: *x")) {
            assertFalse(acts.check(odd, OMAR).acceptable());
        }
    }

    @Test
    void pageSaves_whatABrowserSends() {
        Browser omar = Browser.signedIn("cat-omar", PASSWORD);
        omar.get("/catalogue/edit");
        String sent = edited().replace("\n", "\r\n");
        Response check = sends(omar, start, sent, "", "check");
        assertEquals(200, check.statusCode());
        assertTrue(check.asString().contains("heat / causes / heat/dust / weight"));
        Response noNote = sends(omar, start, sent, "", "save");
        assertEquals(422, noNote.statusCode());
        Response saved = sends(omar, start, sent, "More dust", "save");
        assertEquals(303, saved.statusCode());
        confirmed(proposals.waiting(NADIA).stream()
                .filter(p -> p.note().equals("More dust"))
                .findFirst()
                .orElseThrow());
        assertEquals(edited(), acts.text(start + 1, OMAR));
        Response file = omar.get("/catalogue/versions/" + (start + 1) + ".yaml");
        assertEquals(edited(), file.asString());
        Response upload = omar.request()
                .multiPart("csrf-token", omar.formToken())
                .multiPart("base", String.valueOf(start + 1))
                .multiPart("file", "catalogue.yaml", text.getBytes(StandardCharsets.UTF_8))
                .post("/catalogue/edit/file");
        assertEquals(200, upload.statusCode(), upload.asString());
        assertTrue(upload.asString().contains("heat / causes / heat/dust / weight"));
        assertTrue(omar.get("/catalogue/versions").asString().contains("More dust"));
        assertTrue(
                omar.get("/catalogue/versions/" + start).asString().contains("Propose to go back to version " + start));
    }

    @Test
    void everyProbability_showsWhereItComesFrom() {
        Browser ines = Browser.signedIn("cat-ines", PASSWORD);
        String page = ines.get("/catalogue?category=heat").asString();
        assertTrue(page.contains("starter figures, not yet learned here"));
        assertTrue(page.contains("heatsink or filter clogged by dust"));
        assertTrue(page.contains("<td>practice</td>"));
        assertFalse(page.contains("/catalogue/edit"));
        assertEquals(404, ines.get("/catalogue?category=nonsense").statusCode());
        Response api = as(INES).get("/api/catalogue");
        assertEquals(200, api.statusCode());
        assertEquals(
                List.of("practice"),
                api.jsonPath().getList("categories.causes.flatten().prior.origin", String.class).stream()
                        .distinct()
                        .toList());
    }

    private io.restassured.specification.RequestSpecification as(Actor who) {
        String token = people.createToken(who, "catalogue", 1).secret();
        return given().header("Authorization", "Bearer " + token).contentType("application/json");
    }

    @Test
    void api_checksSavesAndGoesBack() {
        Response draft = as(OMAR).body(Map.of("text", edited())).post("/api/catalogue/checks");
        assertEquals("heat / causes / heat/dust / weight", draft.jsonPath().getString("changes[0].entry"));
        Response bad = as(OMAR).body(Map.of("base", start, "text", "format: 2", "note", "x"))
                .post("/api/catalogue/versions");
        assertEquals(422, bad.statusCode());
        assertTrue(bad.jsonPath().getList("errors.field", String.class).contains("row 1"), bad.asString());
        Response made = as(OMAR).body(Map.of("base", start, "text", edited(), "note", "More dust"))
                .post("/api/catalogue/versions");
        assertEquals(202, made.statusCode(), made.asString());
        String at = made.header("Location").replaceFirst("^https?://[^/]+", "");
        Response confirmed = as(NADIA).post(at + "/confirmation");
        assertEquals("/catalogue/versions/" + (start + 1), confirmed.jsonPath().getString("made"));
        Response late = as(OMAR).body(Map.of("base", start, "text", edited() + "\n", "note", "Late"))
                .post("/api/catalogue/versions");
        assertEquals(422, late.statusCode());
        assertEquals("base", late.jsonPath().getString("errors[0].field"));
        Response back = as(OMAR).body(Map.of("base", start + 1, "note", "Back"))
                .post("/api/catalogue/versions/" + start + "/restoration");
        assertEquals(202, back.statusCode());
        assertEquals(
                start,
                confirmed(proposals
                                .details(back.jsonPath().getLong("id"), NADIA)
                                .proposal())
                        .restores());
    }

    @Test
    void technician_editsByNoDoor() {
        assertThrows(Forbidden.class, () -> acts.check(text, INES));
        assertThrows(Forbidden.class, () -> acts.save(start, edited(), "Mine", INES));
        assertThrows(Forbidden.class, () -> acts.restore(start, 1, "Mine", INES));
        assertEquals(start, catalogues.inForce().number());
    }

    @Test
    void storedVersions_cannotBeAltered() throws SQLException {
        try (var server = TestDatabase.server();
                var statement = server.createStatement()) {
            for (String sql : List.of(
                    "update catalogue_version set note = 'x'",
                    "delete from catalogue_version",
                    "truncate catalogue_version")) {
                assertThrows(SQLException.class, () -> statement.execute(sql));
            }
        }
        IllegalStateException owner = assertThrows(
                IllegalStateException.class, () -> TestDatabase.run("update catalogue_version set note = 'x'"));
        assertTrue(String.valueOf(owner.getMessage()).contains("append-only"), owner.getMessage());
    }
}
