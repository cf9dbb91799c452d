package org.benchtrail.people;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.TicketQueries;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** One's own account: name, sign-ins, absence; and what an administrator does about them. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class OwnPageTest {
    private static final String PASSWORD = "a long enough password";
    private static final String MADE = "(?s).*/me/sessions/(\\d+)/end.*";

    @Inject
    PeopleActs acts;

    @Inject
    Absences absences;

    @Inject
    Directory directory;

    @Inject
    MovedClock clock;

    @Inject
    TicketActs tickets;

    @Inject
    TicketQueries sheets;

    private final String login = "o" + UUID.randomUUID().toString().substring(0, 8);
    private final String other = login + "-b";
    private final String third = login + "-c";

    @BeforeEach
    void accounts() {
        acts.ensureAccount(login, "Nell Hart", Set.of(Role.TECHNICIAN), PASSWORD);
        acts.ensureAccount(other, "Omar Bell", Set.of(Role.TECHNICIAN, Role.MENTOR), PASSWORD);
        acts.ensureAccount(third, "Tess Cole", Set.of(Role.TRAINEE), PASSWORD);
        acts.ensureAccount("keeper", "Keeper", Set.of(Role.ADMINISTRATOR), PASSWORD);
        acts.ensureAccount("keeper-sue", "Sue", Set.of(Role.ADMINISTRATOR, Role.SUPERVISOR), PASSWORD);
    }

    @AfterEach
    void clockRight() {
        clock.putRight();
    }

    private static Browser browser(String account) {
        Browser browser = Browser.signedIn(account, PASSWORD);
        browser.get("/me");
        return browser;
    }

    private static int withCookie(String cookie) {
        return given().redirects()
                .follow(false)
                .cookie(Sessions.COOKIE, cookie)
                .get("/me")
                .statusCode();
    }

    // ---- what is kept

    @Test
    void allThatIsKept_isTakenAway_withoutSecretsAndOthersNames() {
        acts.createToken(new Actor(login, "Nell Hart", Set.of(Role.TECHNICIAN)), "my meter", 1);
        acts.setRoles(new Actor("keeper", "Keeper", Set.of(Role.ADMINISTRATOR)), login, Set.of(Role.MENTOR));
        Browser browser = browser(login);
        Response data = browser.get("/me/data");
        assertEquals(200, data.statusCode());
        assertEquals("Nell Hart", data.jsonPath().getString("account.name"));
        assertEquals("my meter", data.jsonPath().getString("tokens[0].name"));
        assertEquals(1, data.jsonPath().getList("signIns").size());
        assertTrue(data.jsonPath().getList("events.byOneself").contains(false));
        String all = data.asString();
        assertFalse(all.contains("keeper") || all.contains("hash") || all.contains("$2"), all);
        assertTrue(browser.get("/me").asString().contains("href=\"/me/data\""));
    }

    // ---- sign-ins

    @Test
    void signOut_endsTheSignInItself_alsoForACopyOfItsCookie() {
        Browser browser = browser(login);
        String copy = browser.cookie(Sessions.COOKIE);
        assertEquals(200, withCookie(copy));
        browser.post("/sign-out", Map.of());
        assertEquals(303, withCookie(copy));
    }

    @Test
    void anotherSignIn_isListed_andEnded_byItsOwnerOnly() {
        Browser here = browser(login);
        String elsewhere = browser(login).cookie(Sessions.COOKIE);
        String page = here.get("/me").asString();
        String id = page.replaceAll(MADE, "$1");
        assertEquals(1, page.split("/me/sessions/\\d+/end", -1).length - 1, page);
        assertEquals(
                404,
                browser(other).post("/me/sessions/" + id + "/end", Map.of()).statusCode());
        assertEquals(200, withCookie(elsewhere));
        assertEquals(303, here.post("/me/sessions/" + id + "/end", Map.of()).statusCode());
        assertEquals(303, withCookie(elsewhere));
        assertEquals(200, here.get("/me").statusCode());
    }

    @Test
    void allOthers_areEndedAtOnce_andByAnAdministratorEveryOne() {
        Browser here = browser(login);
        List<String> others =
                List.of(browser(login).cookie(Sessions.COOKIE), browser(login).cookie(Sessions.COOKIE));
        here.post("/me/sessions/end-others", Map.of());
        others.forEach(cookie -> assertEquals(303, withCookie(cookie)));
        assertEquals(200, here.get("/me").statusCode());
        Browser keeper = browser("keeper");
        keeper.post("/people/" + login + "/sessions/end", Map.of());
        assertEquals(303, here.get("/me").statusCode());
        assertEquals(200, keeper.get("/me").statusCode());
    }

    @Test
    void aSignIn_thatIsNotUsed_ends_andNoneLastsForEver() {
        Browser idle = browser(login);
        clock.putForward(Duration.ofMinutes(29));
        assertEquals(200, idle.get("/me").statusCode());
        clock.putForward(Duration.ofMinutes(29));
        assertEquals(200, idle.get("/me").statusCode(), "its use was seen");
        clock.putForward(Duration.ofMinutes(31));
        assertEquals(303, idle.get("/me").statusCode());
        Browser busy = browser(login);
        for (int i = 0; i < 28; i++) {
            clock.putForward(Duration.ofMinutes(25));
            assertEquals(200, busy.get("/me").statusCode(), "after " + (i + 1) * 25 + " min");
        }
        clock.putForward(Duration.ofMinutes(21));
        assertEquals(303, busy.get("/me").statusCode(), "after 12 h 1 min");
    }

    @Test
    void theCookie_isNotWhatIsStored() {
        String cookie = browser(login).cookie(Sessions.COOKIE);
        assertEquals(43, cookie.length());
        assertEquals(303, withCookie("'" + cookie));
        assertEquals(303, withCookie(""));
    }

    // ---- name

    @Test
    void aNewName_isShownEverywhere_andTheOneBeforeIsKept() {
        Browser browser = browser(login);
        assertEquals(
                303, browser.post("/me/name", Map.of("display", " Nell Vale ")).statusCode());
        String page = browser.get("/me").asString();
        assertTrue(page.contains("<h1>Nell Vale</h1>") && page.contains("Nell Hart (until "), page);
        assertEquals("Nell Vale", directory.names(List.of(login)).get(login));
        Response refused = browser.post("/me/name", Map.of("display", " "));
        assertEquals(422, refused.statusCode());
        assertTrue(refused.asString().contains("Give your name"));
    }

    // ---- absence

    private static String day(int fromToday) {
        return LocalDate.now(ZoneOffset.UTC).plusDays(fromToday).toString();
    }

    private static Response away(Browser browser, int first, int last, String delegate) {
        return browser.post("/me/absences", Map.of("first", day(first), "last", day(last), "delegate", delegate));
    }

    @Test
    void whoIsAway_isStoodInFor_untilTheLastDayEnds() {
        Instant now = Instant.now();
        Browser browser = browser(login);
        assertEquals(303, away(browser, 0, 2, other).statusCode());
        assertEquals(Optional.of(other), absences.standsInFor(login, now));
        assertEquals(List.of(login), absences.standsInOf(other, now));
        assertEquals(Optional.empty(), absences.standsInFor(other, now));
        assertEquals(Optional.empty(), absences.standsInFor(login, now.plus(Duration.ofDays(3))));
        assertTrue(browser(other).get("/me").asString().contains("Standing in for"));
        String taker = directory.takers(now).stream()
                .filter(a -> a.account().equals(login))
                .map(Actor::name)
                .findFirst()
                .orElseThrow();
        assertTrue(taker.matches("Nell Hart \\(away until \\d+ \\w+, Omar Bell stands in\\)"), taker);
        String id = browser.get("/me").asString().replaceAll("(?s).*/me/absences/(\\d+)/end.*", "$1");
        assertEquals(
                404,
                browser(other).post("/me/absences/" + id + "/end", Map.of()).statusCode());
        browser.post("/me/absences/" + id + "/end", Map.of());
        assertEquals(Optional.empty(), absences.standsInFor(login, now));
    }

    @Test
    void whenTheDelegateIsAwayAsWell_theNextOneStandsIn_andNobodyInACircle() {
        Instant now = Instant.now();
        away(browser(login), 0, 5, other);
        away(browser(other), 0, 1, third);
        assertEquals(Optional.of(third), absences.standsInFor(login, now));
        assertEquals(List.of(login, other), absences.standsInOf(third, now));
        assertEquals(422, away(browser(third), 0, 1, login).statusCode(), "who is away does not stand in");
    }

    @Test
    void anAbsenceThatCannotBe_isRefused_andWhatWasTypedIsKept() {
        Browser browser = browser(login);
        assertEquals(422, away(browser, 3, 1, other).statusCode());
        assertEquals(422, away(browser, -3, -1, other).statusCode());
        assertEquals(422, away(browser, 0, 500, other).statusCode());
        assertEquals(422, away(browser, 0, 1, login).statusCode());
        Response nobody = away(browser, 0, 1, "keeper");
        assertEquals(422, nobody.statusCode());
        assertTrue(nobody.asString().contains("value=\"" + day(1) + "\""), nobody.asString());
        assertEquals(Optional.empty(), absences.standsInFor(login, Instant.now()));
    }

    @Test
    void administrator_notesItForSomebody_nobodyElseDoes() {
        Map<String, String> form = Map.of("first", day(0), "last", day(1), "delegate", other);
        assertEquals(
                403, browser(other).post("/people/" + login + "/absences", form).statusCode());
        assertEquals(
                303,
                browser("keeper").post("/people/" + login + "/absences", form).statusCode());
        assertEquals(Optional.of(other), absences.standsInFor(login, Instant.now()));
    }

    // ---- mentor, closing

    @Test
    void mentor_isNamed_forATraineeOnly() {
        Browser keeper = browser("keeper");
        keeper.post("/people/" + third + "/mentor", Map.of("mentor", other));
        assertTrue(browser(third).get("/me").asString().contains("<dt>Mentor</dt> <dd>Omar Bell</dd>"));
        assertTrue(browser(other).get("/me").asString().contains("<dt>Mentor of</dt> <dd>Tess Cole</dd>"));
        assertEquals(
                422,
                keeper.post("/people/" + third + "/mentor", Map.of("mentor", login))
                        .statusCode());
        assertEquals(
                422,
                keeper.post("/people/" + login + "/mentor", Map.of("mentor", other))
                        .statusCode());
    }

    private TicketNumber ticket() {
        return tickets.open(
                        new NewTicket(
                                "Left by " + login,
                                "",
                                Category.OTHER,
                                "Lamp",
                                "Hall",
                                "Rae",
                                "room 4",
                                Priority.Impact.ONE_PERSON,
                                Priority.Urgency.CAN_WAIT,
                                false),
                        new Actor(login, "Nell", Set.of(Role.TECHNICIAN)))
                .number();
    }

    @Test
    void closingAnAccount_handsItsTicketsOver_eachAsAnActOfTheSupervisor() {
        List<TicketNumber> open = List.of(ticket(), ticket());
        Response closed = browser("keeper-sue").post("/people/" + login + "/deactivation", Map.of("to", other));
        assertEquals(200, closed.statusCode(), closed.asString());
        assertTrue(closed.asString().contains("The account is closed."), closed.asString());
        Actor reader = new Actor(other, "Omar", Set.of(Role.TECHNICIAN));
        for (TicketNumber number : open) {
            var sheet = sheets.ticket(number, reader).sheet();
            assertEquals(other, sheet.course().assignee());
            assertEquals("keeper-sue", sheet.facts().get(1).stamp().by());
        }
    }

    /** An administrator works on no ticket, and so assigns none, whatever the form says. */
    @Test
    void administratorAlone_handsNothingOver() {
        TicketNumber number = ticket();
        Browser keeper = browser("keeper");
        assertFalse(keeper.get("/people/" + login).asString().contains("Hand its open tickets to"));
        assertEquals(
                403,
                keeper.post("/people/" + login + "/deactivation", Map.of("to", other))
                        .statusCode());
        assertEquals(
                login,
                sheets.ticket(number, new Actor(other, "Omar", Set.of(Role.TECHNICIAN)))
                        .sheet()
                        .course()
                        .assignee());
    }
}
