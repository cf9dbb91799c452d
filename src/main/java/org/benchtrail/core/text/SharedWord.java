package org.benchtrail.core.text;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Whether a text tells a name: a word that both have. */
public final class SharedWord {
    /** Shorter ones, such as of, the and initials, tell nobody apart. */
    private static final int SHORTEST = 4;

    private static final Pattern BETWEEN = Pattern.compile("[^\\p{L}\\p{M}\\p{N}]");

    private SharedWord() {}

    /** The first word of at least four letters or digits of the text that one of the others has as well, as it is typed there. */
    public static Optional<String> of(String text, String... others) {
        Set<String> words = Arrays.stream(others)
                .flatMap(SharedWord::words)
                .map(word -> word.toLowerCase(Locale.ROOT))
                .collect(Collectors.toSet());
        return words(text)
                .filter(word -> words.contains(word.toLowerCase(Locale.ROOT)))
                .findFirst();
    }

    private static Stream<String> words(String text) {
        return BETWEEN.splitAsStream(text).filter(word -> word.length() >= SHORTEST);
    }
}
