package org.benchtrail.exports;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.OutputStream;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/**
 * A JSON object on each line: first what the file is, with the newest head of the log, then an event a line, with its hash and
 * where it stands in the log, and the proof that it is in the log of that head. The leaf of an event is made of the ticket, the entry
 * and the hash, so that each line can be checked with nothing but the first one.
 */
final class JsonLinesFormat implements EventFormat {
    static final String MEDIA_TYPE = "application/jsonl;charset=UTF-8";

    private static final JsonFactory JSON = new JsonFactory();

    @Override
    public void begin(About about, OutputStream file) throws IOException {
        StringWriter line = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(line)) {
            json.writeStartObject();
            json.writeStringField("format", "benchtrail-events/2");
            json.writeStringField("month", about.month());
            json.writeStringField("head", about.head());
            json.writeEndObject();
        }
        write(line, file);
    }

    @Override
    public void ticket(TicketEvents ticket, OutputStream file) throws IOException {
        for (TicketEvent event : ticket.events()) {
            StringWriter line = new StringWriter();
            try (JsonGenerator json = JSON.createGenerator(line)) {
                event(json, ticket, event);
            }
            write(line, file);
        }
    }

    private static void event(JsonGenerator json, TicketEvents ticket, TicketEvent event) throws IOException {
        json.writeStartObject();
        json.writeStringField("ticket", ticket.number());
        json.writeNumberField("entry", event.entry());
        json.writeStringField("time", event.at().toString());
        json.writeStringField("kind", event.kind());
        json.writeBooleanField("refused", event.refused());
        json.writeStringField("step", event.before().step().name().toLowerCase(Locale.ROOT));
        json.writeNumberField("round", event.before().round());
        json.writeStringField("person", event.person());
        json.writeArrayFieldStart("roles");
        for (String role : event.roles()) {
            json.writeString(role);
        }
        json.writeEndArray();
        json.writeStringField("category", ticket.category());
        json.writeStringField("priority", ticket.priority());
        json.writeStringField("hash", event.hash());
        if (event.leaf() == null) {
            json.writeNullField("leaf");
        } else {
            json.writeNumberField("leaf", event.leaf());
        }
        json.writeArrayFieldStart("proof");
        for (String hash : event.proof()) {
            json.writeString(hash);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    @Override
    public void end(OutputStream file) {}

    @Override
    public boolean proves() {
        return true;
    }

    private static void write(StringWriter line, OutputStream file) throws IOException {
        file.write((line + "\n").getBytes(StandardCharsets.UTF_8));
    }
}
