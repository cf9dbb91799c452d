package org.benchtrail.training;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.math.BigDecimal;
import java.util.Map;
import java.util.TreeMap;
import org.benchtrail.core.method.desk.ForecastKind;
import org.benchtrail.core.training.ChanceContent;
import org.benchtrail.core.training.ForecastContent;

/** Reads what is kept of a forecast. */
final class KeptForecasts {
    private static final ObjectMapper JSON = new ObjectMapper();

    private KeptForecasts() {}

    /** @param canonical as {@link ForecastContent#canonical} writes it */
    static ForecastContent read(String canonical) {
        JsonNode said = read(canonical, new TypeReference<>() {});
        Map<String, Integer> percents = new TreeMap<>();
        said.get("causes").fields().forEachRemaining(f -> percents.put(f.getKey(), percent(f.getValue())));
        int other = percents.getOrDefault(ForecastContent.OTHER, 0);
        percents.remove(ForecastContent.OTHER);
        return new ForecastContent(
                said.get("ticket").asText(),
                said.get("round").asInt(),
                ForecastKind.of(said.get("kind").asText()),
                percents,
                other,
                said.get("nextTest").asText());
    }

    /** @param canonical as {@link ChanceContent#canonical} writes it */
    static ChanceContent readChance(String canonical) {
        JsonNode said = read(canonical, new TypeReference<>() {});
        return new ChanceContent(
                said.get("ticket").asText(),
                said.get("round").asInt(),
                ForecastKind.of(said.get("kind").asText()),
                said.get("about").asText(),
                said.get("value").asText(),
                percent(said.get("chance")));
    }

    /** @param reference chances of causes by id, as JSON */
    static Map<String, Double> chances(String reference) {
        return read(reference, new TypeReference<>() {});
    }

    private static int percent(JsonNode chance) {
        return new BigDecimal(chance.asText()).movePointRight(2).intValueExact();
    }

    private static <T> T read(String json, TypeReference<T> type) {
        try {
            return JSON.readValue(json, type);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a kept forecast cannot be read", e);
        }
    }
}
