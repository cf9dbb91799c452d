package org.benchtrail.people;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class TokenTest {
    private static final String PASSWORD = "a long enough password";

    @Inject
    PeopleActs acts;

    @Inject
    RequestRate rate;

    private Actor owner;
    private NewToken token;

    @BeforeEach
    void token() {
        String login = "t" + UUID.randomUUID().toString().substring(0, 8);
        acts.ensureAccount("keeper", "Keeper", Set.of(Role.ADMINISTRATOR), PASSWORD);
        acts.ensureAccount(login, "Tam Example", Set.of(Role.TECHNICIAN), PASSWORD);
        owner = new Actor(login, "Tam Example", Set.of(Role.TECHNICIAN));
        token = acts.createToken(owner, "script", null);
    }

    private static Response me(String authorization) {
        return given().header("Authorization", authorization).get("/api/me");
    }

    private Response me() {
        return me("Bearer " + token.secret());
    }

    private static void assertRefused(Response answer) {
        assertEquals(401, answer.statusCode());
        assertEquals("application/problem+json", answer.contentType().split(";")[0]);
        assertEquals("urn:benchtrail:problem:not-signed-in", answer.jsonPath().getString("type"));
        assertTrue(answer.header("WWW-Authenticate").startsWith("Bearer realm=\"benchtrail\""));
        assertEquals("no-store", answer.header("Cache-Control"));
    }

    @Test
    void goodToken_isItsOwner() {
        assertEquals(owner.account(), me().jsonPath().getString("login"));
        assertEquals(owner.account(), me("bearer  " + token.secret()).jsonPath().getString("login"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "Bearer",
                "Bearer ",
                "Bearer bt_",
                "Bearer bt_AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA",
                "Basic a2VlcGVyOng="
            })
    void anythingElse_isRefused(String authorization) {
        assertRefused(me(authorization));
    }

    @Test
    void program_isToldHowManyRequestsAreLeft_andAPageIsNot() {
        Response one = me();
        assertEquals("\"requests\";q=1000000;w=60", one.header("RateLimit-Policy"));
        assertTrue(one.header("RateLimit").matches("\"requests\";r=\\d+;t=\\d+"), one.header("RateLimit"));
        assertNull(given().get("/api/me").header("RateLimit"));
        assertNull(Browser.signedIn(owner.account(), PASSWORD).get("/me").header("RateLimit"));
    }

    @Test
    void whoAsksTooOften_isToldWhenToAskAgain_andOthersAreAnswered() {
        AtomicBoolean enough = new AtomicBoolean();
        Thread asking = new Thread(() -> {
            while (!enough.get()) {
                rate.take(owner.account());
            }
        });
        asking.start();
        try {
            Response refused = Stream.generate(this::me)
                    .limit(2_000)
                    .filter(answer -> answer.statusCode() != 200)
                    .findFirst()
                    .orElseThrow();
            assertEquals(429, refused.statusCode());
            assertEquals("1", refused.header("Retry-After"));
            assertEquals(
                    "urn:benchtrail:problem:too-many-requests",
                    refused.jsonPath().getString("type"));
            assertTrue(refused.header("RateLimit").startsWith("\"requests\";r=0;"), refused.header("RateLimit"));
            NewToken other =
                    acts.createToken(new Actor("keeper", "Keeper", Set.of(Role.ADMINISTRATOR)), "script", null);
            assertEquals(200, me("Bearer " + other.secret()).statusCode());
        } finally {
            enough.set(true);
        }
    }

    @Test
    void noToken_isRefused() {
        assertRefused(given().get("/api/me"));
        assertRefused(given().contentType("application/json").body("{}").put("/api/me/zone"));
    }

    @Test
    void tokenOfAnotherScheme_isRefused() {
        assertRefused(me("Basic " + token.secret()));
    }

    @Test
    void expiredToken_isRefused() {
        TestDatabase.run(
                "update api_token set expires_at = now() where id = ?",
                token.token().id());
        assertRefused(me());
    }

    @Test
    void revokedToken_isRefused() {
        assertEquals(
                204,
                given().header("Authorization", "Bearer " + token.secret())
                        .delete("/api/me/tokens/" + token.token().id())
                        .statusCode());
        assertRefused(me());
    }

    @Test
    void tokenOfAClosedAccount_isRefused() {
        acts.deactivate(new Actor("keeper", "Keeper", Set.of(Role.ADMINISTRATOR)), owner.account());
        assertRefused(me());
    }

    @Test
    void cookie_isNothingAtTheApi() {
        Browser browser = Browser.signedIn(owner.account(), PASSWORD);
        assertEquals(200, browser.get("/me").statusCode());
        assertRefused(browser.get("/api/me"));
    }

    @Test
    void token_isNothingAtThePages() {
        Response answer = given().redirects()
                .follow(false)
                .header("Authorization", "Bearer " + token.secret())
                .get("/me");
        assertEquals(303, answer.statusCode());
        assertTrue(answer.header("Location").contains("/sign-in"));
    }

    @Test
    void pathsThatOnlyLookLikeTheApi_arePages() {
        Response answer = given().redirects()
                .follow(false)
                .urlEncodingEnabled(false)
                .header("Authorization", "Bearer " + token.secret())
                .get("/api/../me");
        assertEquals(303, answer.statusCode());
    }

    @Test
    void lastUse_isNoted() {
        me();
        assertTrue(me().statusCode() == 200);
        assertTrue(acts.ownTokens(owner).get(0).lastUsed() != null);
    }

    @Test
    void onlyTheHashIsStored() throws java.sql.SQLException {
        try (var connection = TestDatabase.owner();
                var query = connection.prepareStatement("select t::text from api_token t where id = ?")) {
            query.setLong(1, token.token().id());
            var row = query.executeQuery();
            assertTrue(row.next());
            assertFalse(row.getString(1).contains(token.secret().substring("secret-token:bt_".length())));
        }
    }

    @Test
    void page_showsTheSecretOnce_andInNoAddress() {
        Browser browser = Browser.signedIn(owner.account(), PASSWORD);
        browser.get("/me");
        Response made = browser.post("/me/tokens", mint(PASSWORD, "READ"));
        assertEquals(200, made.statusCode());
        Matcher secret = Pattern.compile("secret-token:bt_[A-Za-z0-9_-]{43}").matcher(made.asString());
        assertTrue(secret.find());
        assertEquals("no-store", made.header("Cache-Control"));
        assertEquals(200, me("Bearer " + secret.group()).statusCode());
        assertFalse(browser.get("/me").asString().contains(secret.group()));
        long id = acts.ownTokens(owner).get(0).id();
        assertEquals(
                303, browser.post("/me/tokens/" + id + "/revocation", Map.of()).statusCode());
        assertRefused(me("Bearer " + secret.group()));
    }

    private static Map<String, String> mint(String password, String scope) {
        return Map.of("name", "from the page", "days", "30", "present", password, "scope", scope);
    }

    @Test
    void noTokenMakesAnother_andTheListHoldsNoSecret() {
        Response made = given().header("Authorization", "Bearer " + token.secret())
                .contentType("application/json")
                .body(Map.of("name", "second", "days", 2))
                .post("/api/me/tokens");
        assertEquals(405, made.statusCode());
        assertEquals(1, acts.ownTokens(owner).size());
        Response listed =
                given().header("Authorization", "Bearer " + token.secret()).get("/api/me/tokens");
        assertEquals("script", listed.jsonPath().getString("[0].name"));
        assertFalse(listed.asString().contains("bt_"));
    }

    @Test
    void page_asksForThePasswordAgain_andForWhatTheTokenMay() {
        Browser browser = Browser.signedIn(owner.account(), PASSWORD);
        browser.get("/me");
        assertEquals(
                422,
                browser.post("/me/tokens", mint("not the password", "READ")).statusCode());
        assertEquals(
                422, browser.post("/me/tokens", mint(PASSWORD, "EVERYTHING")).statusCode());
        assertEquals(1, acts.ownTokens(owner).size());
    }

    @Test
    void withoutItsPrefix_itIsTakenAsWell() {
        assertEquals(
                200,
                me("Bearer " + token.secret().substring("secret-token:".length()))
                        .statusCode());
    }

    private static Response send(NewToken by, String method, String path, String body) {
        return given().header("Authorization", "Bearer " + by.secret())
                .contentType("application/json")
                .body(body)
                .request(method, path);
    }

    @Test
    void scopes_boundWhatAProgramDoes_andNeverGiveMore() {
        Actor both = new Actor("scope-bo", "Bo", Set.of(Role.TECHNICIAN, Role.ADMINISTRATOR));
        acts.ensureAccount(both.account(), both.name(), both.roles(), PASSWORD);
        NewToken read = acts.createToken(both, "r", 1, TokenScope.READ);
        NewToken act = acts.createToken(both, "a", 1, TokenScope.ACT);
        NewToken all = acts.createToken(both, "all", 1, TokenScope.ADMINISTER);
        NewToken log = acts.createToken(both, "follows the log", 1, TokenScope.LOG);
        assertEquals(403, send(log, "GET", "/api/me", "").statusCode(), "nothing but the log");
        assertEquals(403, send(log, "PUT", "/api/me/zone", "{}").statusCode());
        for (NewToken one : List.of(log, read, act, all)) {
            assertEquals(
                    404, send(one, "GET", "/log/tile/9/000", "").statusCode(), "the log, where there is no such tile");
        }
        String zone = "{\"zone\":\"UTC\"}";
        assertEquals(200, send(read, "GET", "/api/people", "").statusCode(), "an administrator reads");
        assertEquals(403, send(read, "PUT", "/api/me/zone", zone).statusCode());
        assertEquals(403, send(read, "POST", "/api/tickets", "{ not even JSON").statusCode(), "before it is parsed");
        assertEquals(200, send(act, "PUT", "/api/me/zone", zone).statusCode());
        String active = "{\"active\":true}";
        assertEquals(
                403, send(act, "PUT", "/api/people/scope-bo/active", active).statusCode());
        assertEquals(
                200, send(all, "PUT", "/api/people/scope-bo/active", active).statusCode());
        NewToken more = acts.createToken(owner, "more than its owner", 1, TokenScope.ADMINISTER);
        assertEquals(
                403, send(more, "PUT", "/api/people/scope-bo/active", active).statusCode());
    }

    @Test
    void passwordReset_andReopening_bringNoTokenBack() {
        Actor keeper = new Actor("keeper", "Keeper", Set.of(Role.ADMINISTRATOR));
        acts.resetPassword(keeper, owner.account(), "another long password");
        assertRefused(me());
        token = acts.createToken(owner, "second", null);
        acts.deactivate(keeper, owner.account());
        acts.reactivate(keeper, owner.account());
        assertRefused(me());
    }
}
