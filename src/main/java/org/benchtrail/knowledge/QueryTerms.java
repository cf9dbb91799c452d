package org.benchtrail.knowledge;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * The words of a search in the database's query form. Each word stands for all that begin with its stem, so that 'fans' finds
 * 'fan' and the other way round; the last word also for all that begin with what was typed of it. Nothing of the query
 * syntax passes, since words are letters and digits.
 */
record QueryTerms(List<QueryTerm> terms) {
    private static final int MOST = 12;

    QueryTerms {
        terms = List.copyOf(terms);
    }

    /**
     * One word.
     *
     * @param forms alternatives; each beginning ends in {@code :*}
     */
    record QueryTerm(String word, Set<String> forms) {
        /** As a query of its own. */
        String query() {
            return forms.stream().sorted().collect(Collectors.joining(" | ", "(", ")"));
        }
    }

    /**
     * Reads what was typed.
     *
     * @param stems of the words by the database's stemmer; empty for a word that says nothing by itself, such as 'the'
     */
    static QueryTerms of(Collection<String> words, Map<String, String> stems) {
        List<String> distinct = words.stream().distinct().limit(MOST).toList();
        boolean telling = distinct.stream().anyMatch(w -> !stem(w, stems).isEmpty());
        List<QueryTerm> terms = new ArrayList<>();
        for (int i = 0; i < distinct.size(); i++) {
            String word = distinct.get(i);
            String stem = stem(word, stems);
            boolean last = i == distinct.size() - 1;
            if (!stem.isEmpty()) {
                terms.add(new QueryTerm(word, forms(word, stem, last)));
            } else if (!telling) {
                terms.add(new QueryTerm(word, Set.of(last ? beginning(word) : exact(word))));
            }
        }
        return new QueryTerms(terms);
    }

    private static String stem(String word, Map<String, String> stems) {
        return stems.getOrDefault(word, word);
    }

    private static Set<String> forms(String word, String stem, boolean last) {
        // the stemmer writes 'batteri' for batteries and battery alike: what all of them begin with is one letter
        // shorter
        String root = stem.endsWith("i") && !word.equals(stem) ? stem.substring(0, stem.length() - 1) : stem;
        boolean stands = root.length() >= 3 && (!root.equals(word) || word.length() >= 4);
        if (stands && word.startsWith(root)) {
            // every form of the word begins so; to name the word beside it would make the index look twice
            return Set.of(beginning(root));
        }
        String typed = last ? beginning(word) : exact(word);
        return stands ? Set.of(typed, beginning(root)) : Set.of(typed);
    }

    private static String exact(String word) {
        return "'" + word + "'";
    }

    private static String beginning(String word) {
        return "'" + word + "':*";
    }

    boolean isEmpty() {
        return terms.isEmpty();
    }

    /** Every word has to be there. */
    String all() {
        return terms.stream().map(QueryTerm::query).collect(Collectors.joining(" & "));
    }

    /** Any word will do. */
    String any() {
        return terms.stream().map(QueryTerm::query).collect(Collectors.joining(" | "));
    }

    QueryTerms only(Predicate<QueryTerm> which) {
        return new QueryTerms(terms.stream().filter(which).toList());
    }

    /** With other words in place of mistyped ones. */
    QueryTerms corrected(Map<String, List<String>> better) {
        return new QueryTerms(terms.stream()
                .map(t -> better.containsKey(t.word())
                        ? new QueryTerm(
                                t.word(),
                                better.get(t.word()).stream()
                                        .map(QueryTerms::exact)
                                        .collect(Collectors.toSet()))
                        : t)
                .toList());
    }
}
