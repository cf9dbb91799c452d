package org.benchtrail.exports;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.StringReader;
import java.lang.ref.WeakReference;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.SchemaFactory;
import org.benchtrail.core.figures.Whereabouts;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.NotFound;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/** Files of events: what no reader may trip over, and that they say what the trail says. */
class EventFormatTest {
    private static final EventFormat.About ABOUT = new EventFormat.About(
            "2026-11", "http://bench.example/exports/benchtrail.xesext?a=1&b=2", "a \"head\"\n\u2014 w");

    private static EventRows.EntryRow row(int entry, String kind, String actor, @Nullable String canonical) {
        return new EventRows.EntryRow(
                40718,
                "OTHER",
                "TODAY",
                2,
                entry,
                Instant.parse("2026-11-27T04:00:00.000123Z"),
                actor,
                kind,
                canonical == null ? new byte[] {-1} : canonical.getBytes(StandardCharsets.UTF_8),
                "ab".repeat(32),
                entry == 1 ? 7L : null);
    }

    private static final List<EventRows.EntryRow> TRAIL = List.of(
            row(1, "opened", "tess", "{\"roles\":[\"TECHNICIAN\",\"MENTOR\"],\"payload\":{\"roles\":[\"=x\"]}}"),
            row(2, "advanced", "tess", "{\"roles\":[\"TECHNICIAN\"]}"),
            row(3, "refused", "boris", "{\"roles\":[\"SUPERVISOR\"]}"),
            row(4, "advanced", "tess", "{}"),
            row(5, "ruled-out", "tess", null),
            row(6, "bell\u0007 <\u0000> & \"q\" \uD800 \uFFFE\n\t", "tess", null));

    private static TicketEvents ticket() {
        return EventLog.ticket(TRAIL, new HashMap<>(), leaf -> List.of());
    }

    private static byte[] written(EventFormat format) throws IOException {
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        format.begin(ABOUT, file);
        format.ticket(ticket(), file);
        format.end(file);
        return file.toByteArray();
    }

    /**
     * However many tickets there are, no more than the stretch that is written and the one before it are held, and nothing of the file:
     * 3,000 invented ones in each build, {@code -Dexports.tickets=100000} as many as one likes.
     */
    @ParameterizedTest
    @ValueSource(strings = {"xes", "csv", "jsonl"})
    void aLongFile_needsNoMoreMemoryThanAShortOne(String form) throws IOException {
        int many = Integer.getInteger("exports.tickets", 3000);
        List<WeakReference<TicketEvents>> given = new ArrayList<>();
        int[] largest = new int[1];
        long[] bytes = new long[1];
        EventLog.Stretches invented = after -> {
            int first = Math.max(after + 1, 1);
            int count = Math.min(EventLog.STRETCH, many - first + 1);
            List<TicketEvents> stretch = IntStream.range(first, first + Math.max(0, count))
                    .mapToObj(serial -> new TicketEvents(
                            new TicketNumber(serial).toString(), "other", "today", 1, ticket().events()))
                    .toList();
            if (given.size() % (many / 10) == 0 && !given.isEmpty()) {
                System.gc();
                long held = given.stream().filter(r -> r.get() != null).count();
                assertTrue(held <= 2 * EventLog.STRETCH, held + " of " + given.size() + " tickets are held");
            }
            stretch.forEach(t -> given.add(new WeakReference<>(t)));
            return stretch;
        };
        OutputStream file = new OutputStream() {
            @Override
            public void write(int one) {
                bytes[0]++;
            }

            @Override
            public void write(byte[] part, int from, int count) {
                bytes[0] += count;
                largest[0] = Math.max(largest[0], count);
            }
        };
        EventFormat format = switch (form) {
            case "xes" -> new XesFormat();
            case "csv" -> new CsvFormat();
            default -> new JsonLinesFormat();
        };
        EventLog.write(invented, format, ABOUT, file);
        assertEquals(many, given.size());
        assertTrue(bytes[0] > 300L * many, "all of them are in the file");
        assertTrue(largest[0] < 20_000, "a ticket at a time, not " + largest[0] + " bytes");
    }

