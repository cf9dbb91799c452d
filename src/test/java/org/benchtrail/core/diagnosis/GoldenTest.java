package org.benchtrail.core.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.benchtrail.core.Published;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every golden case to 1e-9: planned reliability 1, no threshold, no risk minutes, first report's channel for z. */
class GoldenTest {
    private static final String SOURCE = "golden.json, a separate prototype's numbers";
    private static final double EXACT = 1e-9;
    private static final Instant T0 = Instant.parse("2026-01-05T08:00:00Z");
    private static final ModelSettings SETTINGS = ModelSettings.STANDARD.withEveryTuple(false);
    private static final PlanSettings PLAN =
            PlanSettings.STANDARD.withoutRiskMinutes().withThreshold(0, 0).withPrune(false);

    static Stream<JsonNode> cases() {
        return StreamSupport.stream(StarterJson.read("golden.json").get("cases").spliterator(), false);
    }

    private static Model model(JsonNode c) {
        CauseCategory plain =
                StarterJson.catalogue().category(c.get("category").asText()).orElseThrow();
        return new Model(grouped(plain, c.get("groups")), SETTINGS);
    }

    private static CauseCategory grouped(CauseCategory c, JsonNode groups) {
        Map<String, String> groupOf = new HashMap<>();
        List<Group> all = new ArrayList<>();
        for (JsonNode g : groups) {
            String id = "g" + all.size();
            all.add(new Group(id, g.get("r").asDouble()));
            g.get("findings").forEach(f -> groupOf.put(f.asText(), id));
        }
        List<Finding> findings = c.findings().stream()
                .map(f -> new Finding(
                        f.id(),
                        f.question(),
                        f.kind(),
                        f.values(),
                        f.background(),
                        f.minutes(),
                        f.risk(),
                        f.applies(),
                        groupOf.get(f.id()),
                        f.limits()))
                .toList();
        return new CauseCategory(c.id(), c.title(), c.escalateMinutes(), all, findings, c.causes(), List.of());
    }

    private static Evidence evidence(JsonNode c, Model model) {
        List<Report> reports = new ArrayList<>();
        c.get("reports").properties().forEach(f -> {
            List<String> values = model.finding(model.findingIndex(f.getKey())).values();
            for (JsonNode r : f.getValue()) {
                String value = values.get(r.get("value").asText().startsWith("abnormal") ? 1 : 0);
                Instant at = T0.plusSeconds(reports.size());
                reports.add(new Report(
                        "r" + reports.size(),
                        f.getKey(),
                        value,
                        r.get("reliability").asDouble(),
                        at,
                        false));
            }
        });
        List<FailedRepair> failed = new ArrayList<>();
        c.get("failedRepairs").forEach(x -> failed.add(new FailedRepair(x.asText(), 0, T0)));
        return new Evidence(reports, failed);
    }

    @ParameterizedTest
    @MethodSource("cases")
    void everyCase_agreesTo1e9(JsonNode c) {
        Model model = model(c);
        Ranking ranking = Ranking.of(model, evidence(c, model));
        c.get("posterior")
                .properties()
                .forEach(p -> Published.check(SOURCE, p.getValue().asDouble(), ranking.probability(p.getKey()), EXACT));
        Surprise surprise = Surprise.of(ranking);
        Published.check(SOURCE, c.get("conflictDb").asDouble(), surprise.conflict(), EXACT);
        Published.check(SOURCE, c.get("topListed").asText(), surprise.topListed());
        Published.check(SOURCE, c.get("z").asDouble(), surprise.z(), EXACT);
        Advice advice = new NextTest(model, PLAN).advise(ranking, BenchSituation.PLAIN);
        Published.check(SOURCE, c.get("planMinutes").asDouble(), advice.planMinutes(), EXACT);
        actions(c.get("actions"), advice.actions());
    }

    private static void actions(JsonNode expected, List<Action> actual) {
        assertEquals(expected.size(), actual.size());
        for (int k = 0; k < actual.size(); k++) {
            Published.check(
                    SOURCE, expected.get(k).get("id").asText(), actual.get(k).id());
            Published.check(
                    SOURCE,
                    expected.get(k).get("type").asText(),
                    actual.get(k).type().name().substring(0, 1));
            double minutes = expected.get(k).get("expectedMinutes").asDouble();
            Published.check(SOURCE, minutes, actual.get(k).expectedMinutes(), EXACT);
        }
    }
}
