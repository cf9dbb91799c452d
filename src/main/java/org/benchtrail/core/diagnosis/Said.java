package org.benchtrail.core.diagnosis;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * A text made ready to look for phrases in: its clauses, each in words.
 *
 * @param words every word of it, to pass over quickly what cannot be there
 */
public record Said(List<List<String>> clauses, Set<String> words) {
    private static final Pattern AROUND = Pattern.compile("^['.-]+|['.-]+$");

    public Said {
        clauses = List.copyOf(clauses);
        words = Set.copyOf(words);
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
        return new Said(clauses, all);
    }

    /** What is neither letter, digit nor one of . + - ' parts words; quotes, dots and hyphens around one are none of it. */
    static List<String> words(String text) {
        return Arrays.stream(text.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}.+'*-]+"))
                .map(word -> AROUND.matcher(word).replaceAll(""))
                .filter(word -> !word.isEmpty())
                .toList();
    }
}
