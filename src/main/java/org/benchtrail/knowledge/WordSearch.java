package org.benchtrail.knowledge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Category;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;

/**
 * Finds and ranks by words, within a bounded time however many cases there are: the newest are looked at first; only words
 * that are rare among them are looked up in the index, and of what that finds the newest are ranked.
 */
@ApplicationScoped
class WordSearch {
    /** Below this many results, words that nobody wrote are taken for mistyped. */
    private static final int FEW = 3;

    private final EntityManager database;
    private final WordList words;
    private final SqlText sql = SqlText.of(WordSearch.class);

    WordSearch(EntityManager database, WordList words) {
        this.database = database;
        this.words = words;
    }

    private record Stem(String word, String stem) {}

    /** Begins a search: bounds what it may cost until the transaction ends, and reads what was typed. */
    QueryTerms begin(String typed) {
        Sql.of(database, sql.statement("settings")).values(String.class);
        List<String> typedWords = SearchText.words(typed);
        Map<String, String> stems = Sql.of(database, sql.statement("stems"))
                .with("words", typedWords.toArray(String[]::new))
                .rows(Stem.class)
                .stream()
                .collect(Collectors.toMap(Stem::word, Stem::stem, (same, again) -> same));
        return QueryTerms.of(typedWords, stems);
    }

    /** The best of an index, of what has all terms. */
    RankedKeys all(SearchIndex index, QueryTerms terms, @Nullable Category category) {
        return rank(terms, terms.all(), new SearchScope(index, category, true));
    }

    /** The best of an index, of what has any term. */
    RankedKeys any(SearchIndex index, QueryTerms terms, @Nullable Category category) {
        return rank(terms, terms.any(), new SearchScope(index, category, false));
    }

    /** @param every whether every word has to be there, or any will do */
    private record SearchScope(SearchIndex index, @Nullable Category category, boolean every) {}

    private RankedKeys rank(QueryTerms terms, String query, SearchScope scope) {
        Looked newest = looked(statement("newest", scope, SearchIndex.WALK).with("query", query));
        if (newest.total() >= SearchIndex.ENOUGH || newest.looked() < SearchIndex.WALK) {
            return newest.ranked(SearchIndex.WALK);
        }
        Map<String, Integer> having = having(terms.terms(), scope, newest.total());
        // a word that none of the newest has would hardly be found further back, and is quick to look up
        if (Collections.min(having.values()) > 0) {
            Looked further =
                    looked(statement("newest", scope, SearchIndex.FURTHER).with("query", query));
            if (further.total() >= SearchIndex.FEW_ENOUGH || further.looked() < SearchIndex.FURTHER) {
                return further.ranked(SearchIndex.FURTHER);
            }
        }
        String rare = scope.every() ? rarest(terms, having).all() : terms.any();
        return looked(statement("indexed", scope, 0).with("query", query).with("rare", rare))
                .ranked(SearchIndex.RANKED + 1);
    }

    private Sql statement(String name, SearchScope scope, int walk) {
        List<String> conditions = scope.category() == null ? List.of() : List.of("of the kind");
        String text = scope.index().statement(sql.statement(name, conditions), scope.every(), walk);
        Sql statement = Sql.of(database, text);
        return scope.category() == null
                ? statement
                : statement.with("category", scope.category().name());
    }

    /** The rare terms; where there are none, those that are not common; all, if they are common and yet never together. */
    private static QueryTerms rarest(QueryTerms terms, Map<String, Integer> having) {
        for (int bound : new int[] {SearchIndex.RARE, SearchIndex.COMMON}) {
            QueryTerms rare = terms.only(t -> having.getOrDefault(t.word(), 0) < bound);
            if (!rare.isEmpty()) {
                return rare;
            }
        }
        return terms;
    }

    private record Having(String word, int found) {}

    /**
     * How many of the newest have each word.
     *
     * @param total how many of them fit; where any word will do, that is all that has to be known
     */
    private Map<String, Integer> having(List<QueryTerms.QueryTerm> terms, SearchScope scope, int total) {
        if (!scope.every() || terms.size() == 1) {
            return Map.of(terms.get(0).word(), total);
        }
        Map<String, Integer> having = new HashMap<>();
        statement("counts", scope, SearchIndex.WALK)
                .with("words", terms.stream().map(QueryTerms.QueryTerm::word).toArray(String[]::new))
                .with("queries", terms.stream().map(QueryTerms.QueryTerm::query).toArray(String[]::new))
                .rows(Having.class)
                .forEach(h -> having.put(h.word(), h.found()));
        return having;
    }

    /**
     * What one statement found.
     *
     * @param looked rows that it looked at; at least {@link SearchIndex#FURTHER} if it found none and so could not tell
     */
    private record Looked(List<Long> keys, int total, int looked) {
        /** @param bound of the rows that it would look at; with fewer it saw them all */
        RankedKeys ranked(int bound) {
            return new RankedKeys(keys, total, keys.isEmpty() || looked < bound);
        }
    }

    private record LookedRow(long k, int total, int looked) {}

    private static Looked looked(Sql statement) {
        List<LookedRow> rows = statement.rows(LookedRow.class);
        return rows.isEmpty()
                ? new Looked(List.of(), 0, SearchIndex.FURTHER)
                : new Looked(
                        rows.stream().map(LookedRow::k).toList(),
                        rows.get(0).total(),
                        rows.get(0).looked());
    }

    /** Whether so few results call for a look at the spelling. */
    static boolean isLittle(int results) {
        return results < FEW;
    }

    /** For each word that begins no word of the knowledge base, those that are spelt most like it. */
    Map<String, List<String>> mistyped(QueryTerms terms) {
        Map<String, List<String>> better = new HashMap<>();
        for (QueryTerms.QueryTerm term : terms.terms()) {
            if (term.word().length() >= 3 && !words.begins(term.word())) {
                List<String> alike = words.alike(term.word());
                if (!alike.isEmpty()) {
                    better.put(term.word(), alike);
                }
            }
        }
        return better;
    }
}
