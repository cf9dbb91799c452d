package org.benchtrail;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.LogEar;
import org.benchtrail.platform.RawRequest;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

/** Requests that no page and no good program sends are refused: none is a fault of the server, none fills its log. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class MalformedRequestsTest {
    private static final String PASSWORD = "a long enough password";
    private static final String FORM = "application/x-www-form-urlencoded";
    private static final Actor MILO =
            new Actor("mal-milo", "Milo", Set.of(Role.TECHNICIAN, Role.SUPERVISOR, Role.ADMINISTRATOR));

    @Inject
    PeopleActs people;

    private final Map<String, RawRequest> requests = new LinkedHashMap<>();
    private String token = "";
    private Browser browser = new Browser();

    private void page(String name, String method, String target, String media, String body) {
        Map<String, String> headers = new HashMap<>();
        headers.put(
                "Cookie",
                "csrf-token=" + browser.cookie("csrf-token") + "; benchtrail-session="
                        + browser.cookie("benchtrail-session"));
        if (!media.equals("none")) {
            headers.put("Content-Type", media);
        }
        requests.put(name, new RawRequest(method, target, headers, body));
    }

    private void api(String name, String method, String target, String media, String body) {
        Map<String, String> headers = new HashMap<>(Map.of("Authorization", "Bearer " + token, "If-Match", "\"1\""));
        if (!media.equals("none")) {
            headers.put("Content-Type", media);
        }
        requests.put(name, new RawRequest(method, target, headers, body));
    }

    private String form(String fields) {
        return "csrf-token=" + browser.formToken() + "&" + fields;
    }

    private void all() {
        page("percent in a query", "GET", "/queue?text=%zz", "none", "");
        page("percent in a path", "GET", "/tickets/%zz", "none", "");
        page("half a percent", "GET", "/devices/%e", "none", "");
        api("percent in a path of the API", "GET", "/api/tickets/%zz", "none", "");
        api("percent in a query of the API", "GET", "/api/tickets?text=%", "none", "");
        page("percent in a form", "POST", "/new-ticket", FORM, form("title=%zz"));
        page(
                "unfinished multipart",
                "POST",
                "/tickets/40718-6/attachments",
                "multipart/form-data; boundary=x",
                "--x\r\nContent-Disposition: form-data; name=\"csrf-token\"\r\n\r\n" + browser.formToken());
        page("multipart without a boundary", "POST", "/tickets/40718-6/attachments", "multipart/form-data", "--x");
        page(
                "more fields than any form has",
                "POST",
                "/new-ticket",
                FORM,
                form(IntStream.range(0, 2500).mapToObj(i -> "f" + i + "=1").collect(Collectors.joining("&"))));
        page("empty media type", "POST", "/new-ticket", "", form("title=a"));
        page("half a media type", "POST", "/new-ticket", "application/", form("title=a"));
        api("empty media type at the API", "POST", "/api/tickets", "", "{}");
        api("no media type at the API", "POST", "/api/tickets", "none", "{}");
        api("strange media type at the API", "POST", "/api/tickets", ";;/", "{}");
        api("repeated keys", "POST", "/api/tickets", "application/json", "{\"title\":\"a\",\"title\":\"b\"}");
        page("NUL in a search", "GET", "/search?text=%00", "none", "");
        page("NUL in the queue", "GET", "/queue?text=a%00b&place=%00", "none", "");
        page("NUL in names", "GET", "/people?search=%00", "none", "");
        page("NUL in a label", "GET", "/devices/%00", "none", "");
        api("NUL in a search of the API", "GET", "/api/tickets?text=a%00b", "none", "");
        api("NUL in a place of the API", "GET", "/api/tickets?place=%00", "none", "");
        api("NUL in a name", "GET", "/api/people?search=%00", "none", "");
        api("NUL in a login", "GET", "/api/people/%00", "none", "");
        api("null in a list", "PUT", "/api/people/mal-milo/roles", "application/json", "{\"roles\":[null]}");
        api("null as an act", "POST", "/api/tickets/40718-6/acts", "application/json", "[null]");
        api(
                "null in a map",
                "POST",
                "/api/tickets/40718-6/acts",
                "application/json",
                "{\"kind\":\"changes-asked\",\"answers\":{\"HARDWARE\":null}}");
        api(
                "null in a list of an act",
                "POST",
                "/api/tickets/40718-6/acts",
                "application/json",
                "{\"kind\":\"likeness-checked\",\"shown\":[null]}");
        api("null in accepted cases", "POST", "/api/learning/accepted", "application/json", "{\"tickets\":[null]}");
        page("field that ends in &=", "POST", "/new-ticket", FORM, form("title=a&="));
        page("field without a name", "POST", "/me/zone", FORM, form("=UTC&=&&"));
        page("number too long", "GET", "/queue?size=99999999999999", "none", "");
        api("number too long at the API", "GET", "/api/tickets?size=99999999999999", "none", "");
        api("deep JSON", "POST", "/api/tickets", "application/json", "[".repeat(5000));
        api("half a surrogate", "POST", "/api/tickets", "application/json", "{\"title\":\"\\ud83d\"}");
        api("broken UTF-8", "POST", "/api/tickets", "application/json", "{\"title\":\"\u00ff\u00fe\"}");
        page("semicolon in a path", "GET", "/people;x=1/mal-milo", "none", "");
        api("semicolon in a path of the API", "GET", "/api;x/people", "none", "");
        page("form to the API's door", "POST", "/api/tickets", FORM, "title=a");
        page("odd method", "PATCH", "/queue", "none", "");
    }

    @Test
    void each_isRefused_withoutAFaultAndWithoutALongLine() {
        people.ensureAccount(MILO.account(), MILO.name(), MILO.roles(), PASSWORD);
        token = people.createToken(MILO, "malformed", 1).secret();
        browser = Browser.signedIn(MILO.account(), PASSWORD);
        browser.get("/me");
        all();
        List<String> wrong = new ArrayList<>();
        requests.forEach((name, request) -> {
            try (LogEar ear = new LogEar()) {
                RawRequest.Answer answer = request.send();
                boolean lenient = request.method().equals("GET") && answer.status() == 200;
                if ((answer.status() < 400 || answer.status() > 499) && !lenient && answer.status() != 303) {
                    wrong.add(name + ": " + answer.status());
                }
                boolean json = answer.head().toLowerCase(java.util.Locale.ROOT).contains("content-type: application/");
                if (answer.status() >= 400
                        && json != request.target().startsWith("/api/")
                        && !name.contains("semicolon")
                        && !answer.head().contains("content-length: 0")) {
                    wrong.add(name + ": told in the wrong way: " + answer.head().replace("\r\n", " | "));
                }
                if (!ear.text().isEmpty()) {
                    wrong.add(name + " logged: " + ear.text().lines().limit(3).toList());
                }
            }
        });
        assertEquals(List.of(), wrong);
    }
}
