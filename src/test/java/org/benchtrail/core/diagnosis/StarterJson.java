package org.benchtrail.core.diagnosis;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The starter catalogue and the golden cases, read from the test resources. */
final class StarterJson {
    private StarterJson() {}

    static JsonNode read(String name) {
        try (InputStream in = StarterJson.class.getResourceAsStream("/diagnosis/" + name)) {
            return new ObjectMapper().readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Catalogue catalogue() {
        List<CauseCategory> categories = new ArrayList<>();
        read("causes.json").get("categories").forEach(c -> categories.add(category(c)));
        return new Catalogue(categories);
    }

    private static CauseCategory category(JsonNode c) {
        Map<String, Finding> findings = new LinkedHashMap<>();
        c.get("findings").forEach(f -> findings.put(f.get("id").asText(), finding(f)));
        List<Cause> causes = new ArrayList<>();
        c.get("causes").forEach(x -> causes.add(cause(x, findings)));
        return new CauseCategory(
                c.get("id").asText(),
                c.get("title").asText(),
                c.get("escalateMinutes").asDouble(),
                List.of(),
                List.copyOf(findings.values()),
                causes,
                List.of());
    }

    private static Finding finding(JsonNode f) {
        List<String> values = new ArrayList<>();
        f.get("values").forEach(v -> values.add(v.asText()));
        return new Finding(
                f.get("id").asText(),
                f.get("question").asText(),
                Finding.Kind.valueOf(f.get("kind").asText().toUpperCase(Locale.ROOT)),
                values,
                binary(values, f.get("background").asDouble()),
                f.get("minutes").asDouble(),
                Risk.valueOf(f.get("risk").asText().toUpperCase(Locale.ROOT)),
                List.of(),
                null,
                null);
    }

    static Map<String, Double> binary(List<String> values, double abnormal) {
        return Map.of(values.get(0), 1 - abnormal, values.get(1), abnormal);
    }

    private static Cause cause(JsonNode c, Map<String, Finding> findings) {
        List<Deviation> deviations = new ArrayList<>();
        c.get("deviations")
                .properties()
                .forEach(d -> deviations.add(new Deviation(
                        d.getKey(),
                        binary(findings.get(d.getKey()).values(), d.getValue().asDouble()))));
        JsonNode r = c.get("repair");
        return new Cause(
                c.get("id").asText(),
                c.get("name").asText(),
                c.get("weight").asDouble(),
                deviations,
                c.get("confirm").asText(),
                c.get("confirmMinutes").asDouble(),
                new Repair(
                        r.get("text").asText(),
                        r.get("minutes").asDouble(),
                        r.get("verifyMinutes").asDouble(),
                        r.get("fixProbability").asDouble(),
                        0,
                        Risk.valueOf(r.get("risk").asText().toUpperCase(Locale.ROOT)),
                        r.get("reversible").asBoolean(),
                        List.of()),
                c.get("caution").asText());
    }
}
