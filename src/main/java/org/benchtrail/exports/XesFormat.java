package org.benchtrail.exports;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.UUID;

/**
 * IEEE 1849-2016 (XES), written as it goes: extensions, globals, classifiers, then a trace for each ticket. Every text passes
 * {@link #escape}, which leaves no character that XML 1.0 does not allow.
 */
final class XesFormat implements EventFormat {
    static final String MEDIA_TYPE = "application/xml;charset=UTF-8";

    private static final String EXTENSIONS = "http://www.xes-standard.org/";
    private static final DateTimeFormatter MICROSECONDS =
            DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSSSSS'Z'").withZone(ZoneOffset.UTC);

    /** The keys of our own, for readers that ask what they mean. */
    static final String OWN_KEYS = """
            <?xml version="1.0" encoding="UTF-8"?>
            <xesextension name="Benchtrail" prefix="benchtrail" uri="%s">
              <trace>
                <string key="category"><alias mapping="en" name="Kind of trouble"/></string>
                <string key="priority"><alias mapping="en" name="Priority of the ticket"/></string>
                <int key="rounds"><alias mapping="en" name="How many rounds it took"/></int>
              </trace>
              <event>
                <string key="step"><alias mapping="en" name="Step in which it was done"/></string>
                <int key="round"><alias mapping="en" name="Round in which it was done"/></int>
                <int key="entry"><alias mapping="en" name="Number of the entry in its trail"/></int>
              </event>
            </xesextension>
            """;

    @Override
    public void begin(About about, OutputStream file) throws IOException {
        StringBuilder xml = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                + "<log xes.version=\"1849.2016\" xes.features=\"\" xmlns=\"" + EXTENSIONS + "\">\n");
        extension(xml, "Concept", "concept", EXTENSIONS + "concept.xesext");
        extension(xml, "Lifecycle", "lifecycle", EXTENSIONS + "lifecycle.xesext");
        extension(xml, "Organizational", "org", EXTENSIONS + "org.xesext");
        extension(xml, "Time", "time", EXTENSIONS + "time.xesext");
        extension(xml, "Identity", "identity", EXTENSIONS + "identity.xesext");
        extension(xml, "Benchtrail", "benchtrail", about.address());
        xml.append("<global scope=\"trace\">\n");
        attribute(xml, "string", "concept:name", "unknown");
        xml.append("</global>\n<global scope=\"event\">\n");
        attribute(xml, "string", "concept:name", "unknown");
        attribute(xml, "string", "lifecycle:transition", "complete");
        attribute(xml, "date", "time:timestamp", MICROSECONDS.format(Instant.EPOCH));
        attribute(xml, "string", "benchtrail:step", "unknown");
        xml.append("</global>\n<classifier name=\"Kind\" scope=\"event\" keys=\"concept:name lifecycle:transition\"/>\n"
                + "<classifier name=\"Step\" scope=\"event\" keys=\"benchtrail:step\"/>\n");
        attribute(xml, "string", "concept:name", "Tickets that ended in " + about.month());
        write(xml, file);
    }

    @Override
    public void ticket(TicketEvents ticket, OutputStream file) throws IOException {
        StringBuilder xml = new StringBuilder("<trace>\n");
        attribute(xml, "string", "concept:name", ticket.number());
        attribute(xml, "id", "identity:id", identity("ticket/" + ticket.number()));
        attribute(xml, "string", "benchtrail:category", ticket.category());
        attribute(xml, "string", "benchtrail:priority", ticket.priority());
        attribute(xml, "int", "benchtrail:rounds", String.valueOf(ticket.rounds()));
        for (TicketEvent event : ticket.events()) {
            xml.append("<event>\n");
            attribute(xml, "string", "concept:name", event.kind());
            attribute(xml, "date", "time:timestamp", MICROSECONDS.format(event.at()));
            attribute(xml, "string", "lifecycle:transition", event.refused() ? "ate_abort" : "complete");
            attribute(xml, "string", "org:resource", event.person());
            attribute(xml, "string", "org:role", String.join(" ", event.roles()));
            attribute(
                    xml,
                    "string",
                    "benchtrail:step",
                    event.before().step().name().toLowerCase(Locale.ROOT));
            attribute(
                    xml,
                    "int",
                    "benchtrail:round",
                    String.valueOf(event.before().round()));
            attribute(xml, "int", "benchtrail:entry", String.valueOf(event.entry()));
            xml.append("</event>\n");
        }
        write(xml.append("</trace>\n"), file);
    }

    @Override
    public void end(OutputStream file) throws IOException {
        write(new StringBuilder("</log>\n"), file);
    }

    /** The same for the same ticket in every file. */
    private static String identity(String of) {
        return UUID.nameUUIDFromBytes(of.getBytes(StandardCharsets.UTF_8)).toString();
    }

    private static void extension(StringBuilder xml, String name, String prefix, String uri) {
        xml.append("<extension name=\"" + name + "\" prefix=\"" + prefix + "\" uri=\"" + escape(uri) + "\"/>\n");
    }

    private static void attribute(StringBuilder xml, String type, String key, String value) {
        xml.append("<" + type + " key=\"" + key + "\" value=\"" + escape(value) + "\"/>\n");
    }

    private static void write(StringBuilder xml, OutputStream file) throws IOException {
        file.write(xml.toString().getBytes(StandardCharsets.UTF_8));
    }

    /** As the value of an attribute; a character that XML does not know becomes U+FFFD, half a pair too. */
    static String escape(String text) {
        StringBuilder safe = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                case '\t', '\n', '\r' -> safe.append("&#").append(c).append(';');
                default -> safe.appendCodePoint(isAllowed(c) ? c : 0xFFFD);
            }
        });
        return safe.toString();
    }

    /** Char of XML 1.0, section 2.2. */
    private static boolean isAllowed(int c) {
        return (c >= 0x20 && c <= 0xD7FF) || (c >= 0xE000 && c <= 0xFFFD) || c >= 0x10000;
    }
}
