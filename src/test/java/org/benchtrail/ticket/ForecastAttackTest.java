package org.benchtrail.ticket;

import static io.restassured.RestAssured.given;
import static org.benchtrail.ticket.ApiDesk.ADVANCE;
import static org.benchtrail.ticket.AttackSite.handed;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.Browser;
import org.benchtrail.people.TokenScope;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

/**
 * A trainee looks for the causes of a ticket before their forecast, by every door. The same doors tell them afterwards, and tell a
 * technician at once: else the search would be blind.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class ForecastAttackTest extends AttackCase {
    private static final String PASSWORD = "a long enough password";
    private static final String PLACE = "Forecast room";
    private static final String RAISED =
            "{'kind':'finding-answered','finding':'h12','question':'clock set above its default','value':'yes','source':'SEEN'}"
                    .replace('\'', '"');
    private static final String DUE = "forecast-first";
    private static int devices;

    @Inject
    Catalogues catalogues;

    private String device = "";

    private ApiDesk desk(String who) {
        return new ApiDesk(
                site::as,
                who,
                Map.of(
                        "title", "Forecastium gives up",
                        "category", "HEAT",
                        "device", device,
                        "place", PLACE,
                        "requester", "Rae",
                        "contact", "room 4",
                        "impact", "ONE_PERSON",
                        "urgency", "HINDERED"));
    }

    private String trainee(String login) {
        site.hire(login, Role.TRAINEE);
        device = "Forecastium " + ++devices;
        return login;
    }

    /** What would tell a cause: names of the causes of the kind, and their ids. */
    private Set<String> tellTales() {
        Set<String> words = new TreeSet<>();
        for (Cause cause :
                catalogues.inForce().localiser("heat").orElseThrow().askable().causes()) {
            words.add(cause.name());
            words.add(cause.id());
        }
        words.remove("heat/dust"); // her own theory
        assertTrue(words.size() > 10, words::toString);
        return words;
    }

    /** What a page tells beside the form of the forecast, whose list of all causes by name tells nothing. */
    private static String beside(String page) {
        return page.replaceAll("(?s)<section id=\"forecast\".*?</section>", "");
    }

    private Set<String> told(Response answer) {
        String text = beside(answer.asString());
        Set<String> told = new TreeSet<>(tellTales());
        told.removeIf(word -> !text.contains(word));
        return told;
    }

    private static List<String> pages(String number, int ranked) {
        String at = "/tickets/" + number;
        return List.of(
                at,
                at + "?seen=2",
                at + "/ranking",
                at + "/ranking?version=1",
                at + "/trail",
                at + "/entries/" + ranked,
                at + "/record",
                "/catalogue?category=heat",
                "/catalogue/versions/1?category=heat",
                "/catalogue/versions/1.yaml");
    }

    private static List<String> apis(String number) {
        String at = "/api/tickets/" + number;
        return List.of(
                at,
                at + "/ranking",
                at + "/ranking?version=1",
                at + "/trail",
                "/api/catalogue",
                "/api/catalogue/versions/1");
    }

    /** A ticket of Ines at theorize: a raised clock was found, her own theory, which the clock overtakes, is chosen, and the server has recorded the ranking. */
    private ApiDesk begun() {
        ApiDesk desk = desk("way-ines");
        desk.identify();
        desk.does(ApiDesk.OBVIOUS, RAISED);
        int theory =
                desk.does("{\"kind\":\"theory-stated\",\"text\":\"Something of my own\",\"causeId\":\"heat/dust\"}");
        desk.does("{\"kind\":\"theory-chosen\",\"theory\":" + theory + "}");
        return desk;
    }

    private static int ranked(ApiDesk desk) {
        int entry = 1;
        while (!desk.entry(entry).at("/payload/kind").asText().equals("theories-ranked")) {
            entry++;
        }
        return entry;
    }

    private Response forecasts(ApiDesk desk, String who, String kind) {
        return site.as(who)
                .header("If-Match", "\"" + desk.version + "\"")
                .contentType("application/json")
                .body("{\"forecast\":\"" + kind
                        + "\",\"causes\":{\"heat/dust\":60,\"heat/clock-raised\":0},\"nextTest\":\"h3\"}")
                .post("/api/tickets/" + desk.number + "/forecasts");
    }

    private void committed(ApiDesk desk, String who, String kind) {
        Response answer = forecasts(desk, who, kind);
        assertEquals(200, answer.statusCode(), answer.asString());
        desk.version = answer.jsonPath().getInt("version");
        assertFalse(answer.asString().contains("0.60"), "what it says is not told");
    }

    private Browser page(String login) {
        return Browser.signedIn(login, PASSWORD);
    }

    /** Nothing by any door; whether the whole door is shut says the code. */
    private void assertVeiled(ApiDesk desk, int ranked, Browser browser, RequestSpecification... tokens) {
        for (String page : pages(desk.number, ranked)) {
            Response answer = browser.get(page);
            assertEquals(Set.of(), told(answer), page);
            assertFalse(beside(answer.asString()).contains("This is not the best ranked"), page);
            boolean shut = page.contains("/ranking") || page.contains("/entries/") || page.startsWith("/catalogue");
            assertEquals(shut ? 409 : 200, answer.statusCode(), page);
            assertTrue(answer.asString().contains("id=\"forecast\"") || !shut, page);
        }
        for (RequestSpecification token : tokens) {
            for (String api : apis(desk.number)) {
                Response answer = given().spec(token).get(api);
                assertEquals(Set.of(), told(answer), api);
                boolean shut = !api.startsWith("/api/tickets/") || api.contains("/ranking");
                assertEquals(shut ? 409 : 200, answer.statusCode(), api);
                if (shut) {
                    assertEquals(
                            "urn:benchtrail:problem:" + DUE, answer.jsonPath().getString("type"));
                    assertEquals(
                            "/api/tickets/" + desk.number + "/forecasts",
                            answer.jsonPath().getString("forecast"));
                }
            }
        }
    }

    private void assertTold(ApiDesk desk, int ranked, Browser browser, RequestSpecification token) {
        for (String page : pages(desk.number, ranked)) {
            if (!page.endsWith("/record")) {
                assertNotEquals(Set.of(), told(browser.get(page)), page);
            }
        }
        for (String api : apis(desk.number)) {
            assertNotEquals(Set.of(), told(given().spec(token).get(api)), api);
        }
    }

    private RequestSpecification token(String login, TokenScope scope) {
        String secret = people.createToken(new Actor(login, login, Set.of(Role.TRAINEE)), "look", 9, scope)
                .secret();
        return given().header("Authorization", "Bearer " + secret);
    }

    @Test
    void handedOver_toAndFro_tellsNothingByAnyDoor_untilTheForecast_andAllAfterwards() {
        String tess = trainee("fore-tess");
        ApiDesk desk = begun();
        int ranked = ranked(desk);
        desk.lets("way-sue", handed(tess));
        Browser browser = page(tess);
        Browser second = page(tess);
        RequestSpecification reading = token(tess, TokenScope.READ);
        RequestSpecification acting = token(tess, TokenScope.ACT);
        assertVeiled(desk, ranked, browser, reading, acting);
        assertVeiled(desk, ranked, second);
        // the gate, and refusals, do not say that another cause leads
        assertEquals(List.of(DUE), desk.refused(tess, ADVANCE));
        int own = AttackSite.theory(desk);
        assertEquals(List.of(DUE), desk.refused(tess, "{\"kind\":\"theory-chosen\",\"theory\":" + own + "}"));
        assertTold(desk, ranked, page("way-ole"), site.as("way-ole"));
        desk.lets(tess, AttackSite.offered("way-ole"));
        desk.lets("way-ole", handed("way-ole"));
        assertVeiled(desk, ranked, browser, reading, acting);
        desk.lets("way-ole", AttackSite.offered(tess));
        desk.lets(tess, handed(tess));
        assertVeiled(desk, ranked, browser, reading, acting);
        committed(desk, tess, "CAUSES");
        assertTold(desk, ranked, browser, reading);
        assertTold(desk, ranked, second, acting);
        desk.lacks(tess, "theory-chosen", "This is not the best ranked theory", ADVANCE);
        assertEquals(409, forecasts(desk, tess, "CAUSES").statusCode(), "one a round");
    }

    @Test
    void likeness_isShownAfterTheEarlyForecast_andWhatIsLikeIsNotOpenedBefore() {
        String tess = trainee("fore-likeness");
        ApiDesk before = desk("way-ines");
        before.identify();
        before.does(ApiDesk.OBVIOUS, RAISED);
        before.tests(before.theory("Thermal pasteium"), "SUPPORTS");
        before.does(ADVANCE);
        before.carriesOut(before.plans());
        before.verifies();
        before.documents();
        before.does(AttackSite.CLOSE);

        ApiDesk desk = desk(tess);
        List<String> known = Arrays.asList(ApiDesk.IDENTIFIED).subList(0, ApiDesk.IDENTIFIED.length - 1);
        Browser browser = page(tess);
        List<String> shutPages = List.of(
                "/tickets/" + before.number,
                "/tickets/" + before.number + "/record",
                "/tickets/" + before.number + "/record.pdf",
                "/tickets/" + before.number + "/trail",
                "/tickets/" + before.number + "/ranking",
                "/knowledge?category=HEAT",
                "/knowledge?q=pasteium",
                "/knowledge");
        List<String> shutApis = List.of(
                "/api/tickets/" + before.number,
                "/api/tickets/" + before.number + "/trail",
                "/api/tickets/" + before.number + "/trail/verification",
                "/api/knowledge?q=pasteium",
                "/api/knowledge?q=pasteium&category=HEAT");
        for (String shut : shutPages) {
            Response answer = browser.get(shut);
            assertEquals(409, answer.statusCode(), shut);
            assertFalse(beside(answer.asString()).contains("pasteium"), shut);
        }
        String other = browser.get("/tickets/" + before.number).asString();
        assertTrue(
                other.contains("Forecastium gives up") && other.contains("is closed; hazards found there: none"),
                other);
        for (String shut : shutApis) {
            Response answer = site.as(tess).get(shut);
            assertEquals("urn:benchtrail:problem:" + DUE, answer.jsonPath().getString("type"), shut);
        }
        assertEquals(200, browser.get("/knowledge?category=USB").statusCode());
        assertEquals(200, browser.get("/catalogue?category=usb").statusCode());
        assertTrue(browser.get("/search?q=pasteium").asString().contains("after your forecast"));

        desk.does(known.toArray(String[]::new));
        String sheet = browser.get("/tickets/" + desk.number).asString();
        assertFalse(sheet.contains("/tickets/" + before.number), "what is alike");
        assertEquals("MISSING", desk.state("likeness-checked"));
        desk.shut(tess, DUE, "Your forecast comes first", "{\"kind\":\"likeness-checked\",\"shown\":[]}");
        desk.shut(
                tess,
                "likeness-checked",
                "Look at the similar tickets and known causes, which are shown after",
                ADVANCE);
        assertEquals(409, forecasts(desk, tess, "CAUSES").statusCode(), "the early one comes first");
        desk.version = desk.entries();

        committed(desk, tess, "CAUSES_EARLY");
        assertTrue(browser.get("/tickets/" + desk.number).asString().contains("/tickets/" + before.number));
        for (String open : shutPages) {
            assertEquals(200, browser.get(open).statusCode(), open);
        }
        assertTrue(told(browser.get("/tickets/" + desk.number)).isEmpty(), "the ranking comes after the second one");
        desk.does("{\"kind\":\"likeness-checked\",\"shown\":[]}", ADVANCE);
        assertEquals(409, browser.get("/tickets/" + desk.number + "/ranking").statusCode());
    }

    /** Whether anything is alike is not told either: on a ticket that is like nothing the step would be left by itself. */
    @Test
    void likeness_ofATicketThatIsLikeNothing_isNotMetByItself() {
        String tess = trainee("fore-nothing");
        ApiDesk desk = new ApiDesk(
                site::as,
                tess,
                Map.of(
                        "title", "Zzyqx",
                        "category", "VOICE",
                        "device", "Qqyzx",
                        "place", PLACE,
                        "requester", "Rae",
                        "contact", "room 4",
                        "impact", "ONE_PERSON",
                        "urgency", "HINDERED"));
        assertEquals("MISSING", desk.state("likeness-checked"));
        desk.lacks(
                tess,
                "likeness-checked",
                "Look at the similar tickets and known causes, which are shown after",
                ADVANCE);
        desk.does("{\"kind\":\"forecast-skipped\",\"forecast\":\"CAUSES_EARLY\",\"person\":\"" + tess
                + "\",\"reason\":\"Urgent\"}");
        assertEquals("MET", desk.state("likeness-checked"));
    }

    @Test
    void whileATicketIsOpened_aTraineeSeesOnlyOpenOnes() {
        String tess = trainee("fore-new");
        ApiDesk open = desk("way-ines");
        String asked = "/new-ticket/alike?title=Forecastium+gives+up&device=" + device.replace(' ', '+');
        String page = page(tess).get(asked).asString();
        assertTrue(page.contains(open.number), page);
        assertFalse(page.contains("Thermal pasteium"), page);
        site.as(tess)
                .get("/api/tickets/alike?text=Forecastium")
                .jsonPath()
                .getList("standing", String.class)
                .forEach(standing -> assertEquals("OPEN", standing));
    }

    @Test
    void queuedTicket_isNotLookedAtFirst_andTakenThen() {
        String tess = trainee("fore-queue");
        ApiDesk desk = begun();
        int ranked = ranked(desk);
        desk.lets("way-sue", handed("way-ole"));
        Browser browser = page(tess);
        assertTold(desk, ranked, browser, site.as(tess));
        desk.who = "way-ole";
        desk.does(AttackSite.offered(tess));
        desk.lets(tess, handed(tess));
        assertVeiled(desk, ranked, browser, site.as(tess));
    }

    @Test
    void aMentorSkipsIt_andTheTraineesPageHasTheForm_whileATechniciansHasNone() {
        String tess = trainee("fore-skip");
        ApiDesk desk = desk(tess);
        Browser browser = page(tess);
        String sheet = browser.get("/tickets/" + desk.number).asString();
        assertTrue(sheet.contains("Your forecast") && sheet.contains("It is due once these are answered"), sheet);
        desk.does(Arrays.copyOf(ApiDesk.IDENTIFIED, ApiDesk.IDENTIFIED.length - 1));
        sheet = browser.get("/tickets/" + desk.number).asString();
        assertTrue(sheet.contains("Commit the forecast"), sheet);
        assertFalse(page("way-ole").get("/tickets/" + desk.number).asString().contains("orecast of"));
        Browser mentor = page("way-marek");
        assertTrue(mentor.get("/tickets/" + desk.number).asString().contains("Forecast of " + tess));
        Map<String, String> skip = Map.of(
                "version",
                "" + desk.version,
                "skip.forecast",
                "CAUSES_EARLY",
                "skip.person",
                tess,
                "skip.reason",
                "Urgent");
        assertEquals(
                409,
                page("way-ole")
                        .post("/tickets/" + desk.number + "/skip-forecast", skip)
                        .statusCode());
        assertEquals(
                303,
                mentor.post("/tickets/" + desk.number + "/skip-forecast", skip).statusCode());
        desk.version++;
        assertEquals(409, forecasts(desk, tess, "CAUSES_EARLY").statusCode(), "too late");
        Map<String, String> typed = new HashMap<>(Map.of(
                "version", "" + desk.sheet().getInt("version"),
                "forecast", "CAUSES",
                "cause.1", "heat/dust",
                "percent.1", "70",
                "other", "29"));
        Response again = browser.post("/tickets/" + desk.number + "/forecast", typed);
        assertEquals(422, again.statusCode());
        assertTrue(again.asString().contains("The chances add to 99 %"), again.asString());
        assertTrue(again.asString().contains("value=\"70\""), "what was typed is kept");
        typed.put("other", "30");
        assertEquals(
                303,
                browser.post("/tickets/" + desk.number + "/forecast", typed).statusCode());
        Response late = browser.post("/tickets/" + desk.number + "/forecast", typed);
        assertEquals(409, late.statusCode(), "a second tab");
        assertEquals(200, browser.get("/tickets/" + desk.number + "/ranking").statusCode());
    }

    @Test
    void nobodyPostsACommitmentByHand() {
        String tess = trainee("fore-hand");
        ApiDesk desk = desk(tess);
        desk.malformed(
                tess,
                "[0].kind",
                "The server itself records",
                "{\"kind\":\"forecast-committed\",\"forecast\":\"CAUSES_EARLY\",\"round\":1,\"commitment\":\""
                        + "ab".repeat(32) + "\"}");
    }
}
