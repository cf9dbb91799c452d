package org.benchtrail.readin;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/** JSON text as a plain tree: maps, lists, strings, {@link BigDecimal} for every number, booleans, null. */
final class JsonTree {
    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION)
            .build();

    private JsonTree() {}

    /** @throws Invalid naming line and column if it is no JSON */
    static @Nullable Object parse(String text) {
        try {
            return plain(MAPPER.readValue(text, Object.class));
        } catch (JsonProcessingException e) {
            throw new Invalid(place(e.getLocation()), sentence(String.valueOf(e.getOriginalMessage())));
        }
    }

    private static String place(@Nullable JsonLocation at) {
        return at == null || at.getLineNr() < 1 ? "text" : "line " + at.getLineNr() + ", column " + at.getColumnNr();
    }

    private static String sentence(String said) {
        if (said.contains("NaN") || said.contains("INF")) {
            return "NaN and Infinity are no numbers in JSON: the device has no such reading; write null.";
        }
        if (said.startsWith("Duplicate field")) {
            return "The same name stands twice in one object: which of the two counts cannot be told.";
        }
        return said.startsWith("Unexpected end")
                ? "The JSON ends too early: copy it whole."
                : "This is not JSON from here on: copy it whole, without anything before or behind it.";
    }

    private static @Nullable Object plain(@Nullable Object value) {
        if (value instanceof Map<?, ?> map) {
            Map<Object, Object> copy = new HashMap<>();
            map.forEach((name, member) -> copy.put(name, plain(member)));
            return copy;
        }
        if (value instanceof List<?> list) {
            return list.stream().map(JsonTree::plain).toList();
        }
        return value instanceof Number && !(value instanceof BigDecimal) ? new BigDecimal(value.toString()) : value;
    }
}
