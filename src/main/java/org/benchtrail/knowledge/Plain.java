package org.benchtrail.knowledge;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Text as the index takes it: words of letters and digits, in small letters. */
final class Plain {
    /** In UTF-16 code units; the index of words takes one megabyte of text at most. */
    private static final int MOST = 150_000;

    /** The database refuses longer words; as a beginning, this finds no less. */
    private static final int LONGEST = 100;

    private Plain() {}

    /** The words in their order, parted by single spaces. The database's own reading of hyphens and figures plays no part. */
    static String index(String text) {
        return String.join(" ", words(text.substring(0, Math.min(text.length(), MOST))));
    }

    static List<String> words(String text) {
        return Arrays.stream(text.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+"))
                .filter(word -> !word.isEmpty())
                .map(Plain::beginning)
                .toList();
    }

    private static String beginning(String word) {
        return word.codePointCount(0, word.length()) <= LONGEST
                ? word
                : word.substring(0, word.offsetByCodePoints(0, LONGEST));
    }
}
