package org.benchtrail.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.file.Files;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.VerificationRows.Finding;
import org.benchtrail.seal.VerificationRows.Run;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;

/** Looks that begin by themselves, what they hold the log against outside the database, and which head proves what they find. */
@Order(2) // a look reads the whole log, and it is short yet
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class SiteLooksTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor SUE = new Actor("looks-sue", "Sue", Set.of(Role.SUPERVISOR));
    private static final Duration WEEK = Duration.ofDays(7);

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    SealJob job;

    @Inject
    SiteLooks looks;

    @Inject
    SiteVerification verification;

    @Inject
    KeptHeadsLook kept;

    @Inject
    Signing signing;

    @Inject
    VerificationRows runs;

    @Inject
    MovedClock clock;

    @BeforeEach
    void grown() {
        people.ensureAccount(SUE.account(), SUE.name(), SUE.roles(), PASSWORD);
        job.round();
        assertEquals("", job.stopped());
        look();
    }

    @AfterEach
    void clock() {
        clock.putRight();
        // what was looked at in days to come would be the newest for all other tests
        TestDatabase.run("update verification_run set started = now(), seen = now(), interrupted = false");
    }

    private void look() {
        assertTrue(verification.begin(SUE));
        verification.work(SUE);
    }

    private Run newest() {
        return QuarkusTransaction.requiringNew().call(() -> runs.newest().orElseThrow());
    }

    @Test
    void onceAWeek_theSiteIsLookedAtByItself() {
        long before = newest().id();
        clock.putForward(Duration.ofDays(6));
        assertFalse(looks.lookIfDue(WEEK), "it is not time");
        clock.putForward(Duration.ofDays(8));
        assertFalse(looks.lookIfDue(Duration.ZERO), "the settings ask for none");
        assertTrue(looks.lookIfDue(WEEK));
        Run own = newest();
        assertTrue(own.id() > before);
        assertEquals("server", own.by());
        assertFalse(own.stopped(), "it came to its end");
        assertEquals(own.size(), own.done());
        assertNull(own.again());
        assertFalse(looks.lookIfDue(WEEK), "one is enough");
    }

    @Test
    void ofSeveralServers_oneBegins() throws Exception {
        clock.putForward(Duration.ofDays(8));
        try (var other = TestDatabase.owner();
                var statement = other.createStatement()) {
            statement.execute("select pg_advisory_lock(7203)");
            assertFalse(looks.lookIfDue(WEEK), "another server is at it");
        }
        assertTrue(verification.begin(SUE));
        assertFalse(looks.lookIfDue(WEEK), "one goes on");
        verification.work(SUE);
    }

    @Test
    void aLookThatDiedWithItsServer_isBegunAnew_andSaysSo() {
        assertTrue(verification.begin(SUE));
        long died = newest().id();
        clock.putForward(Duration.ofMinutes(1));
        assertFalse(looks.lookIfDue(Duration.ZERO), "it may be going on");
        clock.putForward(Duration.ofMinutes(3));
        assertTrue(looks.lookIfDue(Duration.ZERO));
        Run anew = newest();
        assertEquals(died, anew.again());
        String page = Browser.signedIn(SUE.account(), PASSWORD).get("/seal").asString();
        assertTrue(page.contains("by server; anew, since the one before was interrupted; "), page);
        assertFalse(looks.lookIfDue(Duration.ZERO), "it came to its end");
    }

    @Test
    void aLookOfAServerThatIsStopped_isLeft_andBegunAnewAtOnce() {
        assertTrue(verification.begin(SUE));
        long left = newest().id();
        verification.interrupt(new ShutdownEvent());
        verification.work(SUE);
        Run interrupted = newest();
        assertTrue(interrupted.stopped() && interrupted.interrupted());
        String page = Browser.signedIn(SUE.account(), PASSWORD).get("/seal").asString();
        assertTrue(page.contains(" leaves were looked at; it was interrupted, and is begun anew by itself."), page);
        verification.interrupt(new ShutdownEvent());
        assertTrue(looks.lookIfDue(Duration.ZERO));
        assertEquals(left, newest().again());
        verification.interrupt(new ShutdownEvent());
        assertFalse(newest().interrupted(), "what came to its end was not interrupted");
    }

    /** A look that ends its server each time ends it no more than once an hour. */
    @Test
    void aLookThatDiesAgain_waits() {
        assertTrue(verification.begin(SUE));
        clock.putForward(Duration.ofMinutes(3));
        assertTrue(verification.begin(SUE), "by a person, anew");
        assertTrue(newest().again() != null);
        clock.putForward(Duration.ofMinutes(6));
        assertFalse(looks.lookIfDue(Duration.ZERO));
        clock.putForward(Duration.ofMinutes(70));
        assertTrue(looks.lookIfDue(Duration.ZERO));
    }

    @Test
    void aLookThatSomebodyStopped_isNotBegunAnew() {
        assertTrue(verification.begin(SUE));
        verification.stop();
        verification.work(SUE);
        assertTrue(newest().stopped());
        clock.putForward(Duration.ofMinutes(3));
        assertFalse(looks.lookIfDue(WEEK));
    }

    private List<String> kept() {
        return kept.look(List.of()).stream().map(Finding::sentence).toList();
    }

    @Test
    void theNoteBesideTheKey_isHeldAgainstTheLog() throws Exception {
        byte[] note = Files.readAllBytes(signing.lastNote());
        Checkpoint head = Checkpoint.parse(SignedNote.parse(note).text());
        assertEquals(List.of(), kept());
        try {
            String larger = new SignedNote(
                            new Checkpoint(head.origin(), head.size() + 7, head.root()).text(),
                            SignedNote.parse(note).lines())
                    .toString();
            Files.writeString(signing.lastNote(), larger);
            assertTrue(
                    kept().get(0).startsWith("By the note beside the key there are " + (head.size() + 7) + " leaves"));
            assertTrue(
                    SealRounds.look("kept head").get(0).startsWith("kept head: the note beside the key: By the note"),
                    "a look asks this too");
            String other = new SignedNote(
                            new Checkpoint(head.origin(), head.size() - 1, head.root()).text(),
                            SignedNote.parse(note).lines())
                    .toString();
            Files.writeString(signing.lastNote(), other);
            assertTrue(kept().get(0).endsWith("are not those of the note beside the key: the log was rewritten."));
            Files.writeString(signing.lastNote(), "no note");
            assertEquals(List.of("It cannot be read."), kept());
            Files.delete(signing.lastNote());
            assertEquals(List.of("It is gone, although the log has heads."), kept());
        } finally {
            Files.write(signing.lastNote(), note);
        }
    }

    private TicketNumber ticket() {
        NewTicket report = new NewTicket(
                "A hinge that squeaks",
                "",
                Category.OTHER,
                "Laptop",
                "Desk 5",
                "Rae",
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                true);
        return tickets.open(report, SUE).number();
    }

    @Test
    void whatIsFound_namesTheFirstHeadThatProvesIt() {
        TicketNumber number = ticket();
        job.round();
        ticket();
        job.round();
        String leaf = TestDatabase.one("select index from seal_leaf where stream = 'ticket/" + number + "'");
        String head = TestDatabase.one("select min(size) from checkpoint where size > " + leaf);
        String changed =
                "update trail_entry set canonical = set_byte(canonical, 20, get_byte(canonical, 20) # 1) where ticket = "
                        + number.serial();
        TestDatabase.run("alter table trail_entry disable trigger user");
        TestDatabase.run(changed);
        try {
            look();
            List<Finding> found = QuarkusTransaction.requiringNew().call(() -> runs.findings(newest().id())).stream()
                    .filter(f -> f.place().equals("ticket/" + number + " 1")
                            || f.place().equals(number.toString()))
                    .toList();
            assertEquals(
                    List.of("record", "ticket"),
                    found.stream().map(Finding::what).toList());
            for (Finding one : found) {
                assertEquals(Long.valueOf(head), one.head(), one.what());
                assertEquals(Long.valueOf(leaf), one.leaf(), one.what());
            }
            String page = Browser.signedIn(SUE.account(), PASSWORD).get("/seal").asString();
            assertTrue(page.contains("The first head that proves it is that of " + head + " leaves."), page);
        } finally {
            TestDatabase.run(changed);
            TestDatabase.run("alter table trail_entry enable trigger user");
        }
    }
}
