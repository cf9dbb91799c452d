package org.benchtrail.knowledge;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.method.Category;
import org.jspecify.annotations.Nullable;

/**
 * Finds and ranks by words, within a bounded time however many cases there are: the newest are looked at first; only words
 * that are rare among them are looked up in the index, and of what that finds the newest are ranked.
 */
final class WordSearch {
    /** Below this many results, words that nobody wrote are taken for mistyped. */
    private static final int FEW = 3;

    private static final int ALTERNATIVES = 2;

    /** The planner must not read whole tables for a word that it thinks common, nor compile a query of a few milliseconds; a
     * list of rows must not outgrow its memory, or every row of its pages is looked at. */
    private static final String SETTINGS =
            "select set_config('enable_seqscan', 'off', true), set_config('jit', 'off', true),"
                    + " set_config('work_mem', '32MB', true), set_config('statement_timeout', '5000', true)";

    private final Connection connection;

    /** @param connection in a transaction, whose settings are changed */
    WordSearch(Connection connection) throws SQLException {
        this.connection = connection;
        try (PreparedStatement statement = connection.prepareStatement(SETTINGS)) {
            statement.executeQuery().close();
        }
    }

    /** What was typed as terms. */
    QueryTerms terms(String typed) throws SQLException {
        List<String> words = SearchText.words(typed);
        Map<String, String> stems = new HashMap<>();
        try (PreparedStatement statement = connection.prepareStatement(
                "select w, array_to_string(ts_lexize('english_stem', w), ' ') from unnest(?) w")) {
            statement.setArray(1, connection.createArrayOf("text", words.toArray()));
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    stems.put(row.getString(1), row.getString(2));
                }
            }
        }
        return QueryTerms.of(words, stems);
    }

    /** The best on a shelf, of what has all terms. */
    RankedKeys all(SearchIndex shelf, QueryTerms terms, @Nullable Category category) throws SQLException {
        return rank(shelf, terms, terms.all(), true, category);
    }

    /** The best on a shelf, of what has any term. */
    RankedKeys any(SearchIndex shelf, QueryTerms terms, @Nullable Category category) throws SQLException {
        return rank(shelf, terms, terms.any(), false, category);
    }

    private RankedKeys rank(
            SearchIndex shelf, QueryTerms terms, String query, boolean every, @Nullable Category category)
            throws SQLException {
        Looked newest = run(shelf.newest(category != null, every), category, query);
        if (newest.total >= SearchIndex.ENOUGH || newest.looked < SearchIndex.WALK) {
            return newest.ranked(SearchIndex.WALK);
        }
        List<QueryTerms.QueryTerm> each = terms.terms();
        Map<String, Integer> having = every && each.size() > 1
                ? having(shelf, each, category)
                : Map.of(each.get(0).word(), newest.total);
        // a word that none of the newest has would hardly be found further back, and is quick to look up
        if (Collections.min(having.values()) > 0) {
            Looked further = run(shelf.further(category != null, every), category, query);
            if (further.total >= SearchIndex.FEW_ENOUGH || further.looked < SearchIndex.FURTHER) {
                return further.ranked(SearchIndex.FURTHER);
            }
        }
        QueryTerms asked = every ? rarest(terms, having) : terms;
        String index = every ? asked.all() : asked.any();
        return run(shelf.indexed(category != null, every), category, query, index)
                .ranked(SearchIndex.RANKED + 1);
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

    /** How many of the newest have each word. */
    private Map<String, Integer> having(SearchIndex shelf, List<QueryTerms.QueryTerm> each, @Nullable Category category)
            throws SQLException {
        Map<String, Integer> having = new HashMap<>();
        try (PreparedStatement statement = connection.prepareStatement(shelf.counts(category != null, each.size()))) {
            for (int i = 0; i < each.size(); i++) {
                statement.setString(i + 1, each.get(i).query());
            }
            if (category != null) {
                statement.setString(each.size() + 1, category.name());
            }
            try (ResultSet row = statement.executeQuery()) {
                row.next();
                for (int i = 0; i < each.size(); i++) {
                    having.put(each.get(i).word(), row.getInt(i + 1));
                }
            }
        }
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

    private Looked run(String sql, @Nullable Category category, String... queries) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < queries.length; i++) {
                statement.setString(i + 1, queries[i]);
            }
            if (category != null) {
                statement.setString(queries.length + 1, category.name());
            }
            try (ResultSet row = statement.executeQuery()) {
                List<Long> keys = new ArrayList<>();
                int total = 0;
                int looked = 0;
                while (row.next()) {
                    keys.add(row.getLong(1));
                    total = row.getInt(2);
                    looked = row.getInt(3);
                }
                return new Looked(keys, total, keys.isEmpty() ? SearchIndex.FURTHER : looked);
            }
        }
    }

    /** Whether so few results call for a look at the spelling. */
    static boolean isLittle(int results) {
        return results < FEW;
    }

    /** For each word that begins no word of the knowledge base, those that are spelt most like it. */
    Map<String, List<String>> mistyped(QueryTerms terms) throws SQLException {
        Map<String, List<String>> better = new HashMap<>();
        for (QueryTerms.QueryTerm term : terms.terms()) {
            if (term.word().length() >= 3 && !known(term)) {
                List<String> alike = alike(term.word());
                if (!alike.isEmpty()) {
                    better.put(term.word(), alike);
                }
            }
        }
        return better;
    }

    private boolean known(QueryTerms.QueryTerm term) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement("select exists (select from knowledge_word where word like ?)")) {
            statement.setString(1, term.word() + "%");
            try (ResultSet row = statement.executeQuery()) {
                return row.next() && row.getBoolean(1);
            }
        }
    }

    private List<String> alike(String word) throws SQLException {
        List<String> words = new ArrayList<>();
        try (PreparedStatement statement = connection.prepareStatement("select word from knowledge_word where word % ?"
                + " order by similarity(word, ?) desc, word limit " + ALTERNATIVES)) {
            statement.setString(1, word);
            statement.setString(2, word);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    words.add(row.getString(1));
                }
            }
        }
        return words;
    }
}
