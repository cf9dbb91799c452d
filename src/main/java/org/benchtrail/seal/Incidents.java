package org.benchtrail.seal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Map;

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

    private Incident read(LogRows.SiteRecord record) {
        try {
            var json = mapper.readTree(record.canonical());
            var content = json.path("content");
            return new Incident(
                    record.place(),
                    json.path("what").asText(),
                    content.path("about").asText(),
                    content.path("sentence").asText(),
                    Instant.parse(content.path("at").asText()));
        } catch (IOException | DateTimeParseException altered) {
            return new Incident(
                    record.place(),
                    "",
                    STREAM,
                    "The record of this incident was altered: it cannot be read.",
                    Instant.EPOCH);
        }
    }
}
