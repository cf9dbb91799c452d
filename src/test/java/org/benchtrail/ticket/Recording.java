package org.benchtrail.ticket;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.TestDatabase;
import org.jspecify.annotations.Nullable;

/** The exchanges of a journey over the API, in their order, and the file that they are held against. */
final class Recording {
    private static final Path FILE = Path.of("src", "test", "resources", "recording", "api.json");

    /** Both sides without the numbers that follow from the place in the journey, so that what differs is read and not lost. */
    private static final Path READ = Path.of("target", "recording");

    private static final List<String> HEADERS = List.of("Content-Type", "ETag", "Link", "Location");

    /** What a tag has beside the version: it is another in each run. */
    private static final Pattern TAG_OF_CONTENT = Pattern.compile("^\"[\\w-]{16}\"$|-[\\w-]{16}(?=\"$)");

    private final Placeholders placeholders = new Placeholders();
    private final Map<String, String> tokens = new HashMap<>();
    private final Map<String, JsonNode> factsBefore = new HashMap<>();
    /** One and the same in a run, so that its placeholder is too. */
    private final String soon = Instant.now()
            .plus(30, ChronoUnit.DAYS)
            .truncatedTo(ChronoUnit.SECONDS)
            .toString();

    private final List<String> tickets = new ArrayList<>();
    private final Set<String> kinds = new TreeSet<>();
    private final List<ObjectNode> exchanges = new ArrayList<>();
    private @Nullable Described described;

    /** Text in which single quotes stand for double ones. */
    static String json(String text) {
        return text.replace('\'', '"');
    }

