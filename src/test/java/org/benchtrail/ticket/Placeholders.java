package org.benchtrail.ticket;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.time.Instant;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Stand-ins for what is new on every run: times, numbers of tickets and rows, hashes, secrets. The same value has the same
 * stand-in throughout, numbered by the order of appearance, so that what refers to what is still told.
 */
final class Placeholders {
    private static final Pattern TIME =
            Pattern.compile("(20[0-8]\\d-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(?:\\.\\d{1,9})?Z)");
    private static final Pattern TICKET = Pattern.compile("(?<!\\d)(\\d{5,9}-\\d)(?!\\d)");
    private static final Pattern HASH =
            Pattern.compile("(?<=\"(?:previous|hash)\":\")([1-9a-f][0-9a-f]{63}|0[0-9a-f]{63})");
    private static final Pattern SENT = Pattern.compile("(?<=\"request\":\")([0-9a-f-]{36})");
    private static final Pattern SALT = Pattern.compile("(?<=\"salt\":\")([A-Za-z0-9_-]{22}(?:[A-Za-z0-9_-]{21})?)");
    private static final Pattern COMMITMENT = Pattern.compile("(?<=\"commit(?:ment|ted)\":\")([0-9a-f]{64})");
    private static final Pattern POLICY = Pattern.compile("(?<=\"policy\":\")([0-9a-f]{16})");
    private static final Pattern REQUESTER = Pattern.compile("(?<=\"requester\":)(\\d+)");
    private static final Pattern KNOWN = Pattern.compile("(?<=\"known\":|/api/knowledge/)(\\d{1,8})(?!\\d)");
    private static final Pattern CATALOGUE = Pattern.compile("(?<=\"catalogue\":)(\\d+)");
    private static final Pattern TOKEN = Pattern.compile("(?<=/api/me/tokens/)(\\d+)");
    private static final Pattern PAGE = Pattern.compile("(?<=after=)([A-Za-z0-9_-]{20,})");
    private static final Pattern PAGE_NAME = Pattern.compile("[A-Za-z0-9_-]{20,}");
    private static final String START = "0".repeat(64);

    /** Largest number that a row of a test's database gets; larger ones are the journey's own and stay. */
    private static final long LARGEST_ROW = 900_000;

    private final Map<String, String> given = new HashMap<>();
    private final Map<String, Integer> counts = new HashMap<>();
    private final Set<String> tickets = new HashSet<>();

    /** A ticket of the journey; the number of any other is shown as it is. */
    void ticket(String number) {
        tickets.add(number);
    }

    private String standIn(String kind, String value) {
        return given.computeIfAbsent(
                kind + " " + value, k -> "{" + kind + "-" + counts.merge(kind, 1, Integer::sum) + "}");
    }

    /** Text of an address, a header, or a sentence. */
    String in(String text) {
        String plain = replace(TIME, text, this::time);
        plain = replace(TICKET, plain, n -> tickets.contains(n) ? standIn("ticket", n) : n);
        plain = replace(KNOWN, plain, id -> standIn("cause", id));
        plain = replace(TOKEN, plain, id -> standIn("token", id));
        return replace(PAGE, plain, token -> standIn("page", token));
    }

    /** The canonical text of an entry, of which everything else stays byte for byte. */
    String inCanonical(String canonical) {
        String plain = in(canonical);
        plain = replace(HASH, plain, h -> h.equals(START) ? h : standIn("hash", h));
        plain = replace(SENT, plain, id -> standIn("request", id));
        plain = replace(SALT, plain, salt -> "{salt}");
        plain = replace(COMMITMENT, plain, commitment -> "{commitment}");
        plain = replace(POLICY, plain, print -> "{policy}");
        plain = replace(REQUESTER, plain, id -> standIn("requester", id));
        return replace(CATALOGUE, plain, version -> standIn("catalogue", version));
    }

    /** JSON that was exchanged over that path. */
    JsonNode in(String path, JsonNode node) {
        return node.isContainerNode() ? container(path, node.deepCopy()) : value(path, "", node);
    }

    private JsonNode container(String path, JsonNode node) {
        if (node instanceof ObjectNode object) {
            object.fieldNames().forEachRemaining(name -> object.set(name, value(path, name, object.get(name))));
        } else if (node instanceof ArrayNode array) {
            for (int i = 0; i < array.size(); i++) {
                array.set(i, value(path, "", array.get(i)));
            }
        }
        return node;
    }

    private JsonNode value(String path, String name, JsonNode node) {
        if (node.isContainerNode()) {
            return container(path, node);
        }
        if (node.isIntegralNumber() && node.asLong() < LARGEST_ROW) {
            String kind = rowKind(path, name);
            return kind.isEmpty() ? node : TextNode.valueOf(standIn(kind, node.asText()));
        }
        return node.isTextual() ? TextNode.valueOf(text(name, node.asText())) : node;
    }

    private String text(String name, String text) {
        return switch (name) {
            case "canonical" -> inCanonical(text);
            case "request" -> standIn("request", text);
            case "hash" -> standIn("hash", text);
            case "commitment" -> "{commitment}";
            case "salt" -> "{salt}";
            case "secret" -> standIn("secret", text);
            case "reference" -> standIn("reference", text);
            case "next" -> PAGE_NAME.matcher(text).matches() ? standIn("page", text) : in(text);
            default -> in(text);
        };
    }

    private static String rowKind(String path, String name) {
        return switch (name) {
            case "requester" -> "requester";
            case "id" -> path.startsWith("/api/me") ? "token" : path.startsWith("/api/knowledge") ? "cause" : "";
            case "known", "mergedInto", "into" -> "cause";
            case "catalogue" -> "catalogue";
            case "current" -> path.startsWith("/api/tickets") || path.startsWith("/api/knowledge") ? "" : "catalogue";
            default -> "";
        };
    }

    private String time(String written) {
        return standIn("time", Instant.parse(written).toString());
    }

    private static String replace(Pattern what, String in, Function<String, String> by) {
        return what.matcher(in).replaceAll(found -> Matcher.quoteReplacement(by.apply(found.group(1))));
    }
}
