package org.benchtrail.seal;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.integrity.Keys;
import org.benchtrail.core.integrity.SigningKey;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.witness.ServedWitness;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.SealedUpTo;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How far a ticket is sealed, and who has seen it: on its job sheet, and for programs. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class TicketSealsTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor TEA = new Actor("sealed-tea", "Tea", Set.of(Role.TECHNICIAN));
    private static final String ALONE = "Signed by the shop alone. Nobody else has seen this head.";

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    SealJob job;

    @Inject
    Signing signing;

    @Inject
    WitnessedHeads heads;

    @Inject
    Sealing sealing;

    @Inject
    Witnessing witnessing;

    @Inject
    WitnessRows kept;

    @Inject
    LogRows rows;

    @Inject
    LogKeys keys;

    @Inject
    SealConfig config;

    @Inject
    EntityManager database;

    @Inject
    MovedClock clock;

    @TempDir
    Path folder;

    private Browser browser;
    private String token = "";

    @BeforeEach
    void signedIn() {
        people.ensureAccount(TEA.account(), TEA.name(), TEA.roles(), PASSWORD);
        people.setZone(TEA, "Asia/Kolkata");
        token = people.createToken(TEA, "sealed", 1).secret();
        browser = Browser.signedIn(TEA.account(), PASSWORD);
        job.round();
        assertEquals("", job.stopped());
    }

    @AfterEach
    void clock() {
        clock.putRight();
    }

    private TicketNumber ticket() {
        NewTicket report = new NewTicket(
                "A lid that creaks",
                "",
                Category.OTHER,
                "Laptop",
                "Desk 9",
                "Rae",
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                true);
        return tickets.open(report, TEA).number();
    }

    private void finds(TicketNumber number, int version) {
        tickets.perform(number, version, List.of(sheet -> new FindingRecorded("It creaks", false)), TEA);
    }

    private void says(TicketNumber number, String sentence) {
        String page = browser.get("/tickets/" + number).asString();
        assertTrue(page.contains(" " + sentence + "</p>"), page);
    }

    private JsonPath told(TicketNumber number) {
        return given().header("Authorization", "Bearer " + token)
                .get("/api/tickets/" + number)
                .jsonPath();
    }

    private String key() {
        return QuarkusTransaction.requiringNew()
                .call(() -> keys.known().good().iterator().next());
    }

    @Test
    void theSheet_saysHowFarItIsSealed_andWhoHasSeenIt() throws Exception {
        TicketNumber number = ticket();
        says(number, "Not sealed yet: nobody would see a change in the database.");
        assertEquals(0, told(number).getInt("sealed"));
        job.round();
        says(number, "Sealed up to entry 1. " + ALONE);
        finds(number, 1);
        says(number, "Sealed up to entry 1. " + ALONE + " Entry 2 is not sealed yet.");
        finds(number, 2);
        says(number, "Sealed up to entry 1. " + ALONE + " Entries 2 to 3 are not sealed yet.");
        sealing.sealAll();
        says(number, "Sealed up to entry 1. " + ALONE + " Entries 2 to 3 are not sealed yet.");
        assertEquals(1, told(number).getInt("sealed"), "what is numbered is not signed");
        assertEquals(0, told(number).getInt("witnessed.by"));
        job.round();
        clock.putForward(Duration.ofMinutes(3));
        Instant seen = Instant.ofEpochSecond(clock.instant().getEpochSecond());
        try (ServedWitness witness = new ServedWitness(folder, key(), clock)) {
            witnessing.ask(List.of(witness.party()));
        }
        String when = Moments.text(seen, ZoneId.of("Asia/Kolkata"));
        says(number, "Sealed up to entry 3, witnessed 1 of 1 at " + when + ".");
        assertTrue(when.endsWith("IST"), when);
        finds(number, 3);
        says(number, "Sealed up to entry 3, witnessed 1 of 1 at " + when + ". Entry 4 is not sealed yet.");
        assertEquals(3, told(number).getInt("sealed"));
        assertEquals(1, told(number).getInt("witnessed.by"));
        assertEquals(1, told(number).getInt("witnessed.of"));
        assertTrue(Math.abs(Duration.between(seen, Instant.parse(told(number).getString("witnessed.at")))
                        .toSeconds())
                < 5);
    }

    /** A later head holds the earlier entries too; and a witness that is asked and has not signed is told. */
    @Test
    void ofTheWitnessesThatAreAsked_thoseAreCountedThatSignedAnyHeadThatHoldsIt() throws Exception {
        TicketNumber number = ticket();
        job.round();
        finds(number, 1);
        job.round();
        try (ServedWitness witness = new ServedWitness(folder, key(), clock)) {
            String other = new SigningKey("witness.example/away", VerifierKey.WITNESS, Keys.TEST_3)
                    .verifier()
                    .toString();
            Path policy = Files.writeString(
                    folder.resolve("asked"),
                    "witness a " + witness.party().key() + "\nwitness b " + other + "\ngroup g all a b\nquorum g\n");
            Witnessing asking =
                    new Witnessing(rows, kept, keys, signing, heads, new AskingConfig(config, policy), clock);
            TicketSeals seals = new TicketSeals(database, asking);
            assertEquals(
                    new SealedUpTo(2, 2, 0, null),
                    QuarkusTransaction.requiringNew().call(() -> seals.of(number)));
            ticket();
            job.round();
            witnessing.ask(List.of(witness.party()));
            SealedUpTo seen = QuarkusTransaction.requiringNew().call(() -> seals.of(number));
            assertEquals(List.of(2, 2, 1), List.of(seen.entry(), seen.asked(), seen.signed()));
            assertTrue(seen.sentence(2, ZoneOffset.UTC).startsWith("Sealed up to entry 2, witnessed 1 of 2 at "));
            assertTrue(seen.sentence(1, ZoneOffset.UTC).endsWith(" Only 1 are here."));
        }
    }
}