    private static void validate(byte[] xml) throws SAXException, IOException {
        SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI)
                .newSchema(Objects.requireNonNull(EventFormatTest.class.getResource("xes.xsd")))
                .newValidator()
                .validate(new StreamSource(new ByteArrayInputStream(xml)));
    }

    /**
     * Against the schema as it is published (IEEE 1849-2016), which the build takes out of a library. It names no namespace: included
     * into a schema of the namespace that readers need, it takes that one.
     */
    private static void validateAsPublished(byte[] xml) throws SAXException, IOException {
        validateAsPublished(new ByteArrayInputStream(xml));
    }

    static void validateAsPublished(InputStream xml) throws SAXException, IOException {
        Path published = Path.of("target", "schemas", "xes-ieee-1849-2016.xsd").toAbsolutePath();
        assertTrue(Files.exists(published), "the build unpacks it: mvn generate-test-resources");
        String wrapped = "<xs:schema xmlns:xs='http://www.w3.org/2001/XMLSchema' xmlns='http://www.xes-standard.org/'"
                + " targetNamespace='http://www.xes-standard.org/' elementFormDefault='qualified'>"
                + "<xs:include schemaLocation='" + published.toUri() + "'/></xs:schema>";
        SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI)
                .newSchema(new StreamSource(new StringReader(wrapped)))
                .newValidator()
                .validate(new StreamSource(xml));
    }

    private static byte[] with(String part, String instead) throws IOException {
        String xml = new String(written(new XesFormat()), StandardCharsets.UTF_8);
        assertTrue(xml.contains(part), part);
        return xml.replace(part, instead).getBytes(StandardCharsets.UTF_8);
    }

    @Test
    void xes_isValidByThePublishedSchema() throws Exception {
        validateAsPublished(written(new XesFormat()));
        for (String[] fault : new String[][] {
            {"1849.2016", "1849-2016"},
            {"<classifier name=\"Kind\"", "<classifier name=\"a kind\""},
            {"<classifier name=\"Kind\" scope=\"event\"", "<classifier name=\"Kind\""},
            {"<int key=\"benchtrail:entry\" value=\"1\"/>", "<int key=\"benchtrail:entry\" value=\"one\"/>"},
            {"<trace>", "<ticket>"},
            {"2026-11-27T04:00:00.000123Z", "27 November"},
            {"xmlns=\"http://www.xes-standard.org/\"", ""},
        }) {
            byte[] faulty = with(fault[0], fault[0].equals("<trace>") ? "<trace/><event/><trace>" : fault[1]);
            assertThrows(SAXException.class, () -> validateAsPublished(faulty), fault[0]);
        }
    }

    private static Document parsed(byte[] xml) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new ByteArrayInputStream(xml));
    }

    private static List<String> values(Document xml, String type, String key) {
        NodeList found = xml.getElementsByTagName(type);
        List<String> values = new ArrayList<>();
        for (int i = 0; i < found.getLength(); i++) {
            Element one = (Element) found.item(i);
            if (one.getAttribute("key").equals(key)
                    && one.getParentNode().getNodeName().equals("event")) {
                values.add(one.getAttribute("value"));
            }
        }
        return values;
    }

    @Test
    void xes_keepsTheRules_whateverAKindIsCalled() throws Exception {
        validate(written(new XesFormat()));
        byte[] asDecimal = new String(written(new XesFormat()), StandardCharsets.UTF_8)
                .replace("1849.2016", "1849-2016")
                .getBytes(StandardCharsets.UTF_8);
        assertThrows(SAXException.class, () -> validate(asDecimal), "a version that is no decimal");
    }

    @Test
    void xes_saysWhatTheTrailSays_inItsOrder() throws Exception {
        Document xml = parsed(written(new XesFormat()));
        assertEquals(
                List.of(
                        "opened",
                        "advanced",
                        "refused",
                        "advanced",
                        "ruled-out",
                        "bell\uFFFD <\uFFFD> & \"q\" \uFFFD \uFFFD\n\t"),
                values(xml, "string", "concept:name"));
        assertEquals(List.of("1", "2", "3", "4", "5", "6"), values(xml, "int", "benchtrail:entry"));
        assertEquals(
                List.of("identify", "identify", "theorize", "theorize", "test", "theorize"),
                values(xml, "string", "benchtrail:step"));
        assertEquals(List.of("1", "1", "1", "1", "1", "2"), values(xml, "int", "benchtrail:round"));
        assertEquals(
                List.of("complete", "complete", "ate_abort", "complete", "complete", "complete"),
                values(xml, "string", "lifecycle:transition"));
        assertEquals(
                "2026-11-27T04:00:00.000123Z",
                values(xml, "date", "time:timestamp").get(0));
        assertEquals("technician mentor", values(xml, "string", "org:role").get(0));
    }

    @Test
    void persons_areNumbered_andNotNamed() throws Exception {
        Document xml = parsed(written(new XesFormat()));
        assertEquals(
                List.of("person-1", "person-1", "person-2", "person-1", "person-1", "person-1"),
                values(xml, "string", "org:resource"));
        for (EventFormat format : List.of(new XesFormat(), new CsvFormat(), new JsonLinesFormat())) {
            String file = new String(written(format), StandardCharsets.UTF_8);
            assertTrue(!file.contains("tess") && !file.contains("boris") && !file.contains("=x"), file);
        }
    }

    /** Every key of a classifier is declared for its scope, or readers may refuse the log. */
    @Test
    void xes_declaresTheKeysOfItsClassifiers() throws Exception {
        Document xml = parsed(written(new XesFormat()));
        Set<String> declared = new TreeSet<>();
        NodeList globals = xml.getElementsByTagName("global");
        for (int i = 0; i < globals.getLength(); i++) {
            NodeList inside = ((Element) globals.item(i)).getElementsByTagName("*");
            for (int k = 0; k < inside.getLength(); k++) {
                declared.add(((Element) globals.item(i)).getAttribute("scope") + " "
                        + ((Element) inside.item(k)).getAttribute("key"));
            }
        }
        NodeList classifiers = xml.getElementsByTagName("classifier");
        assertEquals(2, classifiers.getLength());
        for (int i = 0; i < classifiers.getLength(); i++) {
            Element one = (Element) classifiers.item(i);
            for (String key : one.getAttribute("keys").split(" ")) {
                assertTrue(declared.contains(one.getAttribute("scope") + " " + key), key);
            }
        }
    }

    @Test
    void csv_hasARecordForEachEvent_allAsLong() throws Exception {
        String file = new String(written(new CsvFormat()), StandardCharsets.UTF_8);
        assertTrue(file.endsWith("\r\n"));
        List<List<String>> records = Records4180.read(file);
        assertEquals(7, records.size());
        assertEquals(Set.of(11), records.stream().map(List::size).collect(Collectors.toSet()));
        assertEquals(TRAIL.get(5).kind().replace("\uD800", "?"), records.get(6).get(5));
        assertEquals("yes", records.get(3).get(6));
        assertEquals("technician mentor", records.get(1).get(10));
    }

    /** The reader that the files are read with here, by the two examples of the format's own document. */
    @Test
    void theReader_readsTheExamplesOfRfc4180() {
        assertEquals(List.of(List.of("aaa", "b\"bb", "ccc")), Records4180.read("aaa,\"b\"\"bb\",ccc\r\n"));
        assertEquals(
                List.of(List.of("aaa", "b \r\nbb", "ccc"), List.of("zzz", "yyy", "xxx")),
                Records4180.read("\"aaa\",\"b \r\nbb\",\"ccc\"\r\nzzz,yyy,xxx\r\n"));
    }

    @Test
    void jsonLines_areObjects_withHashAndPlaceInTheLog() throws Exception {
        List<String> lines = new String(written(new JsonLinesFormat()), StandardCharsets.UTF_8)
                .lines()
                .toList();
        assertEquals(7, lines.size());
        com.fasterxml.jackson.databind.ObjectMapper json = new com.fasterxml.jackson.databind.ObjectMapper();
        assertEquals(ABOUT.head(), json.readTree(lines.get(0)).get("head").asText());
        assertEquals(7, json.readTree(lines.get(1)).get("leaf").asLong());
        assertTrue(json.readTree(lines.get(2)).get("leaf").isNull());
        assertEquals("ab".repeat(32), json.readTree(lines.get(6)).get("hash").asText());
        assertTrue(json.readTree(lines.get(3)).get("refused").asBoolean());
    }

    @ParameterizedTest
    @ValueSource(strings = {"2026-13", "2026-00", "26-01", "2026-1", "2026-01-01", "..", "x"})
    void whatIsNoMonth_isNotFound(String asked) {
        assertThrows(NotFound.class, () -> Moments.month(asked));
    }

    @Test
    void whereabouts_goOnlyWhereTheMethodGoes() {
        assertEquals(
                new Whereabouts(Step.DOCUMENT, 3),
                new Whereabouts(Step.DOCUMENT, 3).after(org.benchtrail.core.method.Move.ADVANCE));
        assertEquals(
                new Whereabouts(Step.IDENTIFY, 4),
                new Whereabouts(Step.DOCUMENT, 3).after(org.benchtrail.core.method.Move.REOPEN));
    }
}
