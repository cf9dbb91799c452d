package org.benchtrail.core.diagnosis;

import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Words to look for in what somebody said, in their order and within one clause.
 *
 * <p>Between two of them one other word may stand that does not deny. Each may have an ending (s, es, d, ed, ing) behind it; a star at
 * the end stands for the rest of the last. A phrase does not count where one of the three words before it denies, unless it
 * begins with such a word itself.
 *
 * @param text as it is written in the catalogue
 * @param words its words in lower case
 */
public record Phrase(String text, List<String> words) {
    private static final int DENIED_WITHIN = 3;
    private static final int BETWEEN = 1;
    private static final Set<String> DENYING = Set.of("no", "not", "never", "without", "nor", "cannot");
    static final Set<String> ENDINGS = Set.of("", "s", "es", "d", "ed", "ing", "'s");

    public Phrase {
        words = List.copyOf(words);
    }

    public static Phrase of(String text) {
        return new Phrase(text, Said.words(text));
    }

    /** The word that it begins with, as {@link Said#beginnings()} has it; empty if that is left open, or it has none. */
    public Optional<String> first() {
        return words.stream().findFirst().filter(word -> !word.endsWith("*"));
    }

    /** Whether the text says it and does not deny it. */
    public boolean isIn(Said said) {
        return !words.isEmpty() && mayBegin(said) && said.clauses().stream().anyMatch(this::isIn);
    }

    /** Whether any word of it could be the first: nearly all phrases end here, so it costs one look. */
    private boolean mayBegin(Said said) {
        String first = words.get(0);
        return first.endsWith("*")
                ? said.words().stream().anyMatch(word -> is(first, word))
                : said.beginnings().contains(first);
    }

    private boolean isIn(List<String> clause) {
        for (int at = 0; at + words.size() <= clause.size(); at++) {
            if (isAt(clause, at) && (denies(words.get(0)) || !isDenied(clause, at))) {
                return true;
            }
        }
        return false;
    }

    private boolean isAt(List<String> clause, int start) {
        if (!is(words.get(0), clause.get(start))) {
            return false;
        }
        int at = start + 1;
        for (String word : words.subList(1, words.size())) {
            int most = Math.min(at + BETWEEN, clause.size() - 1);
            while (at <= most && !is(word, clause.get(at)) && !denies(clause.get(at))) {
                at++;
            }
            if (at > most || !is(word, clause.get(at))) {
                return false;
            }
            at++;
        }
        return true;
    }

    private static boolean is(String asked, String said) {
        if (asked.endsWith("*")) {
            return said.startsWith(asked.substring(0, asked.length() - 1));
        }
        return said.startsWith(asked) && ENDINGS.contains(said.substring(asked.length()));
    }

    private static boolean isDenied(List<String> clause, int at) {
        return clause.subList(Math.max(0, at - DENIED_WITHIN), at).stream().anyMatch(Phrase::denies);
    }

    private static boolean denies(String word) {
        return DENYING.contains(word) || word.endsWith("n't");
    }
}
