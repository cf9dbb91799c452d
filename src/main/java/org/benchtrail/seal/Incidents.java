package org.benchtrail.seal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.benchtrail.core.method.TicketNumber;

/** What was found broken in the log, in a stream of its own that is sealed like the rest. */
@ApplicationScoped
class Incidents {
    static final String STREAM = "incidents";

    private static final int MOST = 200;

    private final LogRows rows;
    private final ObjectMapper mapper;

    Incidents(LogRows rows, ObjectMapper mapper) {
        this.rows = rows;
        this.mapper = mapper;
    }

    /** One of them. */
    record Incident(long place, String kind, String about, String sentence, Instant at) {}

    /** Adds one within the running transaction, unless the same is the newest already. */
    void found(String kind, String about, String sentence, Instant at) {
        List<Incident> newest = newest();
        if (!newest.isEmpty() && newest.get(0).sentence().equals(sentence)) {
            return;
        }
        try {
            rows.record(
                    STREAM,
                    kind,
                    mapper.writeValueAsString(Map.of("about", about, "at", at.toString(), "sentence", sentence)));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("strings are JSON", e);
        }
    }

    /** The newest first; at most 200. */
    List<Incident> newest() {
        return rows.newest(STREAM, MOST).stream().map(this::read).toList();
    }

    /** What was proposed about a broken ticket, or what became of it. */
    private static Incident mending(long place, JsonNode content) {
        boolean waits = content.path("outcome").isNull();
        String what = content.path("way").asText().equals("GO_ON") ? "go on after a hole" : "put back what is missing";
        String said = waits
                ? "Proposed by " + content.path("by").asText() + ": "
                : content.path("outcome").asText().toLowerCase(Locale.ROOT) + " by "
                        + content.path("ended_by").asText() + ": ";
        return new Incident(
                place,
                "mending",
                "ticket " + new TicketNumber(content.path("ticket").asInt()),
                said.substring(0, 1).toUpperCase(Locale.ROOT) + said.substring(1) + what + ", entries "
                        + content.path("first").asInt() + " to "
                        + content.path("last").asInt() + ".",
                OffsetDateTime.parse(content.path(waits ? "proposed" : "ended").asText())
                        .toInstant());
    }

    private Incident read(LogRows.SiteRecord record) {
        try {
            var json = mapper.readTree(record.canonical());
            var content = json.path("content");
            if (json.path("what").asText().equals("mending")) {
                return mending(record.place(), content);
            }
            return new Incident(
                    record.place(),
                    json.path("what").asText(),
                    content.path("about").asText(),
                    content.path("sentence").asText(),
                    Instant.parse(content.path("at").asText()));
        } catch (IOException | DateTimeParseException | IllegalArgumentException altered) {
            return new Incident(
                    record.place(),
                    "",
                    STREAM,
                    "The record of this incident was altered: it cannot be read.",
                    Instant.EPOCH);
        }
    }
}
