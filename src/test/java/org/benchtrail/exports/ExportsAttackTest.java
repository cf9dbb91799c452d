package org.benchtrail.exports;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.io.IOException;
import java.io.StringReader;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.Leaf;
import org.benchtrail.core.integrity.MerkleProofs;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.knowledge.ClosedTickets;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.SealRounds;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.TrailStore;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** The event log of a month: who may have it, that it holds the trail and nothing that somebody typed. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class ExportsAttackTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor TESS = new Actor("exports-tess", "Tess Hollin", Set.of(Role.TECHNICIAN));
    private static final Actor SALLY = new Actor("exports-sally", "Sally Orme", Set.of(Role.SUPERVISOR));
    private static final String MONTH = YearMonth.now(ZoneOffset.UTC).toString();

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    TrailStore trails;

    private Browser sally = new Browser();

    @BeforeEach
    void persons() {
        for (Actor person : List.of(TESS, SALLY)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        sally = Browser.signedIn(SALLY.account(), PASSWORD);
    }

    private String read(String path) {
        Response answer = sally.get(path);
        assertEquals(200, answer.statusCode(), path);
        return answer.asString();
    }

    @Transactional
    List<TrailEntry> trail(TicketNumber number) {
        return trails.read(number).entries();
    }

    @Test
    void whoWorksOnTickets_getsNoFile() {
        Browser tess = Browser.signedIn(TESS.account(), PASSWORD);
        for (String door : List.of(
                "/exports",
                "/exports/" + MONTH + ".xes",
                "/exports/" + MONTH + ".csv",
                "/exports/" + MONTH + ".jsonl",
                "/exports/benchtrail.xesext")) {
            assertEquals(403, tess.get(door).statusCode(), door);
            read(door);
        }
        assertEquals(404, sally.get("/exports/2026-13.xes").statusCode());
    }

    /** Whoever takes a file stands in the list, by name and with its kind; whoever is refused took none. */
    @Test
    void whatWasGivenToWhom_isSaid() {
        ClosedTickets.one(tickets, TESS);
        assertEquals(
                403,
                Browser.signedIn(TESS.account(), PASSWORD)
                        .get("/exports/" + MONTH + ".csv")
                        .statusCode());
        long before = given("JSON Lines");
        read("/exports/" + MONTH + ".jsonl");
        assertEquals(before + 1, given("JSON Lines"));
        String page = read("/exports");
        assertTrue(page.contains(SALLY.name()), page);
        assertFalse(page.contains(TESS.name()), page);
    }

    private long given(String format) {
        String given = read("/exports");
        return Pattern.compile("<td>" + format + "</td>")
                .matcher(given.substring(given.indexOf("Given so far")))
                .results()
                .count();
    }

    /** Ended twice in the month: there once, with all that its trail has. */
    @Test
    void eachTicketIsThereOnce_withItsWholeTrail() {
        TicketNumber number = ClosedTickets.one(tickets, TESS);
        int version = trail(number).size();
        assertEquals(
                List.of(),
                tickets.perform(number, version, List.<Act>of(s -> new Reopened("Secretword came back")), SALLY)
                        .missing());
        assertEquals(
                List.of(),
                tickets.perform(number, version + 1, List.<Act>of(s -> new Cancelled("It was sold", null)), SALLY)
                        .missing());
        SealRounds.once();
        List<TrailEntry> trail = trail(number);
        List<List<String>> records = Records4180.read(read("/exports/" + MONTH + ".csv")).stream()
                .filter(r -> r.get(0).equals(number.toString()))
                .toList();
        assertEquals(
                trail.stream().map(TrailEntry::kind).toList(),
                records.stream().map(r -> r.get(5)).toList());
        assertEquals(
                trail.stream().map(e -> e.at().toString()).toList(),
                records.stream().map(r -> r.get(4)).toList());
        assertEquals("document", records.get(version).get(7), "it was reopened from there");
        String lines = read("/exports/" + MONTH + ".jsonl");
        assertTrue(lines.lines()
                .anyMatch(l -> l.contains("\"hash\":\"" + trail.get(0).hash() + "\"") && !l.contains("\"leaf\":null")));
    }

    /** The event log of a real ticket, read by the JDK's own parser of XML, says what its trail says. */
    @Test
    void xes_saysWhatTheTrailOfATicketSays() throws Exception {
        TicketNumber number = ClosedTickets.one(tickets, TESS);
        List<TrailEntry> trail = trail(number);
        NodeList traces = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(read("/exports/" + MONTH + ".xes"))))
                .getElementsByTagName("trace");
        List<Element> own = IntStream.range(0, traces.getLength())
                .mapToObj(i -> (Element) traces.item(i))
                .filter(trace -> of(trace, "concept:name").equals(number.toString()))
                .toList();
        assertEquals(1, own.size());
        NodeList events = own.get(0).getElementsByTagName("event");
        List<String> told = IntStream.range(0, events.getLength())
                .mapToObj(i -> (Element) events.item(i))
                .map(event -> of(event, "concept:name") + " "
                        + OffsetDateTime.parse(of(event, "time:timestamp")).toInstant())
                .toList();
        assertEquals(trail.stream().map(e -> e.kind() + " " + e.at()).toList(), told);
    }

    /** The value of an attribute that the element has itself. */
    private static String of(Element element, String key) {
        for (Node child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Element attribute
                    && attribute.getAttribute("key").equals(key)) {
                return attribute.getAttribute("value");
            }
        }
        return "";
    }

    /** Each line by itself against the head of the first line, by nothing that stands elsewhere; and what is turned is refused. */
    @Test
    void jsonLines_proveEachEntry_againstTheHeadInTheFile() throws IOException {
        TicketNumber number = ClosedTickets.one(tickets, TESS);
        SealRounds.once();
        ObjectMapper json = new ObjectMapper();
        List<String> lines = read("/exports/" + MONTH + ".jsonl").lines().toList();
        Checkpoint head = Checkpoint.parse(
                SignedNote.parse(json.readTree(lines.get(0)).get("head").asText())
                        .text());
        int proven = 0;
        int ours = 0;
        for (String line : lines.subList(1, lines.size())) {
            JsonNode event = json.readTree(line);
            if (event.get("leaf").isNull()) {
                assertEquals(0, event.get("proof").size());
                continue;
            }
            List<Hash> path = new ArrayList<>();
            event.get("proof").forEach(h -> path.add(Hash.ofBase64(h.asText())));
            Leaf leaf = new Leaf(
                    "ticket/" + event.get("ticket").asText(),
                    event.get("entry").asInt(),
                    Hash.ofHex(event.get("hash").asText()));
            long index = event.get("leaf").asLong();
            assertTrue(MerkleProofs.includes(index, head.size(), leaf.leafHash(), path, head.root()), line);
            Leaf other = new Leaf(leaf.stream(), leaf.place() + 1, leaf.hash());
            assertFalse(MerkleProofs.includes(index, head.size(), other.leafHash(), path, head.root()), line);
            proven++;
            ours += event.get("ticket").asText().equals(number.toString()) ? 1 : 0;
        }
        assertEquals(trail(number).size(), ours, "every entry of a ticket that is sealed is proven");
        assertTrue(proven > 0);
    }

    /** Within a factor of two of what comes, for each form. */
    @Test
    void howLargeAFileIs_isSaidBeforeItIsTaken() {
        ClosedTickets.one(tickets, TESS);
        SealRounds.once();
        String page = read("/exports");
        for (String ending : List.of("xes", "csv", "jsonl")) {
            Matcher said = Pattern.compile(
                            "/exports/" + MONTH + "\\." + ending
                                    + "\".*?</a> <span class=\"num\">([0-9.]+)\u00a0(kB|MB)</span>",
                            Pattern.DOTALL)
                    .matcher(page);
            assertTrue(said.find(), page);
            double about = Double.parseDouble(said.group(1)) * (said.group(2).equals("kB") ? 1e3 : 1e6);
            double comes = read("/exports/" + MONTH + "." + ending).length();
            assertTrue(about > comes / 2 && about < comes * 2, ending + ": said " + about + ", comes " + comes);
        }
    }

    @Test
    void nothingThatWasTyped_andNobodysName_isInAFile() {
        ClosedTickets.one(tickets, TESS);
        for (String ending : List.of("xes", "csv", "jsonl")) {
            String file = read("/exports/" + MONTH + "." + ending);
            for (String word :
                    List.of(TESS.account(), TESS.name(), "Oddlamp", "Workstation", "Secretword", "Cleaned")) {
                assertFalse(file.contains(word), word + " in " + ending);
            }
            assertTrue(file.contains("person-1"));
        }
    }
}