    static String sha256(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    void token(String login, String secret) {
        tokens.put(login, secret);
    }

    /** Kinds of fact that were stored. */
    Set<String> kinds() {
        return kinds;
    }

    /** Number of the first ticket of the journey. */
    String first() {
        return tickets.get(0);
    }

    // ---- requests

    JsonNode get(String who, String path) {
        return sent(who, "GET", path, null, null, as(who).get(path));
    }

    JsonNode delete(String who, String path) {
        return sent(who, "DELETE", path, null, null, as(who).delete(path));
    }

    JsonNode post(String who, String path, String body) {
        String text = json(body);
        return sent(who, "POST", path, null, text, as(who).body(text).post(path));
    }

    JsonNode put(String who, String path, String body) {
        String text = json(body);
        return sent(who, "PUT", path, null, text, as(who).body(text).put(path));
    }

    JsonNode postBytes(String who, String path, byte[] body) {
        Response answer =
                as(who).contentType("application/octet-stream").body(body).post(path);
        return sent(who, "POST", path, null, "bytes with SHA-256 " + sha256(body), answer);
    }

    /** An act on what has versions. */
    JsonNode act(String who, @Nullable Integer version, String path, String body) {
        String text = json(body);
        RequestSpecification request = as(who).body(text);
        if (version != null) {
            request.header("If-Match", "\"" + version + "\"");
        }
        return sent(who, "POST", path + "/acts", version, text, request.post(path + "/acts"));
    }

    /** A list that other tests add to: of its lines only those about the tickets of this journey. */
    void own(String who, String path, String list) {
        Response answer = as(who).get(path);
        described().hold("GET", path, null, answer);
        JsonNode whole = Golden.read(answer.asString());
        ArrayNode lines = Golden.array();
        for (JsonNode line : whole.at(list)) {
            if (tickets.contains(line.at("/ticket").asText())) {
                lines.add(line);
            }
        }
        ObjectNode exchange = exchange(who, "GET", path, null, null, answer.statusCode());
        exchange.set("answer, own lines", placeholders.in(path, lines));
        exchanges.add(exchange);
    }

    /** What the OpenAPI document says of the API; its schemas by their order, since their names are not seen by clients. */
    void openApi() {
        JsonNode document = Golden.read(given().get("/q/openapi?format=json").asString());
        ObjectNode exchange = exchange("anybody", "GET", "/q/openapi", null, null, 200);
        exchange.set("answer, by path", OpenApiText.of(document));
        exchanges.add(exchange);
    }

    /** The values that a calculation can be sent. */
    JsonNode example(String calculation) {
        return Golden.read(as("rec-ole").get("/api/bench/" + calculation).asString())
                .at("/example");
    }

    /** Where the answer before says that the list goes on. */
    String nextOf(JsonNode page) {
        return "/api/tickets?place=Recorded%20room&size=1&after="
                + page.at("/next").asText();
    }

    private RequestSpecification as(String who) {
        RequestSpecification request = given().urlEncodingEnabled(false).contentType("application/json");
        return tokens.containsKey(who) ? request.header("Authorization", "Bearer " + tokens.get(who)) : request;
    }

    private JsonNode sent(
            String who, String method, String path, @Nullable Integer version, @Nullable String body, Response answer) {
        described().hold(method, path, body, answer);
        ObjectNode exchange = exchange(who, method, path, version, body, answer.statusCode());
        for (String header : HEADERS) {
            String value = answer.header(header) == null
                    ? ""
                    : TAG_OF_CONTENT.matcher(answer.header(header)).replaceFirst("");
            if (!value.isEmpty()) {
                exchange.put(header, placeholders.in(value.replaceFirst("http://[^/]+", "")));
            }
        }
        String type = String.valueOf(answer.contentType());
        JsonNode json = type.contains("json") ? Golden.read(answer.asString()) : TextNode.valueOf(answer.asString());
        exchange.set("answer", shortened(placeholders.in(path, json)));
        exchanges.add(exchange);
        return json;
    }

    /** The description is read when the server runs. */
    private Described described() {
        if (described == null) {
            described = new Described();
        }
        return described;
    }

    /** What was answered otherwise than described. */
    List<String> otherThanDescribed() {
        return described().faults();
    }

    /** How many operations were answered well. */
    int operationsSeen() {
        return described().seen();
    }

    private ObjectNode exchange(
            String who, String method, String path, @Nullable Integer version, @Nullable String body, int status) {
        ObjectNode exchange = Golden.object();
        exchange.put("request", method + " " + placeholders.in(path) + " by " + who);
        if (version != null) {
            exchange.put("If-Match", version);
        }
        if (body != null) {
            exchange.set("body", placeholders.in(path, Golden.readOrText(body)));
        }
        return exchange.put("status", status);
    }

    /** Without the facts that the answer before told in the same words of the same ticket. */
    private JsonNode shortened(JsonNode answer) {
        if (!answer.has("facts") || !answer.has("number")) {
            return answer;
        }
        JsonNode before = factsBefore.getOrDefault(answer.at("/number").asText(), Golden.array());
        ArrayNode facts = (ArrayNode) answer.at("/facts");
        factsBefore.put(answer.at("/number").asText(), facts.deepCopy());
        int same = 0;
        while (same < before.size() && same < facts.size() && before.get(same).equals(facts.get(same))) {
            same++;
        }
        ArrayNode rest = Golden.array().add("the first " + same + " as before");
        for (int i = same; i < facts.size(); i++) {
            rest.add(facts.get(i));
        }
        ((ObjectNode) answer).set("facts", rest);
        return answer;
    }

    // ---- tickets

    Desk open(String who, String report) {
        Response answer = as(who).body(json(report)).post("/api/tickets");
        assertEquals(201, answer.statusCode(), answer.asString());
        described().hold("POST", "/api/tickets", json(report), answer);
        JsonNode opened = Golden.read(answer.asString());
        String number = opened.at("/number").asText();
        tickets.add(number);
        placeholders.ticket(number);
        ObjectNode exchange = exchange(who, "POST", "/api/tickets", null, json(report), 201);
        exchange.set("answer", shortened(placeholders.in("/api/tickets", opened)));
        exchanges.add(exchange);
        Desk desk = new Desk(who, number);
        desk.stored();
        return desk;
    }

    /** A ticket of the journey, and whose it is. */
    final class Desk {
        private final String who;
        private final String number;
        private final int serial;
        private int version;

        Desk(String who, String number) {
            this.who = who;
            this.number = number;
            serial = TicketNumber.parse(number).serial();
        }

        String path() {
            return "/api/tickets/" + number;
        }

        int version() {
            return version;
        }

        /** Does what has to be allowed; answers with the number of the last entry. */
        int does(String... facts) {
            return lets(who, facts);
        }

        int lets(String login, String... facts) {
            return acted(login, version, facts.length == 1 ? facts[0] : "[" + String.join(",", facts) + "]", 200);
        }

        /** Tries what has to be refused. */
        void tries(String login, String facts) {
            acted(login, version, facts, 409);
        }

        /** Sends what leaves no trace. */
        void malformed(String body) {
            int before = version;
            act(who, version, path(), body);
            stored();
            assertEquals(before, version, body);
        }

        void onVersion(@Nullable Integer other, String body) {
            int before = version;
            act(who, other, path(), body);
            stored();
            assertEquals(before, version, body);
        }

        void benchResult(String order) {
            String text = json(order);
            String path = path() + "/bench-results";
            Response answer =
                    as(who).header("If-Match", "\"" + version + "\"").body(text).post(path);
            sent(who, "POST", path, version, text, answer);
            stored();
        }

        void forecasts(String forecast) {
            String text = json(forecast);
            String path = path() + "/forecasts";
            Response answer =
                    as(who).header("If-Match", "\"" + version + "\"").body(text).post(path);
            sent(who, "POST", path, version, text, answer);
            stored();
        }

        void presences(String login, int about) {
            String text = json("{'about':" + about + "}");
            String path = path() + "/presences";
            Response answer = as(login)
                    .header("If-Match", "\"" + version + "\"")
                    .body(text)
                    .post(path);
            sent(login, "POST", path, version, text, answer);
            stored();
        }

        void sendsBytes(String login, String path, String mediaType, byte[] content) {
            Response answer = as(login)
                    .contentType(mediaType)
                    .header("If-Match", "\"" + version + "\"")
                    .body(content)
                    .post(path);
            sent(login, "POST", path, version, "bytes with SHA-256 " + sha256(content), answer);
            stored();
        }

        /** Everything that can be read of the ticket. */
        void reads() {
            get("rec-ole", path());
            get("rec-ole", path() + "/trail");
            get("rec-ole", path() + "/trail/verification");
            get("rec-ole", path() + "/ranking");
            get("rec-ole", path() + "/ranking?version=1");
        }

        private int acted(String login, int onVersion, String body, int status) {
            String text = body.replace("{number}", number)
                    .replace("{requester}", requester())
                    .replace("{soon}", soon);
            act(login, onVersion, path(), text);
            stored();
            ObjectNode last = exchanges.get(exchanges.size() - 1);
            assertEquals(status, last.at("/status").asInt(), () -> body + " was answered " + last);
            return version;
        }

        private String requester() {
            return query(
                            "select requester::text as canonical, 0 as entry, '' as kind from ticket where serial = ? and ? >= 0")
                    .get(0)
                    .canonical();
        }

        /** Adds the entries that the last exchange left to it. */
        private void stored() {
            ArrayNode stored = Golden.array();
            for (Stored entry : query(
                    "select convert_from(canonical, 'UTF8') || coalesce(' ' || convert_from(words, 'UTF8'), '') as canonical, entry, kind from trail_entry where ticket = ? and entry > ? order by entry")) {
                stored.add(placeholders.inCanonical(entry.canonical()));
                kinds.add(entry.kind());
                version = entry.entry();
            }
            exchanges.get(exchanges.size() - 1).set("stored", stored);
        }

        private List<Stored> query(String sql) {
            try (Connection database = TestDatabase.owner();
                    var statement = database.prepareStatement(sql)) {
                statement.setInt(1, serial);
                statement.setInt(2, version);
                ResultSet rows = statement.executeQuery();
                List<Stored> found = new ArrayList<>();
                while (rows.next()) {
                    found.add(new Stored(rows.getInt("entry"), rows.getString("kind"), rows.getString("canonical")));
                }
                return found;
            } catch (SQLException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    private record Stored(int entry, String kind, String canonical) {}

    // ---- the file

    /** Compares with the file, exchange by exchange; or writes it anew if that is asked for. */
    void check() {
        List<String> now = exchanges.stream().map(Golden::text).toList();
        try {
            if (Boolean.getBoolean("recording.write")) {
                String anew = "[\n" + String.join(",\n", now) + "\n]\n";
                Files.createDirectories(READ.resolve("before"));
                Files.createDirectories(READ.resolve("after"));
                Files.writeString(READ.resolve("before/api.json"), Golden.unnumbered(Files.readString(FILE)));
                Files.writeString(READ.resolve("after/api.json"), Golden.unnumbered(anew));
                Files.writeString(FILE, anew);
                return;
            }
            JsonNode recorded = Golden.read(Files.readString(FILE, StandardCharsets.UTF_8));
            for (int i = 0; i < Math.max(now.size(), recorded.size()); i++) {
                String before = i < recorded.size() ? Golden.text(recorded.get(i)) : "";
                String after = i < now.size() ? now.get(i) : "";
                if (!before.equals(after)) {
                    fail("Exchange " + (i + 1) + " of " + recorded.size() + " differs from the recording.\n"
                            + Golden.difference(before, after));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
