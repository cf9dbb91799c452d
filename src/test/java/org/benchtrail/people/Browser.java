package org.benchtrail.people;

import static io.restassured.RestAssured.given;

import io.restassured.http.Cookies;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.pages.Html;

/**
 * A browser as far as these tests need one: keeps cookies, follows no redirect, sends forms with the token of the page. A page that is
 * not sound HTML fails at once.
 */
public final class Browser {
    private static final Pattern FORM_TOKEN = Pattern.compile("name=\"csrf-token\" value=\"([^\"]*)\"");

    private final Map<String, String> cookies = new HashMap<>();
    private String formToken = "";

    /** A browser in which {@code login} has signed in. */
    public static Browser signedIn(String login, String password) {
        Browser browser = new Browser();
        browser.get("/sign-in");
        Response answer = browser.post("/sign-in", Map.of("login", login, "password", password, "to", "/me"));
        if (answer.statusCode() != 303) {
            throw new AssertionError(login + " was not signed in: " + answer.statusCode());
        }
        // its forms carry another token from now on
        browser.get("/keys");
        return browser;
    }

    public Response get(String path) {
        return keep(request().get(path));
    }

    /** Sends a form as one of our own pages would. */
    public Response post(String path, Map<String, ?> fields) {
        return keep(request()
                .contentType("application/x-www-form-urlencoded; charset=UTF-8")
                .formParams(fields)
                .formParam("csrf-token", formToken)
                .post(path));
    }

    /** A request with this browser's cookies. */
    public RequestSpecification request() {
        return given().redirects().follow(false).urlEncodingEnabled(false).cookies(cookies);
    }

    public String formToken() {
        return formToken;
    }

    public String cookie(String name) {
        return cookies.getOrDefault(name, "");
    }

    /** By name, for a reader of another kind. */
    public Map<String, String> cookies() {
        return Map.copyOf(cookies);
    }

    private Response keep(Response answer) {
        Cookies set = answer.detailedCookies();
        set.asList().forEach(cookie -> {
            if (cookie.getMaxAge() == 0) {
                cookies.remove(cookie.getName());
            } else {
                cookies.put(cookie.getName(), cookie.getValue());
            }
        });
        String page = answer.asString();
        if (page.startsWith("<!DOCTYPE html>")) {
            List<String> faults = Html.faults(page);
            if (!faults.isEmpty()) {
                throw new AssertionError(faults + " in " + page);
            }
        }
        Matcher token = FORM_TOKEN.matcher(page);
        if (token.find()) {
            formToken = token.group(1);
        }
        return answer;
    }
}
