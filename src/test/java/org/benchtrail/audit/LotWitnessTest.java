package org.benchtrail.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.benchtrail.core.audit.AuditAct.SeedDrawn;
import org.benchtrail.core.audit.AuditLot.State;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.Heads;
import org.benchtrail.seal.SealRounds;
import org.benchtrail.seal.WitnessedSite;
import org.benchtrail.seal.witness.ServedWitness;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A draw that waits for a witness that answers on this machine, and one that waits for none. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class LotWitnessTest extends LotCourse {
    private static final String NAMED = "witness.example/named";
    private static final String OTHER = "witness.example/other";
    private static final String HOLDS =
            "The draw holds: plan, list, head, seed and order are what the log sealed, and give one another.";

    @Inject
    Heads heads;

    @TempDir
    Path folder;

    private ServedWitness witness(String name) throws Exception {
        Path own = folder.resolve(name.replaceFirst(".*/", ""));
        Files.createDirectories(own);
        return new ServedWitness(own, WitnessedSite.key(), clock, name);
    }

    private void planNames(String witness, Instant from) {
        lastUntil = clock.instant().plusSeconds(5);
        Map<String, Object> plan = plan(from, lastUntil, 2);
        plan.put("witness", witness);
        lot = String.valueOf(plan.get("lot"));
        at(state(plan));
    }

    /** One more leaf and one more head. */
    private void headLater() {
        people.setZone(SUE, "UTC");
        clock.putForward(Duration.ofSeconds(20));
        SealRounds.once();
    }

    private State round() {
        job.round();
        return now().state();
    }

    /** How many leaves there were when the freeze was the last of them. */
    private long leavesAtTheFreeze() {
        return Long.parseLong(
                TestDatabase.one("select index + 1 from seal_leaf where place = 2 and stream = 'audit/" + lot + "'"));
    }

    @Test
    void theDraw_waitsForTheWitnessThatThePlanNames_andItsLineIsInTheSeed() throws Exception {
        SealRounds.once();
        try (ServedWitness other = witness(OTHER);
                ServedWitness named = witness(NAMED)) {
            WitnessedSite.asks(other.party(), named.party());
            assertTrue(sue.get("/audit/plan").asString().contains("<option value=\"" + NAMED + "\""));
            Instant from = begins();
            ended(TINA);
            ended(TINA);
            ended(TINA);
            planNames(NAMED, from);
            assertTrue(page().contains("witness " + NAMED), page());

            // the named one is away: heads come, another signs them, and nothing is drawn
            WitnessedSite.asks(other.party());
            clock.putForward(Duration.ofSeconds(40));
            assertEquals(State.FROZEN, round());
            headLater();
            assertEquals(State.FROZEN, round(), "signed by another only");
            assertTrue(page().contains("The server draws as soon as a head of the log comes that covers it"), page());

            // it is back, and signs one head and then a later one: the first of them counts
            WitnessedSite.asks(other.party(), named.party());
            headLater();
            long first = Long.parseLong(
                    TestDatabase.one("select max(size) from cosignature where key like '" + NAMED + "+%'"));
            headLater();
            assertEquals(State.DRAWN, round());
            SeedDrawn seed = now().seed().orElseThrow();
            assertEquals(first, seed.size());
            assertTrue(first > leavesAtTheFreeze());
            isSeedOf(seed, named.party().key());
            isTold(seed, named.party().key(), other.party().key());
        }
    }

    /** Of text, the log's line and the witness' line, and of nothing else: the line of the other one is left out. */
    private void isSeedOf(SeedDrawn seed, VerifierKey named) {
        SignedNote note = SignedNote.parse(seed.head());
        assertEquals(seed.size(), Checkpoint.parse(note.text()).size());
        assertEquals(2, note.lines().size(), seed.head());
        assertEquals(List.of(named), note.signers(List.of(named)));
        assertEquals(NAMED, note.lines().get(1).name());
        String line = note.lines().get(1).toString();
        assertEquals(seed.seed(), hash(seed.head() + now().planText()));
        assertFalse(seed.seed().equals(hash(seed.head().replace(line + "\n", "") + now().planText())));
    }

    private static String hash(String text) {
        return Hash.sha256(text.getBytes(StandardCharsets.UTF_8)).hex();
    }

    private void isTold(SeedDrawn seed, VerifierKey named, VerifierKey other) throws Exception {
        SealRounds.once();
        String told = "the head of " + seed.size() + " leaves that " + NAMED + " signed first after the freeze";
        assertTrue(page().contains(told) && page().contains(HOLDS), page());
        try (PDDocument pdf = Loader.loadPDF(
                sue.request().get("/audit/" + lot + "/report.pdf").asByteArray())) {
            String paper = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
            assertTrue(paper.contains(told) && paper.contains(HOLDS), paper);
        }
        assertTrue(holds(seed.head(), NAMED));
        assertFalse(holds(seed.head(), OTHER), "another did not sign this one");
        String without = seed.head().replaceFirst("(?m)^\u2014 " + NAMED + " .*\n", "");
        assertFalse(holds(without, NAMED), "and without its line nobody did");
        // what it signed before tells its key, where the site asks it no more
        WitnessedSite.asks();
        assertTrue(holds(seed.head(), NAMED));
        assertTrue(page().contains(HOLDS), page());
        TestDatabase.unguarded("cosignature", "update cosignature set line = replace(line, ?, ?)", NAMED, OTHER);
        try {
            assertTrue(
                    page().contains("The head was altered: it is not the first that came after the freeze."), page());
        } finally {
            TestDatabase.unguarded(
                    "cosignature",
                    "update cosignature set line = replace(line, ?, ?) where split_part(key, '+', 1) = ?",
                    OTHER,
                    NAMED,
                    NAMED);
        }
        assertTrue(page().contains(HOLDS), page());
        assertFalse(named.equals(other));
    }

    private boolean holds(String note, String witness) {
        return QuarkusTransaction.requiringNew().call(() -> heads.isOfWitness(note, witness));
    }

    /** By hand a form can name anybody: the draw would wait for ever. */
    @Test
    void aWitnessThatTheSiteDoesNotAsk_isNotTaken() {
        WitnessedSite.asks();
        Map<String, Object> plan = plan(clock.instant(), clock.instant().plusSeconds(5), 2);
        plan.put("witness", NAMED);
        Response refused = state(plan);
        assertEquals(422, refused.statusCode(), refused.asString());
        assertTrue(refused.asString().contains("The site asks no witness of this name"), refused.asString());
    }

    /** Said before, beside the lot, and on paper; and the freeze is sealed at once, as the last leaf of its head. */
    @Test
    void withoutAWitness_itIsDrawnByTheShopsOwnNumber_fromTheHeadThatEndsWithTheFreeze() throws Exception {
        WitnessedSite.asks();
        assertTrue(sue.get("/audit/plan").asString().contains("The report will say 'drawn by the shop's own number'"));
        Instant from = begins();
        ended(TINA);
        stated(from, 9);
        drawn();
        SeedDrawn seed = now().seed().orElseThrow();
        assertEquals(leavesAtTheFreeze(), seed.size());
        assertEquals(1, SignedNote.parse(seed.head()).lines().size());
        String told = "the shop's own number: no witness signed the head, so whoever holds the log's key could have"
                + " tried several";
        assertTrue(page().replace("&#39;", "'").contains(told), page());
        try (PDDocument pdf = Loader.loadPDF(
                sue.request().get("/audit/" + lot + "/report.pdf").asByteArray())) {
            String paper = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
            assertTrue(paper.contains("Drawn by " + told), paper);
        }
    }
}
