package org.benchtrail.bench;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class BenchPageTest {
    private static final String PASSWORD = "a long enough password";

    @Inject
    PeopleActs acts;

    private Browser browser;

    @BeforeEach
    void signIn() {
        if (browser == null) {
            acts.ensureAccount("bench-reader", "Bo Example", Set.of(Role.TRAINEE), PASSWORD);
            browser = Browser.signedIn("bench-reader", PASSWORD);
        }
    }

    static Stream<Calculation<?>> calculations() {
        return Bench.all().stream();
    }

    private static <I extends Record> Result example(Calculation<I> calculation) {
        return calculation.calculate(calculation.example());
    }

    private static String html(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }

    private static String query(Map<String, String> values) {
        return values.entrySet().stream()
                .map(e -> url(e.getKey()) + "=" + url(e.getValue()))
                .collect(Collectors.joining("&"));
    }

    private static String url(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    /** UPS load at 500 W and 800 VA, with some of its values exchanged; a text of '-' leaves the field out. */
    private static String upsLoad(String... namesAndTexts) {
        Map<String, String> values = new TreeMap<>(
                Map.of("ratedWatts", "900", "ratedVa", "1500", "watts", "500", "va", "800", "volts", "", "amps", ""));
        for (int i = 0; i < namesAndTexts.length; i += 2) {
            values.put(namesAndTexts[i], namesAndTexts[i + 1]);
        }
        values.values().removeIf("-"::equals);
        return "/bench/ups-load?" + query(values);
    }

    @Test
    void bench_listsEveryCalculationWithItsQuestion() {
        String page = browser.get("/bench").asString();
        for (Calculation<?> calculation : Bench.all()) {
            assertTrue(page.contains("<a href=\"/bench/" + calculation.id() + "\">"), calculation.id());
            assertTrue(page.contains(html(calculation.question())), calculation.id());
        }
        assertTrue(page.contains("<a href=\"/bench\">Bench</a>"));
    }

    @Test
    void whatIsWrong_isListedInTheOrderOfTheForm_inWholeSentences() {
        String page = browser.get(upsLoad("ratedWatts", "0", "ratedVa", "2 squiggle", "watts", "-5"))
                .asString();
        String listed = page.substring(page.indexOf("No result, until these are corrected"));
        assertTrue(listed.indexOf("#f-ratedWatts") < listed.indexOf("#f-ratedVa"), listed);
        assertTrue(listed.indexOf("#f-ratedVa") < listed.indexOf("#f-watts"), listed);
        assertTrue(page.contains("from 0.01 to 10000000 W, not -5."), page);
        String asked = browser.get("/bench/radio-link?power=100&sendGain=3&receiveGain=2&cableLoss=1&frequency=5500"
                        + "&distance=30&sensitivity=-64&wanted=10")
                .asString();
        assertTrue(asked.contains("which are 20 dBm?</em>"), asked);
    }

    @ParameterizedTest
    @MethodSource("calculations")
    void example_isFilledInAndWorkedThrough(Calculation<?> calculation) {
        Response answer = browser.get("/bench/" + calculation.id() + "?example=true");
        assertEquals(200, answer.statusCode());
        assertShows(answer.asString(), example(calculation));
        assertTrue(answer.asString().contains("<strong>An example.</strong>"));
        assertFalse(answer.asString().contains("action=\"/attach"), "an example goes nowhere");
        assertTrue(answer.asString().contains(html(calculation.question())));
        assertFalse(answer.asString().contains(" style="));
    }

    @ParameterizedTest
    @MethodSource("calculations")
    void formStartsEmpty_withAButtonForTheExample(Calculation<?> calculation) {
        Response answer = browser.get("/bench/" + calculation.id() + "?for=2026-000001");
        assertEquals(200, answer.statusCode());
        String page = answer.asString();
        assertFalse(page.contains("class=\"verdict"), page);
        assertTrue(
                page.contains("/bench/" + calculation.id() + "?example=true&amp;for=2026-000001\">Show an example"),
                page);
        InputForm.write(calculation.example()).all().values().stream()
                .filter(v -> v.length() > 2 && !v.equals("true") && !v.equals("false"))
                .forEach(v -> assertFalse(page.contains(" value=\"" + html(v) + "\" autocomplete"), v));
    }

    private static void assertShows(String answered, Result result) {
        String page = answered.replaceAll(">\\s+<", "><");
        assertTrue(page.contains(html(result.judgement().words())), page);
        assertTrue(page.contains(html(result.judgement().reason())), page);
        result.figures()
                .forEach(f -> assertTrue(
                        page.contains("<th scope=\"row\">" + html(f.name()) + "</th><td class=\"num r\">"
                                + html(f.text()) + "</td><td>"
                                + html(f.unit().equals("1") ? "" : f.unit()) + "</td>"),
                        f.name()));
        result.working()
                .forEach(w -> assertTrue(
                        page.contains(
                                "<strong>" + html(w.what()) + "</strong><span class=\"formula\">" + html(w.formula())
                                        + "</span><span class=\"num\">" + html(w.withNumbers()) + "</span>"),
                        w.what()));
        result.rules().forEach(r -> {
            assertTrue(page.contains(html(r.sentence())), r.name());
            assertTrue(page.contains(html(r.source())), r.source());
        });
        result.assumptions().forEach(a -> assertTrue(page.contains("<li>" + html(a) + "</li>"), a));
        result.cautions()
                .forEach(c -> assertTrue(page.contains(html(Caution.valueOf(c).text())), c));
        result.curves()
                .forEach(c -> assertTrue(page.contains("<caption>" + html(c.title()) + "</caption>"), c.title()));
        assertEquals(
                CurveCharts.grouped(result.curves()).size(), page.split("class=\"chart\" role=\"img\"", -1).length - 1);
    }

    /** What the page shows in its fields, sent as the browser sends it, gives the same result. */
    @ParameterizedTest
    @MethodSource("calculations")
    void formSentAsItStands_givesTheSameResult(Calculation<?> calculation) {
        Map<String, String> values = new TreeMap<>();
        TypedValues typed = InputForm.write(calculation.example());
        for (InputField asked : InputField.of(calculation.inputType())) {
            values.put(asked.name(), typed.text(asked.name()));
            for (int row : typed.rows(asked.name())) {
                asked.fields().forEach(f -> {
                    String path = TypedValues.path(asked.name(), row, f.name());
                    values.put(path, typed.text(path));
                });
            }
            for (InputField field : asked.fields()) {
                values.put(TypedValues.path(asked.name(), 90, field.name()), "");
            }
        }
        Response answer = browser.get("/bench/" + calculation.id() + "?" + query(values));
        assertEquals(200, answer.statusCode());
        assertShows(answer.asString(), example(calculation));
        assertFalse(answer.asString().contains("action=\"/attach"), "the example's values are an example by any way");
    }

    @Test
    void ownValues_areOfferedToATicket() {
        assertTrue(browser.get(upsLoad()).asString().contains("action=\"/attach/ups-load\""));
    }

    @Test
    void otherValues_giveAnotherVerdictUnderTheirOwnAddress() {
        String fits = browser.get(upsLoad()).asString();
        String over = browser.get(upsLoad("watts", "950,5 W", "va", "1100")).asString();
        assertTrue(fits.contains("class=\"verdict good\""), fits);
        assertTrue(over.contains("class=\"verdict bad\"") && over.contains("▲"), over);
        assertTrue(over.contains("value=\"950,5 W\""), "what was typed is kept as it was typed");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "watts|''",
                "watts|-",
                "watts|-5",
                "watts|1e25",
                "watts|500 kg",
                "watts|fünf 🔌",
                "watts|<script>1",
                "ratedVa|0",
                "amps|many"
            })
    void badValue_isToldAtItsFieldAndKept(String field, String text) {
        Response answer = browser.get(upsLoad(field, text));
        String page = answer.asString();
        assertEquals(422, answer.statusCode());
        assertTrue(page.contains("<a href=\"#f-" + field + "\">"), page);
        assertTrue(page.matches("(?s).*id=\"f-" + field + "-error\">([A-Z]|&#39;).*"), page);
        assertTrue(page.contains("value=\"" + html(text.equals("-") ? "" : text) + "\""), page);
        assertFalse(page.contains("<script>1"));
        assertFalse(page.contains("class=\"verdict"));
    }

    @Test
    void badRow_isNamedAndEmptyRowsAreNot() {
        Response answer = browser.get("/bench/poe-budget?"
                + query(Map.of(
                        "budget",
                        "120",
                        "highestClass",
                        "4",
                        "ports[0].deviceClass",
                        "",
                        "ports[0].metres",
                        "",
                        "ports[2].deviceClass",
                        "3",
                        "ports[2].metres",
                        "-4")));
        assertEquals(422, answer.statusCode());
        assertTrue(
                answer.asString().contains("<a href=\"#f-ports-2-metres\">Ports, row 3, Cable</a>"), answer.asString());
        assertFalse(answer.asString().contains("href=\"#f-ports-0"));
    }

    @Test
    void longValues_passInTheAddress() {
        String page = browser.get("/bench/drive-health?"
                        + query(Map.of(
                                "form",
                                "ATA_SECTOR",
                                "table",
                                "00 ".repeat(512),
                                "thresholds",
                                "00 ".repeat(512),
                                "followed",
                                "5")))
                .asString();
        assertTrue(page.contains("id=\"result\""), page);
    }

    @Test
    void unknownCalculation_isNotHere() {
        assertEquals(404, browser.get("/bench/no-such-thing").statusCode());
    }

    @ParameterizedTest
    @EnumSource(Role.class)
    void bench_opensToEveryRole(Role role) {
        String login = "bench-" + role.ordinal();
        acts.ensureAccount(login, "Any", Set.of(role), PASSWORD);
        Browser own = Browser.signedIn(login, PASSWORD);
        assertEquals(200, own.get("/bench").statusCode());
        assertEquals(200, own.get("/bench/mains").statusCode());
    }

    @Test
    void stranger_isSentToSignIn() {
        for (String path : Arrays.asList("/bench", "/bench/mains")) {
            assertEquals(303, new Browser().get(path).statusCode());
        }
        assertEquals(401, given().get("/api/bench").statusCode());
        assertEquals(401, given().get("/api/bench/mains").statusCode());
        assertEquals(
                401,
                given().contentType("application/json")
                        .body("{}")
                        .post("/api/bench/mains")
                        .statusCode());
    }
}
