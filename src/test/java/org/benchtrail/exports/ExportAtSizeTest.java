package org.benchtrail.exports;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.knowledge.ClosedTickets;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Files of a month with many tickets, by the page and over the wire, read as they come: what the server holds meanwhile does not grow
 * with the file. Some thousand tickets in each build; by hand:
 *
 * <pre>mvn -o test -Dtest=ExportAtSizeTest -Dexports.tickets=100000</pre>
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class ExportAtSizeTest {
    private static final int TICKETS = Integer.getInteger("exports.tickets", 10_000);
    private static final int ENTRIES = 10;
    private static final int FIRST = 700_000_000;
    private static final String MONTH = "2071-03";
    private static final int LOOKS = 5;
    private static final long MOST_MORE = 18L << 20;
    private static final String PASSWORD = "a long enough password";
    private static final Actor SIGRID = new Actor("exports-sigrid", "Sigrid Lowe", Set.of(Role.SUPERVISOR));
    private static final Actor TESS = new Actor("exports-tess", "Tess Hollin", Set.of(Role.TECHNICIAN));
    private static final List<String> TABLES = List.of("trail_entry", "ticket");

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    private static boolean filled;

    @BeforeEach
    void fill() {
        if (filled) {
            return;
        }
        filled = true;
        people.ensureAccount(SIGRID.account(), SIGRID.name(), SIGRID.roles(), PASSWORD);
        // somebody has to have asked for help
        ClosedTickets.one(tickets, TESS);
        TABLES.forEach(table -> TestDatabase.run("alter table " + table + " disable trigger user"));
        TestDatabase.run(
                "insert into ticket (serial, title, category, device, place, requester, impact, urgency, priority, step, standing,"
                        + " round, assignee, opened, due, escalated, entries, touched, ended, words, last_hash)"
                        + " select " + FIRST
                        + " + i, 'Invented', 'HEAT', 'device', 'room', (select min(id) from requester), 'ONE_PERSON',"
                        + " 'CAN_WAIT', 'THIS_WEEK', 'DOCUMENT', 'CLOSED', 1, 'nobody', at, at, false, " + ENTRIES
                        + ", at, at, '', ''"
                        + " from (select i, timestamptz '2071-03-02' + i * interval '2000000 seconds' / " + TICKETS
                        + " as at from generate_series(1, " + TICKETS + ") i) t");
        TestDatabase.run("insert into trail_entry (ticket, entry, at, actor, kind, canonical, hash)"
                + " select t.serial, e.n, t.ended - (" + ENTRIES
                + " - e.n) * interval '1 minute', 'person' || t.serial % 40,"
                + " case e.n when 1 then 'opened' when " + ENTRIES
                + " then 'closed' when 4 then 'advanced' else 'reading-recorded' end,"
                + " convert_to('{\"roles\":[\"TECHNICIAN\"],\"payload\":\"' || repeat('x', 350) || '\"}', 'UTF8'),"
                + " md5(t.serial || ' ' || e.n) || md5(e.n || ' ' || t.serial)"
                + " from ticket t, generate_series(1, " + ENTRIES + ") e(n) where t.serial > " + FIRST);
        TestDatabase.run("analyze ticket");
        TestDatabase.run("analyze trail_entry");
    }

    @AfterAll
    static void empty() {
        TestDatabase.run("delete from trail_entry where ticket > " + FIRST);
        TestDatabase.run("delete from ticket where serial > " + FIRST);
        TABLES.forEach(table -> TestDatabase.run("alter table " + table + " enable trigger user"));
    }

    /** What is held once all that is held no more is gone. */
    private static long held() {
        System.gc();
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }

    @ParameterizedTest
    @ValueSource(strings = {"xes", "csv", "jsonl"})
    void aFile_isReadAsItComes_andTheServerHoldsNoMoreOfALongOne(String form) throws Exception {
        Browser browser = Browser.signedIn(SIGRID.account(), PASSWORD);
        Path file = Path.of("target", "export-" + form);
        // what the first file of a kind loads stays, however short it is
        assertEquals(200, browser.get("/exports/2071-02." + form).statusCode());
        long before = held();
        long start = System.nanoTime();
        HttpResponse<InputStream> answer = HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(URI.create(
                                        "http://localhost:" + RestAssured.port + "/exports/" + MONTH + "." + form))
                                .header(
                                        "Cookie",
                                        browser.cookies().entrySet().stream()
                                                .map(c -> c.getKey() + "=" + c.getValue())
                                                .collect(Collectors.joining("; ")))
                                .build(),
                        HttpResponse.BodyHandlers.ofInputStream());
        assertEquals(200, answer.statusCode());
        long bytes = 0;
        List<Long> held = new ArrayList<>();
        long mostUsed = 0;
        long perTicket = Map.of("xes", 5000L, "csv", 900L, "jsonl", 2000L).get(form);
        byte[] part = new byte[1 << 16];
        try (InputStream in = answer.body();
                OutputStream out = Files.newOutputStream(file)) {
            for (int read = in.read(part); read >= 0; read = in.read(part)) {
                bytes += read;
                out.write(part, 0, read);
                mostUsed = Math.max(
                        mostUsed,
                        Runtime.getRuntime().totalMemory()
                                - Runtime.getRuntime().freeMemory());
                if (bytes > (held.size() + 1) * perTicket * TICKETS / (LOOKS + 1) && held.size() < LOOKS) {
                    held.add(held());
                }
            }
        }
        double seconds = (System.nanoTime() - start) / 1e9;
        assertFalse(held.isEmpty(), "it was looked at on the way");
        // what happens to be on its way at one look says nothing
        long usuallyHeld = held.stream().sorted().toList().get(held.size() / 2);
        System.out.printf(
                Locale.ROOT,
                "%s of %d tickets, %d entries: %d bytes in %.1f s; held before %.1f MB, %.1f MB on the way; heap in use at most %.1f MB%n",
                form,
                TICKETS,
                TICKETS * ENTRIES,
                bytes,
                seconds,
                before / 1048576.0,
                usuallyHeld / 1048576.0,
                mostUsed / 1048576.0);
        assertTrue(usuallyHeld - before < MOST_MORE, (usuallyHeld - before) + " bytes more are held on the way");
        assertEquals(TICKETS, tickets(form, file));
        if (form.equals("xes")) {
            try (InputStream xes = Files.newInputStream(file)) {
                EventFormatTest.validateAsPublished(xes);
            }
        }
        Files.delete(file);
    }

    /** Once each, with all their entries. */
    private static long tickets(String form, Path file) throws IOException {
        String closing = Map.of("xes", "value=\"closed\"", "csv", ",closed,", "jsonl", "\"closed\"")
                .get(form);
        try (Stream<String> lines = Files.lines(file)) {
            return lines.filter(line -> line.contains(closing)).count();
        }
    }
}
