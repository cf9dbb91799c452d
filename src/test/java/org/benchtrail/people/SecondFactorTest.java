package org.benchtrail.people;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.UUID;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class SecondFactorTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor KEEPER = new Actor("keeper", "Keeper", Set.of(Role.ADMINISTRATOR));

    @Inject
    PeopleActs acts;

    @Inject
    SecondFactors factors;

    @Inject
    MovedClock clock;

    private String login;
    private Browser browser;

    @BeforeEach
    void account() {
        login = "f" + UUID.randomUUID().toString().substring(0, 8);
        acts.ensureAccount("keeper", "Keeper", KEEPER.roles(), PASSWORD);
        acts.ensureAccount(login, "Fay", Set.of(Role.TECHNICIAN), PASSWORD);
        browser = Browser.signedIn(login, PASSWORD);
        browser.get("/me/second-factor");
    }

    @AfterEach
    void putClockRight() {
        clock.putRight();
    }

    /** RFC 6238, appendix B, with its last six digits. */
    @ParameterizedTest
    @CsvSource({"59,287082", "1111111109,081804", "1111111111,050471", "1234567890,005924", "2000000000,279037"})
    void codes_areThoseOfTheStandard(long second, String code) {
        byte[] secret = "12345678901234567890".getBytes(StandardCharsets.US_ASCII);
        Instant at = Instant.ofEpochSecond(second);
        assertEquals(OptionalLong.of(second / 30), SecondFactors.step(secret, code, at));
        assertTrue(SecondFactors.step(secret, code, at.plusSeconds(30)).isPresent(), "half a minute late");
        assertTrue(SecondFactors.step(secret, code, at.plusSeconds(60)).isEmpty());
        assertTrue(SecondFactors.step(secret, code, at.minusSeconds(60)).isEmpty());
    }

    /** RFC 4648, section 10. */
    @ParameterizedTest
    @CsvSource({"f,MY", "fo,MZXQ", "foo,MZXW6", "foob,MZXW6YQ", "fooba,MZXW6YTB", "foobar,MZXW6YTBOI"})
    void keys_areTypedAsTheStandardHasIt(String bytes, String typed) {
        assertEquals(typed, Base32.of(bytes.getBytes(StandardCharsets.US_ASCII)));
    }

    /** Answers with the codes for when the device is lost. */
    private List<String> turnOn() {
        assertEquals(
                303,
                browser.post("/me/second-factor/begin", Map.of("present", PASSWORD))
                        .statusCode());
        Response on = browser.post("/me/second-factor/confirm", Map.of("code", generated()));
        assertEquals(200, on.statusCode(), on.asString());
        return Pattern.compile("<code>([a-z2-7]{16})</code>")
                .matcher(on.asString())
                .results()
                .map((MatchResult found) -> found.group(1))
                .toList();
    }

    private String generated() {
        return SecondFactors.code(factors.of(login).orElseThrow().secret(), clock.instant());
    }

    private static Response password(Browser in, String login) {
        in.get("/sign-in");
        return in.post("/sign-in", Map.of("login", login, "password", PASSWORD, "to", "/me"));
    }

    private static Response give(Browser in, String code) {
        return in.post("/sign-in/code", Map.of("code", code, "to", "/me"));
    }

    @Test
    void passwordAlone_letsNobodyIn_withTheCodeOnce() {
        turnOn();
        clock.putForward(Duration.ofSeconds(31));
        Browser other = new Browser();
        assertEquals(200, password(other, login).statusCode());
        assertEquals(303, other.get("/me").statusCode(), "nobody is signed in by the password");
        String half = other.cookie(Sessions.COOKIE);
        String code = generated();
        assertEquals(
                401, give(other, code.equals("000000") ? "000001" : "000000").statusCode());
        assertEquals(303, give(other, code).statusCode());
        assertEquals(200, other.get("/me").statusCode());
        assertFalse(half.equals(other.cookie(Sessions.COOKIE)), "another secret than before the code");
        Browser again = new Browser();
        password(again, login);
        assertEquals(401, give(again, code).statusCode(), "no code is taken twice");
    }

    @Test
    void keptCodes_letInOnceEach() {
        List<String> kept = turnOn();
        assertEquals(10, kept.size());
        for (int time = 0; time < 2; time++) {
            Browser other = new Browser();
            password(other, login);
            assertEquals(time == 0 ? 303 : 401, give(other, kept.get(3)).statusCode());
        }
    }

    @Test
    void wrongCodes_areCountedLikePasswords_andAHalfSignInEnds() {
        turnOn();
        clock.putForward(Duration.ofSeconds(31));
        Browser other = new Browser();
        password(other, login);
        for (int i = 0; i < 5; i++) {
            assertEquals(401, give(other, "abc" + i).statusCode());
        }
        assertEquals(401, give(other, generated()).statusCode());
        clock.putForward(Duration.ofMinutes(6));
        Response late = give(other, generated());
        assertEquals(401, late.statusCode());
        assertTrue(late.asString().contains("took too long"), late.asString());
    }

    @Test
    void begun_butNotConfirmed_asksForNothing_andTakesThePassword() {
        assertEquals(
                422,
                browser.post("/me/second-factor/begin", Map.of("present", "not it"))
                        .statusCode());
        browser.post("/me/second-factor/begin", Map.of("present", PASSWORD));
        assertEquals(
                422,
                browser.post("/me/second-factor/confirm", Map.of("code", "x")).statusCode());
        assertEquals(303, password(new Browser(), login).statusCode());
    }

    @Test
    void turnedOff_withThePassword_orByAnAdministratorWhoVouches() {
        turnOn();
        assertEquals(
                422,
                browser.post("/me/second-factor/end", Map.of("present", "not it"))
                        .statusCode());
        assertEquals(
                303,
                browser.post("/me/second-factor/end", Map.of("present", PASSWORD))
                        .statusCode());
        assertEquals(303, password(new Browser(), login).statusCode());
        turnOn();
        acts.dropSecondFactor(KEEPER, login);
        assertEquals(303, browser.get("/me").statusCode(), "every sign-in ends");
        assertEquals(303, password(new Browser(), login).statusCode());
    }
}
