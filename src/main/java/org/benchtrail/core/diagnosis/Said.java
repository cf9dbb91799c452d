package org.benchtrail.core.diagnosis;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A text made ready to look for phrases in: its clauses, each in words.
 *
 * @param words every word of it, to pass over quickly what cannot be there
 * @param beginnings every word, with and without what may be an ending of it: whatever a phrase's first word could be
 */
public record Said(List<List<String>> clauses, Set<String> words, Set<String> beginnings) {
    private static final Pattern AROUND = Pattern.compile("^['.-]+|['.-]+$");

    /** Words that people use for one thing, each with the one that is compared: in phrases and in what is said alike. */
    private static final Map<String, String> ALIKE = Map.ofEntries(
            Map.entry("lamp", "light"),
            Map.entry("lamps", "lights"),
            Map.entry("led", "light"),
            Map.entry("leds", "lights"),
            Map.entry("wi-fi", "wifi"),
            Map.entry("wlan", "wifi"),
            Map.entry("symbol", "icon"),
            Map.entry("pc", "computer"),
            Map.entry("pcs", "computers"),
            Map.entry("machine", "computer"),
            Map.entry("machines", "computers"),
            Map.entry("notebook", "laptop"),
            Map.entry("notebooks", "laptops"),
            Map.entry("recognized", "recognised"),
            Map.entry("color", "colour"),
            Map.entry("disc", "disk"),
            Map.entry("rebooted", "restarted"),
            Map.entry("reboots", "restarts"),
            Map.entry("reboot", "restart"));

    public Said {
        clauses = List.copyOf(clauses);
        words = Set.copyOf(words);
        beginnings = Set.copyOf(beginnings);
    }

    /** Comma, semicolon, colon, line end and a full stop before a blank close a clause. */
    public static Said of(String text) {
        List<List<String>> clauses = Arrays.stream(
                        text.toLowerCase(Locale.ROOT).replace('\u2019', '\'').split("[,;:\\n\\r]|[.?!](?=\\s|$)"))
                .map(Said::words)
                .filter(words -> !words.isEmpty())
                .toList();
        Set<String> all = new HashSet<>();
        clauses.forEach(all::addAll);
        return new Said(clauses, all, all.stream().flatMap(Said::beginnings).collect(Collectors.toSet()));
    }

    private static Stream<String> beginnings(String word) {
        return Phrase.ENDINGS.stream()
                .filter(word::endsWith)
                .map(ending -> word.substring(0, word.length() - ending.length()));
    }

    /** What is neither letter, digit nor one of . + - ' parts words; quotes, dots and hyphens around one are none of it. */
    static List<String> words(String text) {
        return Arrays.stream(text.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}.+'*-]+"))
                .map(word -> AROUND.matcher(word).replaceAll(""))
                .filter(word -> !word.isEmpty())
                .map(word -> ALIKE.getOrDefault(word, word))
                .toList();
    }
}
