package org.benchtrail.ticket;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a program is told that asks a little wrongly. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class ApiEdgesTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor EDDA =
            new Actor("edge-edda", "Edda", Set.of(Role.TECHNICIAN, Role.SUPERVISOR, Role.ADMINISTRATOR));
    private static final String REPORT =
            "{'title':'Edge','words':'','category':'HEAT','device':'W','place':'P','requester':'R','contact':'c',"
                    + "'impact':'ONE_PERSON','urgency':'HINDERED'}";

    @Inject
    PeopleActs people;

    private String token = "";

    @BeforeEach
    void makeToken() {
        people.ensureAccount(EDDA.account(), EDDA.name(), EDDA.roles(), PASSWORD);
        token = people.createToken(EDDA, "edges", 1).secret();
    }

    private RequestSpecification api() {
        return given().header("Authorization", "Bearer " + token).contentType("application/json");
    }

    private Response opens(String report) {
        return api().body(report.replace('\'', '"')).post("/api/tickets");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'title':'Edge' | 'title':'Edge','titel':'x' | titel",
                "'title':'Edge' | 'title':'Edge','title':'Other' | body",
                "'title':'Edge' | 'title':7 | title",
                "'impact':'ONE_PERSON' | 'impact':0 | impact",
                "'urgency':'HINDERED' | 'urgency':'HINDERED','queued':'true' | queued",
                "'urgency':'HINDERED' | 'urgency':'HINDERED','queued':1 | queued"
            },
            quoteCharacter = '~')
    void bodyThatIsNotStrictlyRight_is400_withItsPlace(String right, String wrong, String field) {
        Response answer = opens(REPORT.replace(right, wrong));
        assertEquals(400, answer.statusCode(), answer.asString());
        assertEquals(
                "urn:benchtrail:problem:malformed-request", answer.jsonPath().getString("type"));
        assertEquals(List.of(field), answer.jsonPath().getList("errors.field"));
    }

    @Test
    void somethingAfterTheEnd_is400() {
        assertEquals(400, opens(REPORT + "{}").statusCode());
        assertEquals(201, opens(REPORT).statusCode());
    }

    @Test
    void nullInAList_is400_withItsPlace() {
        Response answer = api().body("{\"roles\":[null]}").put("/api/people/" + EDDA.account() + "/roles");
        assertEquals(400, answer.statusCode(), answer.asString());
        assertTrue(answer.jsonPath().getString("errors[0].field").startsWith("roles"), answer.asString());
    }

    @Test
    void withoutIfMatch_is428() {
        String number = opens(REPORT).jsonPath().getString("number");
        Response answer = api().body("{\"kind\":\"advanced\"}").post("/api/tickets/" + number + "/acts");
        assertEquals(428, answer.statusCode());
        assertEquals("urn:benchtrail:problem:version-needed", answer.jsonPath().getString("type"));
    }

    @Test
    void parameterThatNobodyReads_is400_andSoIsOneThatDoesNotFit() {
        Response unknown = api().get("/api/tickets?standng=CLOSED&size=3");
        assertEquals(400, unknown.statusCode());
        assertEquals(List.of("standng"), unknown.jsonPath().getList("errors.field"));
        assertEquals(400, api().get("/api/tickets?size=many").statusCode());
        assertEquals(400, api().get("/api/tickets?standing=AJAR").statusCode());
        assertEquals(200, api().get("/api/tickets?standing=CLOSED&size=3").statusCode());
    }

    @Test
    void pathWithParametersOfItsOwn_is400() {
        assertEquals(
                400, api().urlEncodingEnabled(false).get("/api/tickets;a=b").statusCode());
        assertEquals(400, api().urlEncodingEnabled(false).get("/api;/people").statusCode());
    }
}
