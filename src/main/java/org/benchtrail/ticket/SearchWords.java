package org.benchtrail.ticket;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The words of a text as the database is asked for them; nothing of its query syntax passes. */
final class SearchWords {
    private static final int MOST = 12;

    /**
     * So many rows are found by an index and then sorted; where more have the words, it is quicker to go through the rows in order until a
     * page is full. Of n rows that costs alike at the root of 26 n, which is 5,100 of a million.
     */
    static final int FEW = 4000;

    /** The database refuses a word of more than 2046 bytes; as a prefix, the beginning finds no less. */
    private static final int LONGEST = 100;

    /** So many of the newest 500 have words that more than {@link #FEW} of a million have: they are not looked up at all. */
    static final int OFTEN = 10;

    private SearchWords() {}

    /** In small letters, each once. */
    static List<String> of(String text, int shortest) {
        return Stream.of(text.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+"))
                .filter(word -> word.length() >= shortest)
                .map(SearchWords::beginning)
                .distinct()
                .limit(MOST)
                .toList();
    }

    /** Each as a query for what begins with it. */
    static List<String> beginnings(String text, int shortest) {
        return beginnings(of(text, shortest));
    }

    static List<String> beginnings(List<String> words) {
        return words.stream().map(word -> "'" + word + "':*").toList();
    }

    private static String beginning(String word) {
        return word.codePointCount(0, word.length()) <= LONGEST
                ? word
                : word.substring(0, word.offsetByCodePoints(0, LONGEST));
    }
}
