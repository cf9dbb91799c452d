package org.benchtrail.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Redecided;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.knowledge.ClosedTickets;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.offline.VerifyCommand;
import org.benchtrail.site.PolicyConfig;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.TrailStore;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the owner of the database writes past the gate, with every hash and row as it should be. */
@Order(2) // a look reads the whole log, and it is short yet
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class DecisionsLookTest {
    private static final Actor DEE = new Actor("decided-dee", "Dee", Set.of(Role.TECHNICIAN));

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    SealJob job;

    @Inject
    SettingsRecord settings;

    @Inject
    PolicyConfig config;

    @Inject
    TrailFiles files;

    @Inject
    TrailStore trails;

    @TempDir
    Path folder;

    @BeforeEach
    void person() {
        people.ensureAccount(DEE.account(), DEE.name(), DEE.roles(), "a long enough password");
    }

    private TicketNumber ticket() {
        return tickets.open(
                        new NewTicket(
                                "A fan that rattles",
                                "It rattles",
                                Category.HEAT,
                                "Laptop",
                                "Desk 4",
                                "Rae",
                                "room 4",
                                Priority.Impact.ONE_PERSON,
                                Priority.Urgency.CAN_WAIT,
                                true),
                        DEE)
                .number();
    }

    /** Adds what leaves the step, in the form of the last entry, and what belongs to it. */
    private static void writePastTheGate(TicketNumber ticket, String policy) {
        TestDatabase.run(
                "with last as (select e.*, convert_from(e.canonical, 'UTF8')::jsonb as j from trail_entry e where ticket = "
                        + ticket.serial()
                        + " order by entry desc limit 1), made as (select ticket, entry + 1 as entry, at, actor,"
                        + " convert_to(canonical_json(j || jsonb_build_object('entry', entry + 1, 'previous', hash, 'payload',"
                        + " jsonb_build_object('kind', 'advanced'), 'policy', " + policy
                        + ")), 'UTF8') as canonical, hash as previous from last), entry as ("
                        + "insert into trail_entry (ticket, entry, at, actor, kind, canonical, hash) select ticket, entry, at, actor, 'advanced',"
                        + " canonical, encode(sha256('\\x00'::bytea || canonical), 'hex') from made returning ticket, entry, hash)"
                        + " update ticket t set entries = e.entry, last_hash = e.hash, step = 'THEORIZE' from entry e where t.serial = e.ticket");
    }

    private static void takeBack(TicketNumber ticket, int entries) {
        TestDatabase.unguarded(
                "trail_entry", "delete from trail_entry where ticket = ? and entry > ?", ticket.serial(), entries);
        TestDatabase.run("delete from seal_queue where stream = ? and place > ?", "ticket/" + ticket, entries);
        TestDatabase.unguarded(
                "ticket",
                "update ticket set entries = ?, step = 'IDENTIFY', last_hash = (select hash from trail_entry where ticket = serial"
                        + " and entry = ?) where serial = ?",
                entries,
                entries,
                ticket.serial());
    }

    @Test
    void aMoveThatTheGateRefuses_isFound_andAnHonestTicketIsNot() throws Exception {
        job.round();
        TicketNumber honest = ClosedTickets.one(tickets, DEE);
        TicketNumber forged = ticket();
        job.round();
        int entries = Integer.parseInt(
                TestDatabase.one("select entries::text from ticket where serial = " + forged.serial()));
        writePastTheGate(forged, "j ->> 'policy'");
        try {
            List<String> found = SealRounds.look(honest.toString(), forged.toString());
            assertEquals(1, found.size(), found::toString);
            assertTrue(
                    found.get(0)
                            .startsWith("decision: ticket/" + forged + " " + (entries + 1)
                                    + ": By the rules and the policy of that day this could not be recorded: "),
                    found::toString);
        } finally {
            takeBack(forged, entries);
        }
        writePastTheGate(forged, "'0123456789abcdef'");
        try {
            List<String> found = SealRounds.look(forged.toString());
            assertEquals(
                    List.of("decision: ticket/" + forged + " " + (entries + 1)
                            + ": By the rules and the policy of that day this could not be recorded:"
                            + " It names a policy that this site never had."),
                    found);
        } finally {
            takeBack(forged, entries);
        }
    }

    /** The verifier has no database: it decides by what the file says of the policy, which its name proves. */
    @Test
    void theFileOfATrail_isReplayedAndDecidedAgain() throws Exception {
        TicketNumber honest = ClosedTickets.one(tickets, DEE);
        TicketNumber forged = ticket();
        int entries = Integer.parseInt(
                TestDatabase.one("select entries::text from ticket where serial = " + forged.serial()));
        String again = "Together the entries tell one ticket. Every move out of a step was decided again.";
        job.round();
        assertTrue(verified(honest, file -> file).contains(again));
        assertTrue(verified(honest, file -> file.replace("soakTime=PT48H", "soakTime=PT1H"))
                .contains("Does not hold."));
        assertTrue(verified(honest, file -> file.replaceFirst(",\"policies\":\\{[^}]*\\}", ""))
                .contains("Moves whose policy is not in this file were not decided again."));
        writePastTheGate(forged, "j ->> 'policy'");
        try {
            String said = verified(forged, file -> file);
            assertTrue(
                    said.contains("Entry " + (entries + 1) + " could not be recorded by the rules of this release: "),
                    said);
            assertTrue(said.startsWith("Holds as far as can be told."), said);
        } finally {
            takeBack(forged, entries);
        }
    }

    private String verified(TicketNumber ticket, UnaryOperator<String> altered) throws IOException {
        List<TrailEntry> trail =
                QuarkusTransaction.requiringNew().call(() -> trails.read(ticket).entries());
        String file = files.newest(ticket.toString(), trail).orElseThrow().text();
        Path written = Files.writeString(folder.resolve("trail.jsonl"), altered.apply(file));
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        VerifyCommand.run(List.of(written.toString()), new PrintStream(said, true, StandardCharsets.UTF_8));
        return said.toString(StandardCharsets.UTF_8);
    }

    /** What another release recorded as its rules ends the asking until these are recorded again. */
    @Test
    void rulesOfAnotherRelease_areNotHeldAgainstItsMoves() throws Exception {
        TicketNumber forged = ticket();
        int entries = Integer.parseInt(
                TestDatabase.one("select entries::text from ticket where serial = " + forged.serial()));
        writePastTheGate(forged, "j ->> 'policy'");
        TestDatabase.run("select append_site_record('policy', 'settings', '{\"rules\": \"0-other\"}')");
        try {
            assertEquals(List.of(), SealRounds.look("decision: ticket/" + forged));
        } finally {
            takeBack(forged, entries);
            settings.keep(config.policy(), "quorum none");
            settings.keep();
            job.round();
        }
        assertTrue(Redecided.rules().matches("1-[0-9a-f]{16}"), Redecided.rules());
    }
}
