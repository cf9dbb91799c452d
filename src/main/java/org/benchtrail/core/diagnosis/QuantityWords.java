package org.benchtrail.core.diagnosis;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The words by which a reading is known to be a finding's, where nobody said so.
 *
 * @param any one of these has to be there with all its words, in any order
 * @param unit what the reading has to be convertible to
 * @param without none of these words may be there
 * @param finding id in the same category
 */
public record QuantityWords(List<String> any, String unit, List<String> without, String finding) {
    public QuantityWords {
        any = List.copyOf(any);
        without = List.copyOf(without);
    }

    /** @param words of quantity and point together */
    public boolean match(String words) {
        Set<String> said = words(words);
        return any.stream().anyMatch(phrase -> said.containsAll(words(phrase)))
                && without.stream().noneMatch(phrase -> said.containsAll(words(phrase)));
    }

    /** Letter case, and how a rail is spelt, make no difference. */
    private static Set<String> words(String text) {
        String plain = text.toLowerCase(Locale.ROOT)
                .replace("cpu", "processor")
                .replaceAll("(?<![\\p{Alnum}.])\\+?12 ?v(?!\\p{Alnum})", "+12")
                .replaceAll("(?<![\\p{Alnum}.])\\+12(?!\\p{Alnum})", "+12");
        return Arrays.stream(plain.split("[^\\p{L}\\p{N}+.-]+"))
                .map(word -> word.replaceAll("\\.$", ""))
                .filter(word -> !word.isEmpty())
                .collect(Collectors.toSet());
    }
}
