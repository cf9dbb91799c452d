package org.benchtrail.packaged;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Somebody who visits a running server: as a browser with its cookies and forms, or as a program with a token. */
final class Visitor {
    private static final Pattern FORM_TOKEN = Pattern.compile("name=\"csrf-token\" value=\"([^\"]*)\"");
    private static final Pattern SECRET = Pattern.compile("<p><code>([^<]+)</code></p>");
    private static final ObjectMapper JSON = new ObjectMapper();

    /** Longer than a server waits for its database. */
    private static final Duration PATIENCE = Duration.ofSeconds(45);

    private final URI server;
    private final @Nullable String token;
    private final HttpClient client;

    Visitor(URI server) {
        this(server, null);
    }

    private Visitor(URI server, @Nullable String token) {
        this.server = server;
        this.token = token;
        this.client = HttpClient.newBuilder()
                .version(HttpClient.Version.HTTP_1_1)
                .connectTimeout(PATIENCE)
                .cookieHandler(new CookieManager())
                .build();
    }

    /** A program with a token. */
    static Visitor withToken(URI server, String token) {
        return new Visitor(server, token);
    }

    /** The same program, at another address. */
    Visitor at(URI other) {
        return new Visitor(other, token);
    }

    /** The status with which the sign-in page answers: 303 lets in, 401 does not. */
    int signIn(String login, String password) throws IOException, InterruptedException {
        String page = get("/sign-in").body();
        return form("/sign-in", page, Map.of("login", login, "password", password, "to", "/me"))
                .statusCode();
    }

    /** A token made on one's own page; {@link #signIn} comes first. */
    String makeToken(String password) throws IOException, InterruptedException {
        HttpResponse<String> answer = form(
                "/me/tokens",
                get("/me").body(),
                Map.of("name", "a program", "days", "", "present", password, "scope", "ADMINISTER"));
        Matcher secret = SECRET.matcher(answer.body());
        if (!secret.find()) {
            throw new AssertionError("no token on the page: " + answer.statusCode() + "\n" + answer.body());
        }
        return secret.group(1);
    }

    HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return send(request(path).GET());
    }

    /**
     * What the API answers to a question that it must be able to answer. A connection that was in use when its database was killed is
     * found out when it is used next: whoever is told to come back comes back, three times at most.
     */
    JsonNode read(String path) throws IOException, InterruptedException {
        HttpResponse<String> answer = get(path);
        for (int again = 0; again < 3 && answer.statusCode() == 503; again++) {
            Thread.sleep(
                    1000L * answer.headers().firstValueAsLong("Retry-After").orElseThrow());
            answer = get(path);
        }
        if (answer.statusCode() != 200) {
            throw new AssertionError(path + " answered " + answer.statusCode() + "\n" + answer.body());
        }
        return json(answer);
    }

    /** Whoever meets the moment of a change comes back: the first status that is none of a server's failure, 0 if none comes. */
    int again(String path) throws InterruptedException {
        for (int i = 0; i < 50; i++) {
            try {
                int status = get(path).statusCode();
                if (status < 500) {
                    return status;
                }
            } catch (IOException broken) {
                // asked again
            }
            Thread.sleep(200);
        }
        return 0;
    }

    HttpResponse<String> post(String path, Map<String, ?> body) throws IOException, InterruptedException {
        return send(posting(path, body));
    }

    /** Posts what builds on a version. */
    HttpResponse<String> post(String path, int version, Object body) throws IOException, InterruptedException {
        return send(posting(path, body).header("If-Match", "\"" + version + "\""));
    }

    /** Posts what builds on a version, and wants nothing back but the next one. */
    HttpResponse<String> postForVersion(String path, int version, Object body)
            throws IOException, InterruptedException {
        return send(
                posting(path, body).header("If-Match", "\"" + version + "\"").header("Prefer", "return=minimal"));
    }

    /** Posts under a key, so that the same may be sent again. */
    HttpResponse<String> post(String path, int version, Map<String, ?> body, String key)
            throws IOException, InterruptedException {
        return send(
                posting(path, body).header("If-Match", "\"" + version + "\"").header("Idempotency-Key", key));
    }

    static JsonNode json(HttpResponse<String> answer) throws IOException {
        return JSON.readTree(answer.body());
    }

    /** What somebody is told who gets no answer: by whom, and whether when to come back. */
    static String kind(HttpResponse<String> answer) throws IOException {
        String type = answer.headers().firstValue("Content-Type").orElse("");
        String by = type.startsWith("application/problem+json")
                ? json(answer).path("type").asText().replaceAll(".*[/:]", "")
                : answer.body().startsWith("<!DOCTYPE html>") ? "a page of its own" : "the balancer";
        boolean told = answer.headers().firstValue("Retry-After").isPresent();
        return answer.statusCode() + " " + by + (told ? "" : " without Retry-After");
    }

    private HttpRequest.Builder posting(String path, Object body) throws IOException {
        return request(path)
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString(JSON.writeValueAsString(body)));
    }

    private HttpResponse<String> form(String path, String page, Map<String, String> fields)
            throws IOException, InterruptedException {
        Matcher formToken = FORM_TOKEN.matcher(page);
        if (!formToken.find()) {
            throw new AssertionError("no form on the page:\n" + page);
        }
        Map<String, String> all = new LinkedHashMap<>(fields);
        all.put("csrf-token", formToken.group(1));
        String body = all.entrySet().stream()
                .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return send(request(path)
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(HttpRequest.BodyPublishers.ofString(body)));
    }

    private HttpRequest.Builder request(String path) {
        HttpRequest.Builder request =
                HttpRequest.newBuilder(server.resolve(path)).timeout(PATIENCE);
        return token == null ? request : request.header("Authorization", "Bearer " + token);
    }

    private HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        return client.send(request.build(), BodyHandlers.ofString());
    }
}
