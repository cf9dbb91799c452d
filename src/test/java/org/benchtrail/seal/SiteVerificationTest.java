package org.benchtrail.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.Stale;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.VerificationRows.Finding;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.TicketQueries;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;

/** Alterations by whoever owns the database, each named by the look at the whole site; and the page that shows it. */
@Order(2) // a look reads the whole log, and it is short yet; LeafRestoreTest looks over what all have written
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class SiteVerificationTest {
    private static final String PASSWORD = "a long enough password";
    private static final int LOOKS = Integer.getInteger("seal.looks", 3);
    private static final Actor SUE = new Actor("seal-sue", "Sue", Set.of(Role.SUPERVISOR));

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    TicketQueries sheets;

    @Inject
    SealJob job;

    @Inject
    SiteVerification verification;

    @Inject
    VerificationRows runs;

    @BeforeEach
    void person() {
        people.ensureAccount(SUE.account(), SUE.name(), SUE.roles(), PASSWORD);
        job.round();
        assertEquals("", job.stopped());
    }

    private TicketNumber ticket(String requester) {
        NewTicket report = new NewTicket(
                "A fan that rattles",
                "It rattles",
                Category.HEAT,
                "Laptop",
                "Desk 4",
                requester,
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                true);
        return tickets.open(report, SUE).number();
    }

    private List<Finding> look() {
        assertTrue(verification.begin(SUE), "no other look goes on");
        assertFalse(verification.begin(SUE), "one at a time");
        verification.work(SUE);
        return QuarkusTransaction.requiringNew().call(() -> {
            VerificationRows.Run run = runs.newest().orElseThrow();
            assertFalse(run.stopped());
            assertEquals(run.size(), run.done());
            return runs.findings(run.id());
        });
    }

    /** A number that no ticket can have is named like any other, and ends no look. */
    @Test
    void aCounterBeyondEveryNumber_isNamed_andTheLookGoesOn() {
        ticket("Rae");
        job.round();
        TestDatabase.run("update ticket_counter set last = last + 1073741824");
        try {
            List<Finding> found = look();
            assertEquals(
                    List.of(),
                    found.stream().filter(f -> f.what().equals("stream")).toList(),
                    "every stream that there is is known");
            assertTrue(found.stream().anyMatch(f -> f.place().startsWith("ticket_counter")), () -> "found " + found);
            assertTrue(
                    found.stream().anyMatch(f -> f.sentence().matches(".* up to 107\\d{7}\\.")),
                    () -> "found " + found);
        } finally {
            TestDatabase.run("update ticket_counter set last = last - 1073741824");
        }
    }

    /** One alteration, what takes it back, and where the look names it. */
    private record Alteration(String table, String change, String back, String what, String place) {}

    private List<Alteration> alterations() {
        int bytes = ticket("Rae").serial();
        int chain = ticket("Rae").serial();
        int removed = ticket("Rae").serial();
        ticket("Rae the second");
        job.round();
        List<Alteration> all = new ArrayList<>();
        String entry = "trail_entry where ticket = " + bytes;
        String content = TestDatabase.one("select encode(canonical, 'hex') from " + entry);
        all.add(new Alteration(
                "trail_entry",
                "update trail_entry set canonical = set_byte(canonical, 20, 88) where ticket = " + bytes,
                "update trail_entry set canonical = decode('" + content + "', 'hex') where ticket = " + bytes,
                "record",
                "ticket/" + new TicketNumber(bytes) + " 1"));
        String before = TestDatabase.one("select encode(canonical, 'hex') from trail_entry where ticket = " + chain);
        String hash = TestDatabase.one("select hash from trail_entry where ticket = " + chain);
        all.add(new Alteration(
                "trail_entry",
                "update trail_entry set canonical = c.now, hash = encode(sha256('\\x00'::bytea || c.now), 'hex') from (select"
                        + " convert_to(replace(convert_from(canonical, 'UTF8'), 'CAN_WAIT', 'STOPPED'), 'UTF8') as now from"
                        + " trail_entry where ticket = " + chain + ") c where ticket = " + chain,
                "update trail_entry set canonical = decode('" + before + "', 'hex'), hash = '" + hash
                        + "' where ticket = " + chain,
                "record",
                "ticket/" + new TicketNumber(chain) + " 1"));
        String rowOf = TestDatabase.one("select to_jsonb(t)::text from trail_entry t where ticket = " + removed);
        all.add(new Alteration(
                "trail_entry",
                "delete from trail_entry where ticket = " + removed,
                "insert into trail_entry select * from jsonb_populate_record(null::trail_entry, $x$" + rowOf + "$x$)",
                "record",
                "ticket/" + new TicketNumber(removed) + " 1"));
        all.add(update("account", "roles", "array['SUPERVISOR', 'ADMINISTRATOR']", "login = 'seal-sue'", "id"));
        all.add(update("account", "password_hash", "'x'", "login = 'seal-sue'", "id"));
        all.add(update("account_record", "detail", "'roles none'", "about = 'seal-sue' and what = 'created'", "id"));
        all.add(update("requester", "name", "'Somebody else'", "name = 'Rae'", "id"));
        all.add(update("catalogue_version", "practice", "practice || ' '", "number = 1", "number"));
        return all;
    }

    private static Alteration update(String table, String column, String value, String where, String key) {
        String row =
                TestDatabase.one("select " + key + "::text from " + table + " where " + where + " order by 1 limit 1");
        String type = TestDatabase.one("select data_type from information_schema.columns where table_name = '" + table
                + "' and column_name = '" + column + "'");
        String before = TestDatabase.one("select " + column + "::text from " + table + " where " + key + " = " + row);
        String cast = type.equals("ARRAY") ? "::varchar[]" : "";
        return new Alteration(
                table,
                "update " + table + " set " + column + " = " + value + " where " + key + " = " + row,
                "update " + table + " set " + column + " = $x$" + before + "$x$" + cast + " where " + key + " = " + row,
                "row",
                table + " " + row);
    }

    @Test
    void everyAlteration_isNamedWithItsPlace() {
        List<Alteration> all = alterations();
        List<Alteration> done = new ArrayList<>();
        TestDatabase.run("insert into requester (name, contact) values ('Gone', '-')");
        String gone = TestDatabase.one("select max(id)::text from requester");
        int missing = ticket("Rae").serial();
        int unqueued = ticket("Rae").serial();
        TestDatabase.run("delete from seal_queue where stream = ?", "ticket/" + new TicketNumber(unqueued));
        job.round();
        String leaf =
                TestDatabase.one("select index::text from seal_leaf where stream = 'keys' order by index limit 1");
        String place = TestDatabase.one("select place::text from seal_leaf where index = " + leaf);
        List<Finding> found;
        try {
            for (Alteration one : all) {
                TestDatabase.unguarded(one.table(), one.change());
                done.add(one);
            }
            TestDatabase.run("delete from requester where id = " + gone);
            TestDatabase.unguarded("trail_entry", "delete from trail_entry where ticket = " + missing);
            TestDatabase.run("delete from ticket_wait where ticket = " + missing);
            TestDatabase.run("delete from ticket where serial = " + missing);
            TestDatabase.unguarded("seal_leaf", "update seal_leaf set place = place + 1000 where index = " + leaf);
            TestDatabase.run("alter table site_limit disable trigger site_limit_is_sealed");
            found = look();
        } finally {
            TestDatabase.run("alter table site_limit enable trigger site_limit_is_sealed");
            TestDatabase.unguarded("seal_leaf", "update seal_leaf set place = " + place + " where index = " + leaf);
            done.forEach(one -> TestDatabase.unguarded(one.table(), one.back()));
        }
        for (Alteration one : all) {
            assertNamed(found, one.what(), one.place());
        }
        assertNamed(found, "row", "requester " + gone);
        assertNamed(found, "number", new TicketNumber(missing).toString());
        assertNamed(found, "record", "ticket/" + new TicketNumber(missing) + " 1");
        assertNamed(found, "leaf", "leaf " + leaf);
        assertNamed(found, "guard", "trigger public.site_limit site_limit_is_sealed");
        assertNamed(found, "not sealed", "ticket/" + new TicketNumber(unqueued));
        assertTrue(found.stream().anyMatch(f -> f.what().equals("root")), "a head is not that of the leaves");
        List<Finding> after = look();
        for (Alteration one : all) {
            assertFalse(named(after, one.what(), one.place()), one::toString);
        }
        assertFalse(
                after.stream()
                        .anyMatch(f ->
                                Set.of("guard", "leaf", "root", "signature").contains(f.what())),
                after::toString);
    }

    @Test
    void command_findsTheSame_andEndsWithIt() {
        TicketNumber number = ticket("Rae");
        job.round();
        String set = "update trail_entry set kind = '%s' where entry = 1 and ticket = " + number.serial();
        TestDatabase.unguarded("trail_entry", set.formatted("vanished"));
        try {
            assertEquals(1, command());
            assertTrue(said.contains("ticket: " + number + ": Entry 1 does not hold"), said);
            assertTrue(said.contains(" leaves, every record and every ticket: it does not hold at "), said);
        } finally {
            TestDatabase.unguarded("trail_entry", set.formatted("opened"));
        }
        command();
        assertFalse(said.contains(number.toString()), said);
        assertTrue(verification.begin(SUE));
        try {
            assertEquals(2, command());
            assertTrue(said.contains("goes on already"), said);
        } finally {
            verification.work(SUE);
        }
    }

    private String said = "";

    private int command() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PrintStream stream = new PrintStream(out, true, StandardCharsets.UTF_8);
        int exit = new VerifySiteCommand(verification).run(stream, stream);
        said = out.toString(StandardCharsets.UTF_8);
        return exit;
    }

    private static void assertNamed(List<Finding> found, String what, String place) {
        assertTrue(named(found, what, place), () -> what + ", " + place + " in " + found);
    }

    private static boolean named(List<Finding> found, String what, String place) {
        return found.stream().anyMatch(f -> f.what().equals(what) && f.place().equals(place));
    }

    @Test
    void thePage_saysWhoVouches_andALookCanBeBegun() {
        Browser sue = Browser.signedIn(SUE.account(), PASSWORD);
        String page = sue.get("/seal").asString();
        assertTrue(page.contains("Nobody else has seen this head.") || page.contains("Seen and signed by"), page);
        assertTrue(page.contains("site-") && page.contains("benchtrail.invalid/log"), page);
        assertFalse(page.contains("data-hx-trigger") || page.contains("http-equiv=\"refresh\""), "nothing goes on");
        assertTrue(verification.begin(SUE));
        page = sue.get("/seal").asString();
        assertTrue(page.contains("id=\"look\" data-hx-get=\"/seal\" data-hx-trigger=\"every 3s\""), page);
        assertTrue(page.contains("<noscript><meta http-equiv=\"refresh\" content=\"5\"></noscript>"), page);
        assertTrue(page.contains("Stop the look"), page);
        verification.work(SUE);
        assertFalse(sue.get("/seal").asString().contains("data-hx-trigger"), "it came to its end");
        assertEquals(303, sue.post("/seal/looks", Map.of()).statusCode());
        for (int i = 0; i < 3000 && sue.get("/seal").asString().contains("Going on"); i++) {
            Thread.onSpinWait();
        }
        assertTrue(sue.get("/seal").asString().contains("Ended"), "the look came to its end");
        assertEquals(303, sue.post("/seal/looks/end", Map.of()).statusCode());
    }

    @Test
    void earlierHeads_areFoundByTheirLeaves() {
        ticket("Rae");
        job.round();
        long earlier = Long.parseLong(TestDatabase.one("select max(size) from checkpoint"));
        ticket("Rae");
        job.round();
        long newest = Long.parseLong(TestDatabase.one("select max(size) from checkpoint"));
        Browser sue = Browser.signedIn(SUE.account(), PASSWORD);
        assertTrue(sue.get("/seal/heads").asString().contains(">" + newest + "</th>"));
        for (long from : new long[] {earlier, newest - 1}) {
            String page = sue.get("/seal/heads?from=" + from).asString();
            assertTrue(page.contains(">" + earlier + "</th>") && !page.contains(">" + newest + "</th>"), page);
        }
        assertTrue(sue.get("/seal/heads?from=0").asString().contains("There is no head of so many leaves or fewer."));
        assertTrue(sue.get("/seal/heads?from=all").asString().contains(">" + newest + "</th>"));
    }

    /** Several at once: tickets opened before the look and worked on while it goes on, names changed, tokens made. */
    @Test
    void severalPeopleAtWork_duringALook_raiseNoAlarm() throws Exception {
        List<TicketNumber> open = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            open.add(ticket("Rae"));
        }
        job.round();
        Set<Finding> before = Set.copyOf(look());
        AtomicBoolean going = new AtomicBoolean(true);
        AtomicInteger done = new AtomicInteger();
        List<Thread> clients = new ArrayList<>();
        for (int client = 0; client < 3; client++) {
            Actor by = new Actor("seal-tech" + client, "Tech " + client, Set.of(Role.TECHNICIAN));
            people.ensureAccount(by.account(), by.name(), by.roles(), PASSWORD);
            clients.add(new Thread(() -> {
                for (int i = 0; going.get(); i++) {
                    works(open.get(i % open.size()), by, i);
                    done.incrementAndGet();
                }
            }));
        }
        Thread sealing = new Thread(() -> {
            while (going.get()) {
                job.round();
            }
        });
        clients.add(sealing);
        clients.forEach(Thread::start);
        try {
            for (int i = 0; i < LOOKS; i++) {
                int until = done.get();
                Set<Finding> found = new HashSet<>(look());
                found.removeAll(before);
                assertEquals(Set.of(), found, "nobody altered anything");
                assertTrue(done.get() > until, "somebody acted meanwhile");
            }
        } finally {
            going.set(false);
            for (Thread client : clients) {
                client.join();
            }
        }
        assertTrue(done.get() > 3 * LOOKS, done + " acts");
        job.round();
        assertEquals("", job.stopped());
    }

    private void works(TicketNumber ticket, Actor by, int turn) {
        people.setZone(by, turn % 2 == 0 ? "Europe/Lisbon" : "UTC");
        if (turn % 7 == 0) {
            people.createToken(by, "look " + turn, 1);
        }
        try {
            int version = sheets.ticket(ticket, by).sheet().entries();
            tickets.perform(ticket, version, List.<Act>of(s -> new FindingRecorded("Finding " + turn, false)), by);
        } catch (Stale somebodyWasQuicker) {
            // as among people
        }
    }

    /** Tickets are looked at without a lock: what is done meanwhile is no alteration. */
    @Test
    void actsDuringALook_raiseNoAlarm() throws Exception {
        ticket("Rae");
        job.round();
        List<Finding> before = look();
        AtomicBoolean going = new AtomicBoolean(true);
        AtomicInteger opened = new AtomicInteger();
        Thread acts = new Thread(() -> {
            while (going.get()) {
                ticket("Rae");
                opened.incrementAndGet();
                job.round();
            }
        });
        acts.start();
        try {
            for (int i = 0; i < 3; i++) {
                int until = opened.get();
                assertEquals(before, look());
                assertTrue(opened.get() > until, "somebody acted meanwhile");
            }
        } finally {
            going.set(false);
            acts.join();
        }
    }
}
