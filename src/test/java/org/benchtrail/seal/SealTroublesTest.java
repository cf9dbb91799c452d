package org.benchtrail.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.integrity.Keys;
import org.benchtrail.core.integrity.SigningKey;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.core.integrity.WitnessPolicy;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.witness.ServedWitness;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is wrong with the log is told on its page, on the day of those who answer for it, and to whoever watches the server. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class SealTroublesTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor SUE = new Actor("trouble-sue", "Sue", Set.of(Role.SUPERVISOR));
    private static final Actor TEA = new Actor("trouble-tea", "Tea", Set.of(Role.TECHNICIAN));

    @Inject
    PeopleActs people;

    @Inject
    SealJob job;

    @Inject
    Signing signing;

    @Inject
    SealTroubles troubles;

    @Inject
    @Readiness
    SealHealth health;

    @Inject
    SealDuty duty;

    @Inject
    Incidents incidents;

    @Inject
    Witnessing witnessing;

    @Inject
    LogKeys keys;

    @Inject
    MovedClock clock;

    @TempDir
    Path folder;

    private Browser browser;

    @BeforeEach
    void signedIn() {
        for (Actor person : List.of(SUE, TEA)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        browser = Browser.signedIn(SUE.account(), PASSWORD);
        grow();
        assertEquals("", job.stopped());
    }

    @AfterEach
    void clock() {
        clock.putRight();
    }

    private void grow() {
        people.setZone(SUE, "UTC");
        job.round();
    }

    /** The words, but that the node is ready whatever they are. */
    private String health() {
        HealthCheckResponse answer = health.call();
        assertEquals("seal", answer.getName());
        assertEquals(HealthCheckResponse.Status.UP, answer.getStatus(), "acts go on");
        return String.valueOf(answer.getData().orElseThrow().get("state"));
    }

    private void told(boolean expected, String sentence, String inShort) {
        assertEquals(expected, browser.get("/seal").asString().contains(sentence), () -> "on the page: " + sentence);
        assertEquals(expected, health().contains(inShort), this::health);
        if (expected) {
            assertTrue(health().startsWith("degraded: "), this::health);
            String day = browser.get("/today").asString();
            assertTrue(day.contains("wrong with the seal of the record"), day);
            assertTrue(duty.of(TEA).isEmpty(), "it is no technician's matter");
        }
    }

    @Test
    void whatWaitsTooLong_isTold_untilItIsSealed() {
        people.setZone(SUE, "UTC");
        clock.putForward(Duration.ofMinutes(4));
        told(false, "Something has waited to be sealed", "something has waited");
        clock.putForward(Duration.ofMinutes(6));
        told(true, "Something has waited to be sealed for", "something has waited to be sealed for more than 5 min");
        job.round();
        told(false, "Something has waited to be sealed", "something has waited");
    }

    @Test
    void thatNothingIsSigned_isTold_untilAHeadIs() throws Exception {
        String note = Files.readString(signing.lastNote());
        Files.writeString(signing.lastNote(), "no note");
        try {
            grow();
            told(
                    true,
                    "Nothing is signed. The last note that was signed, beside the key, cannot be read",
                    "nothing is signed");
        } finally {
            Files.writeString(signing.lastNote(), note);
        }
        clock.putForward(Duration.ofSeconds(1));
        grow();
        told(false, "Nothing is signed.", "nothing is signed");
        clock.putForward(Duration.ofSeconds(1));
        String sentence = "Another server found it rewritten " + System.nanoTime() + ".";
        QuarkusTransaction.requiringNew().run(() -> incidents.found("not-signed", "log", sentence, clock.instant()));
        told(true, "and no head was signed since: " + sentence, "nothing is signed");
        clock.putForward(Duration.ofSeconds(1));
        grow();
        told(false, "and no head was signed since", "nothing is signed");
    }

    private List<String> quorum(String policy) {
        return QuarkusTransaction.requiringNew()
                .call(() -> troubles.quorum(WitnessPolicy.parse(policy), ZoneOffset.UTC));
    }

    @Test
    void tooFewWitnessesForADay_areTold_untilEnoughHaveSigned() throws Exception {
        String key = QuarkusTransaction.requiringNew()
                .call(() -> keys.known().good().iterator().next());
        String away = new SigningKey("witness.example/never", VerifierKey.WITNESS, Keys.TEST_3)
                .verifier()
                .toString();
        try (ServedWitness witness = new ServedWitness(folder, key, clock)) {
            String parties = "witness a " + witness.party().key() + "\nwitness b " + away + "\n";
            clock.putForward(Duration.ofHours(23));
            String one = parties + "group g 1 a b\nquorum g\n";
            long before = quorum(one).size();
            clock.putForward(Duration.ofHours(25));
            assertEquals(1, quorum(one).size(), "before: " + before);
            assertTrue(quorum(one).get(0).contains(", 0 of 2 have signed the head of "), quorum(one)::toString);
            assertEquals(List.of(), quorum(parties + "quorum none\n"), "nobody is asked");
            grow();
            witnessing.ask(List.of(witness.party()));
            assertEquals(List.of(), quorum(one), "a later head vouches for the earlier ones");
            String both = quorum(parties + "group g all a b\nquorum g\n").toString();
            assertTrue(both.contains("Too few witnesses for more than 24 h: ") && both.contains(", 1 of 2 have"), both);
            assertFalse(health().contains("too few witnesses"), "the settings of this test ask none");
        }
    }
}
