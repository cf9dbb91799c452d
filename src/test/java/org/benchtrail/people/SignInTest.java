package org.benchtrail.people;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.Cookie;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class SignInTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor ADMINISTRATOR = new Actor("boss", "Boss", Set.of(Role.ADMINISTRATOR));

    @Inject
    PeopleActs acts;

    @Inject
    Tries tries;

    @Inject
    MovedClock clock;

    @AfterEach
    void putClockRight() {
        clock.putRight();
    }

    private String login;

    @BeforeEach
    void account() {
        login = "p" + UUID.randomUUID().toString().substring(0, 8);
        acts.ensureAccount("keeper", "Keeper", Set.of(Role.ADMINISTRATOR), PASSWORD);
        acts.ensureAccount(login, "Pat Example", Set.of(Role.TECHNICIAN), PASSWORD);
    }

    private Response tryIn(String typedLogin, String password, String to) {
        Browser browser = new Browser();
        browser.get("/sign-in");
        return browser.post("/sign-in", Map.of("login", typedLogin, "password", password, "to", to));
    }

    private Response tryIn(String password) {
        return tryIn(login, password, "/me");
    }

    @Test
    void rightPassword_goesToThePageAskedFor() {
        Response answer = tryIn(login, PASSWORD, "/me?x=1");
        assertEquals(303, answer.statusCode());
        assertTrue(answer.header("Location").endsWith("/me?x=1"), answer.header("Location"));
        Browser browser = Browser.signedIn(login, PASSWORD);
        assertTrue(browser.get("/me").asString().contains("Pat Example"));
    }

    @Test
    void login_isTakenInAnyCaseAndWithBlanksAround() {
        assertEquals(
                303,
                tryIn(" " + login.toUpperCase(java.util.Locale.ROOT) + " ", PASSWORD, "/")
                        .statusCode());
    }

    @Test
    void wrongPasswordAndUnknownLogin_getTheSameSentenceAndKeepTheLogin() {
        Response wrong = tryIn("not the password");
        Response unknown = tryIn("nobody-here", PASSWORD, "/");
        for (Response refused : List.of(wrong, unknown)) {
            assertEquals(401, refused.statusCode());
            assertTrue(refused.asString().contains(SignIn.REFUSED));
            assertTrue(refused.detailedCookies().get(Sessions.COOKIE) == null);
        }
        assertTrue(wrong.asString().contains("value=\"" + login + "\""));
        assertFalse(wrong.asString().contains("not the password"));
    }

    @Test
    void typedLogin_isEscaped() {
        Response answer = tryIn("<script>alert(1)</script>", PASSWORD, "/");
        assertFalse(answer.asString().contains("<script>alert"));
    }

    @Test
    void fiveWrongTries_lockUntilTheTimeHasPassed() {
        for (int i = 0; i < 5; i++) {
            assertEquals(401, tryIn("wrong password " + i).statusCode());
        }
        Response locked = tryIn(PASSWORD);
        assertEquals(401, locked.statusCode());
        assertTrue(locked.asString().contains(SignIn.REFUSED));
        clock.putForward(Duration.ofMinutes(5));
        assertEquals(303, tryIn(PASSWORD).statusCode());
    }

    @Test
    void fourWrongTries_doNotLock_andARightOneForgetsThem() {
        for (int round = 0; round < 2; round++) {
            for (int i = 0; i < 4; i++) {
                tryIn("wrong password");
            }
            assertEquals(303, tryIn(PASSWORD).statusCode());
        }
    }

    /** Addresses of others by the header that a proxy sets, which the test run trusts. */
    private Response tryFrom(String address, String typedLogin, String password, Browser browser) {
        browser.get("/sign-in");
        return browser.request()
                .header("X-Forwarded-For", address)
                .formParams(Map.of(
                        "login", typedLogin, "password", password, "to", "/me", "csrf-token", browser.formToken()))
                .post("/sign-in");
    }

    @Test
    void strangerWhoTriesForEver_locksOutNobodyElse() {
        Browser own = Browser.signedIn(login, PASSWORD);
        for (int i = 0; i < 8; i++) {
            tryFrom("198.51.100.9", login, "wrong password " + i, new Browser());
        }
        assertEquals(
                401, tryFrom("198.51.100.9", login, PASSWORD, new Browser()).statusCode(), "no more from there");
        assertEquals(
                303, tryFrom("198.51.100.10", login, PASSWORD, new Browser()).statusCode(), "from elsewhere");
        own.get("/sign-in");
        assertEquals(303, tryFrom("198.51.100.9", login, PASSWORD, own).statusCode(), "in a browser of one's own");
    }

    @Test
    void knownBrowser_hasTriesOfItsOwn_andNoMoreThanThose() {
        Browser own = Browser.signedIn(login, PASSWORD);
        for (int i = 0; i < 5; i++) {
            assertEquals(
                    401,
                    tryFrom("198.51.100.11", login, "wrong password " + i, own).statusCode());
        }
        assertEquals(401, tryFrom("198.51.100.11", login, PASSWORD, own).statusCode());
        acts.ensureAccount(login + "b", "Bo", Set.of(Role.TECHNICIAN), PASSWORD);
        assertEquals(303, tryFrom("198.51.100.11", login + "b", PASSWORD, own).statusCode(), "another's account");
    }

    @Test
    void accountTriedFromEverywhere_isShutForStrangers_openInItsOwnBrowsers() {
        Browser own = Browser.signedIn(login, PASSWORD);
        Tries.Of last = tries.signIn(login, "203.0.113.200", Optional.empty());
        for (int i = 0; i < 100; i++) {
            assertTrue(tries.take(tries.signIn(login, "203.0.113." + i, Optional.empty())) >= 0, "try " + i);
        }
        assertEquals(-1, tries.take(last));
        assertEquals(
                401, tryFrom("203.0.113.201", login, PASSWORD, new Browser()).statusCode());
        assertEquals(303, tryFrom("203.0.113.201", login, PASSWORD, own).statusCode());
    }

    @Test
    void networkOfAnIpv6Address_isTakenAsOne() {
        assertEquals(Tries.network("2001:db8:1:2:3:4:5:6"), Tries.network("2001:db8:1:2::9"));
        assertNotEquals(Tries.network("2001:db8:1:2::9"), Tries.network("2001:db8:1:3::9"));
        assertEquals("192.0.2.1", Tries.network("192.0.2.1"));
    }

    @Test
    void longPassword_isNotCutOff() {
        String seventyTwo = "x1 qv9 Rundkiel-Tresse 41 ahorn plinth wombat 77 Gischt okarina 5 zebu l".substring(0, 72);
        acts.ensureAccount(login + "l", "Lo", Set.of(Role.TECHNICIAN), seventyTwo);
        assertEquals(401, tryIn(login + "l", seventyTwo + "y", "/").statusCode());
        assertEquals(303, tryIn(login + "l", seventyTwo, "/").statusCode());
    }

    @Test
    void closedAccount_isRefusedAtOnceAlsoByItsCookie() {
        Browser browser = Browser.signedIn(login, PASSWORD);
        acts.deactivate(ADMINISTRATOR, login);
        Response answer = browser.get("/me");
        assertEquals(303, answer.statusCode());
        assertTrue(answer.header("Location").endsWith("/sign-in?to=%2Fme"), answer.header("Location"));
        assertEquals(401, tryIn(PASSWORD).statusCode());
        acts.reactivate(ADMINISTRATOR, login);
        assertEquals(303, browser.get("/me").statusCode(), "the old cookie must stay dead");
        assertEquals(303, tryIn(PASSWORD).statusCode());
    }

    @Test
    void changedRoles_takeEffectAtOnce() {
        Browser browser = Browser.signedIn(login, PASSWORD);
        assertEquals(403, browser.get("/people").statusCode());
        acts.setRoles(ADMINISTRATOR, login, Set.of(Role.ADMINISTRATOR));
        assertEquals(303, browser.get("/people").statusCode(), "a change of roles ends every sign-in");
        browser = Browser.signedIn(login, PASSWORD);
        assertEquals(200, browser.get("/people").statusCode());
        acts.setRoles(ADMINISTRATOR, login, Set.of(Role.TECHNICIAN));
        assertEquals(303, browser.get("/people").statusCode());
        assertEquals(403, Browser.signedIn(login, PASSWORD).get("/people").statusCode());
    }

    @Test
    void newPassword_endsOtherSignInsAndKeepsThisOne() {
        Browser here = Browser.signedIn(login, PASSWORD);
        Browser elsewhere = Browser.signedIn(login, PASSWORD);
        here.get("/me");
        Response changed = here.post("/me/password", Map.of("present", PASSWORD, "password", "another long password"));
        assertEquals(200, changed.statusCode());
        assertEquals(200, here.get("/me").statusCode());
        assertEquals(303, elsewhere.get("/me").statusCode());
        assertEquals(401, tryIn(PASSWORD).statusCode());
        assertEquals(303, tryIn("another long password").statusCode());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "https://elsewhere.example/",
                "//elsewhere.example/",
                "/\\elsewhere.example",
                "\\\\elsewhere.example",
                "javascript:alert(1)",
                "/ok\r\nSet-Cookie: a=b",
                "",
                "me",
                "/\t/elsewhere.example"
            })
    void foreignAddress_isNotGoneTo(String to) {
        Response answer = tryIn(login, PASSWORD, to);
        assertEquals(303, answer.statusCode());
        String location = answer.header("Location");
        assertTrue(location.matches("http://(localhost|127\\.0\\.0\\.1):\\d+/"), location);
    }

    @Test
    void strangerIsSentToSignIn_andTheFormRemembersThePage() {
        Response answer = new Browser().get("/people?search=a%26b");
        assertEquals(303, answer.statusCode());
        assertTrue(answer.header("Location").endsWith("/sign-in?to=%2Fpeople%3Fsearch%3Da%2526b"));
        Response form = new Browser().get("/sign-in?to=%2Fpeople%3Fsearch%3Da%2526b");
        assertTrue(form.asString().contains("name=\"to\" value=\"/people?search=a%26b\""), form.asString());
    }

    @Test
    void cookie_isOutOfReachOfScriptsAndForeignForms() {
        Cookie cookie = tryIn(PASSWORD).detailedCookies().get(Sessions.COOKIE);
        assertTrue(cookie.isHttpOnly());
        assertEquals("Lax", cookie.getSameSite());
        assertEquals("/", cookie.getPath());
        assertEquals(-1, cookie.getMaxAge());
        assertFalse(cookie.isSecured(), "plain HTTP in this test");
        assertFalse(cookie.getValue().contains(login));
    }

    /** The test run trusts the header that a proxy sets; a server does so only when configured to. */
    @Test
    void cookies_behindTls_areSecure() {
        Browser browser = new Browser();
        browser.get("/sign-in");
        Response answer = browser.request()
                .header("X-Forwarded-Proto", "https")
                .formParams(Map.of("login", login, "password", PASSWORD, "csrf-token", browser.formToken()))
                .post("/sign-in");
        assertEquals(303, answer.statusCode());
        assertTrue(answer.detailedCookies().get("__Host-" + Sessions.COOKIE).isSecured());
        assertEquals(
                "/", answer.detailedCookies().get("__Host-" + Sessions.COOKIE).getPath());
        assertTrue(answer.header("Strict-Transport-Security").startsWith("max-age=63072000"));
        assertTrue(answer.detailedCookies().get("csrf-token").isSecured());
    }

    private Response sendsForm(String session, String token) {
        return given().redirects()
                .follow(false)
                .cookie(Sessions.COOKIE, session)
                .cookie("csrf-token", token)
                .formParams(Map.of("zone", "Europe/Paris", "csrf-token", token))
                .post("/me/zone");
    }

    @Test
    void formToken_isOfThisSignInAlone_whateverTheCookieSays() {
        Browser browser = Browser.signedIn(login, PASSWORD);
        String session = browser.cookie(Sessions.COOKIE);
        String planted = "A".repeat(22);
        assertEquals(400, sendsForm(session, planted).statusCode());
        assertEquals(
                400,
                sendsForm(session, Browser.signedIn(login, PASSWORD).formToken())
                        .statusCode());
        assertEquals(303, sendsForm(session, browser.formToken()).statusCode());
        Response page = given().cookie(Sessions.COOKIE, session)
                .cookie("csrf-token", planted)
                .get("/me");
        assertEquals(browser.formToken(), page.cookie("csrf-token"));
        assertFalse(page.asString().contains(planted));
    }

    /** The sign-in's cookie is gone, and the page that was open is not; a token that was planted is nobody's. */
    @Test
    void formThatWasFilledInBefore_canBeSent_whereTheSignInWasLost_andByNobodyElse() {
        String token = Browser.signedIn(login, PASSWORD).formToken();
        assertEquals(token, tokenAfterSigningIn(login, token));
        String other = login + "x";
        acts.ensureAccount(other, "Other", Set.of(Role.TECHNICIAN), PASSWORD);
        assertNotEquals(token, tokenAfterSigningIn(other, token));
        String planted = "A".repeat(22);
        assertNotEquals(planted, tokenAfterSigningIn(login, planted));
    }

    private static String tokenAfterSigningIn(String login, String held) {
        Response signedIn = given().redirects()
                .follow(false)
                .cookie("csrf-token", held)
                .contentType("application/x-www-form-urlencoded")
                .formParams(Map.of("login", login, "password", PASSWORD, "to", "/me", "csrf-token", held))
                .post("/sign-in");
        return given().cookie(Sessions.COOKIE, signedIn.cookie(Sessions.COOKIE))
                .get("/keys")
                .cookie("csrf-token");
    }

    @Test
    void formThatWasFilledInBefore_canBeSent_afterSigningInAgainInTheSameBrowser() {
        Browser browser = Browser.signedIn(login, PASSWORD);
        String token = browser.formToken();
        browser.get("/sign-in");
        browser.post("/sign-in", Map.of("login", login, "password", PASSWORD, "to", "/me"));
        browser.get("/keys");
        assertEquals(token, browser.formToken());
        browser.post("/sign-out", Map.of());
        browser.get("/sign-in");
        browser.post("/sign-in", Map.of("login", login, "password", PASSWORD, "to", "/me"));
        browser.get("/keys");
        assertNotEquals(token, browser.formToken());
    }

    @Test
    void forgedCookie_isNobody() {
        Browser browser = Browser.signedIn(login, PASSWORD);
        String good = browser.cookie(Sessions.COOKIE);
        char other = good.charAt(30) == 'A' ? 'B' : 'A';
        String forged = good.substring(0, 30) + other + good.substring(31);
        assertEquals(
                200,
                io.restassured.RestAssured.given()
                        .cookie(Sessions.COOKIE, good)
                        .get("/me")
                        .statusCode());
        Response answer = io.restassured.RestAssured.given()
                .redirects()
                .follow(false)
                .cookie(Sessions.COOKIE, forged)
                .get("/me");
        assertEquals(303, answer.statusCode());
    }

    @Test
    void signOut_endsIt() {
        Browser browser = Browser.signedIn(login, PASSWORD);
        browser.get("/me");
        assertEquals(303, browser.post("/sign-out", Map.of()).statusCode());
        assertEquals("", browser.cookie(Sessions.COOKIE));
        assertEquals(303, browser.get("/me").statusCode());
    }
}
