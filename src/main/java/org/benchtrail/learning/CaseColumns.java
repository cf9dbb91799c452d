package org.benchtrail.learning;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.UncheckedIOException;
import java.util.List;
import org.benchtrail.core.learning.TicketCase;

/** What a case keeps as JSON in its row. */
final class CaseColumns {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private CaseColumns() {}

    static String write(Object value) {
        try {
            return MAPPER.writeValueAsString(value);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }

    static List<TicketCase.Seen> seen(String json) {
        try {
            return MAPPER.readValue(json, new TypeReference<>() {});
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }

    static TicketCase.ShownRanking shown(String json) {
        try {
            return MAPPER.readValue(json, TicketCase.ShownRanking.class);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }
}
