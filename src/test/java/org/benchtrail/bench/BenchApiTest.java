package org.benchtrail.bench;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class BenchApiTest {
    private static final String UPS_LOAD = "{\"ratedWatts\":900,\"ratedVa\":1500,\"watts\":%s}";

    @Inject
    PeopleActs acts;

    @Inject
    ObjectMapper mapper;

    private String token = "";

    @BeforeEach
    void token() {
        if (token.isEmpty()) {
            Set<Role> roles = Set.of(Role.TECHNICIAN);
            acts.ensureAccount("bench-program", "Bench Program", roles, "a long enough password");
            token = acts.createToken(new Actor("bench-program", "Bench Program", roles), "bench", 1)
                    .secret();
        }
    }

    private Response post(String id, String json) {
        return given().header("Authorization", "Bearer " + token)
                .contentType("application/json")
                .body(json)
                .post("/api/bench/" + id);
    }

    private Response get(String path) {
        return given().header("Authorization", "Bearer " + token).get(path);
    }

    static Stream<Calculation<?>> calculations() {
        return Bench.all().stream();
    }

    private static <I extends Record> Result example(Calculation<I> calculation) {
        return calculation.calculate(calculation.example());
    }

    @ParameterizedTest
    @MethodSource("calculations")
    void ownExample_isAnsweredWithTheSameResult(Calculation<?> calculation) throws Exception {
        Response answer = post(
                calculation.id(),
                mapper.readTree(get("/api/bench/" + calculation.id()).asString())
                        .get("example")
                        .toString());
        assertEquals(200, answer.statusCode(), answer.asString());
        Result expected = example(calculation);
        Result got = mapper.treeToValue(mapper.readTree(answer.asString()).get("result"), Result.class);
        assertEquals(expected.judgement(), got.judgement());
        assertEquals(expected, got);
        assertEquals(calculation.version(), answer.jsonPath().getInt("version"));
        assertEquals(calculation.id(), answer.jsonPath().getString("calculation"));
    }

    @Test
    void list_saysWhatEachAsksFor() {
        Response answer = get("/api/bench");
        assertEquals(
                Bench.all().stream().map(Calculation::id).toList(),
                answer.jsonPath().getList("id"));
        Map<String, Object> budget =
                answer.jsonPath().getMap("find { it.id == 'poe-budget' }.input.find { it.name == 'budget' }");
        assertEquals(
                List.of("Power budget of the switch", "W", "number", true),
                List.of(budget.get("label"), budget.get("unit"), budget.get("type"), budget.get("required")));
        assertEquals(
                List.of("deviceClass", "metres"),
                answer.jsonPath()
                        .getList("find { it.id == 'poe-budget' }.input.find { it.name == 'ports' }.fields.name"));
        assertEquals(
                "RAID 5",
                answer.jsonPath()
                        .getString("find { it.id == 'array' }.input.find { it.name == 'level' }"
                                + ".options.find { it.value == 'RAID5' }.words"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "null|watts",
                "-1|watts",
                "1e30|watts",
                "\"500\"|watts",
                "\"fünf 🔌\"|watts",
                "true|watts",
                "{}|watts",
                "500,\"watss\":5|watss",
                "500,\"va\":\"x\"|va",
                "500,\"amps\":[1]|amps"
            })
    void badValue_isRefusedByItsField(String value, String field) {
        Response answer = post("ups-load", UPS_LOAD.formatted(value));
        assertEquals(422, answer.statusCode(), answer.asString());
        assertEquals("application/problem+json", answer.contentType().split(";")[0]);
        assertTrue(answer.jsonPath().getList("errors.field").contains(field), answer.asString());
    }

    @Test
    void rows_areNamedAsTheyWereSent() {
        Response answer = post(
                "poe-budget",
                "{\"budget\":120,\"highestClass\":4,\"ports\":[{\"deviceClass\":3,\"metres\":10},{\"deviceClass\":3.5},7]}");
        assertEquals(422, answer.statusCode());
        assertEquals(List.of("ports[2]"), answer.jsonPath().getList("errors.field"));
        Response second = post(
                "poe-budget",
                "{\"budget\":120,\"highestClass\":4,\"ports\":[{\"deviceClass\":3,\"metres\":10},{\"deviceClass\":3.5}]}");
        assertEquals(
                Set.of("ports[1].deviceClass", "ports[1].metres"),
                Set.copyOf(second.jsonPath().getList("errors.field", String.class)));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"{}|422", "[]|422", "7|422", "{|400", "''|422"})
    void bodyThatIsNoInput_isRefused(String body, int status) {
        assertEquals(status, post("ups-load", body).statusCode());
    }

    @Test
    void unknownCalculation_isNotHere() {
        assertEquals(404, get("/api/bench/nothing").statusCode());
        assertEquals(404, post("nothing", "{}").statusCode());
    }
}
