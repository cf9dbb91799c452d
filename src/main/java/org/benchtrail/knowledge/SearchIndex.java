package org.benchtrail.knowledge;

/** Where a search looks: cases or known causes. Both are ranked alike. */
enum SearchIndex {
    CASES("closed_case", "serial", "closed", "not reopened"),
    CAUSES("known_cause", "id", "changed", "state <> 'RETIRED'");

    /** How many of the newest are looked at one by one before the index of words is asked. */
    static final int WALK = 1_500;

    /** How far back it goes next: cheaper than gathering from the index what tens of thousands have. */
    static final int FURTHER = 10 * WALK;

    /** So many found that far back are enough. */
    static final int FEW_ENOUGH = 10;

    /** So many found among the newest are enough to rank; then the words are too common to rank all that have them. */
    static final int ENOUGH = 30;

    /** Words that fewer of the newest have are rare: the index is asked for them alone, as long as there are any. */
    static final int RARE = WALK / 50;

    /** A word that so many of the newest have is too common to ask the index for. */
    static final int COMMON = WALK / 8;

    /** At most so many of what the index finds are ranked, the newest. */
    static final int RANKED = 500;

    /** Rows of an answer, over all its pages. */
    static final int SHOWN = 200;

    private final String table;
    private final String key;
    private final String time;
    private final String shown;

    SearchIndex(String table, String key, String time, String shown) {
        this.table = table;
        this.key = key;
        this.time = time;
        this.shown = shown;
    }

    /** Ranks what fits among the newest. Parameters: category where it is filtered, query. */
    String newest(boolean ofCategory, boolean covered) {
        return "with q as not materialized (select cast(? as tsquery) as query), newest as materialized (select "
                + columns() + " from " + table
                + " where " + shown + category(ofCategory) + " order by " + order() + " limit " + WALK + "),"
                + " hits as (select k, at, search from newest, q where search @@ query)"
                + ranked(covered, "(select count(*) from newest)");
    }

    /** Counts how many of the newest have each term. Parameters: the terms as queries, then the category where it is filtered. */
    String counts(boolean ofCategory, int terms) {
        String each = String.join(
                ", ", java.util.Collections.nCopies(terms, "count(*) filter (where search @@ cast(? as tsquery))"));
        return "select " + each + " from (select search from " + table + " where " + shown + category(ofCategory)
                + " order by " + order() + " limit " + WALK + ") newest";
    }

    /**
     * Ranks the newest of what the index of words finds. Parameters: query; its rare words alone, which the index is asked
     * for; category where it is filtered. The whole query is hidden from the index by {@code coalesce}: for a common word
     * the index would have to gather hundreds of thousands of rows before it could drop nearly all of them.
     */
    String indexed(boolean ofCategory, boolean covered) {
        return "with q as not materialized (select cast(? as tsquery) as query), found as materialized (select " + key
                + " as k, " + time + " as at from " + table
                + ", q where search @@ cast(? as tsquery) and coalesce(search, '') @@ query and " + shown
                + category(ofCategory) + "), hits as (select " + columns() + " from " + table + " where " + key
                + " in (select k from found order by at desc, k desc limit " + RANKED + "))"
                + ranked(covered, "(select count(*) from found)");
    }

    /** As {@link #newest}, but further back, for words that are neither common nor rare, or seldom stand together. */
    String further(boolean ofCategory, boolean covered) {
        return newest(ofCategory, covered).replace("limit " + WALK + ")", "limit " + FURTHER + ")");
    }

    private String columns() {
        return key + " as k, " + time + " as at, search";
    }

    private String order() {
        return time + " desc, " + key + " desc";
    }

    private static String category(boolean filtered) {
        return filtered ? " and category = ?" : "";
    }

    /** Where every word has to be there, how near they stand counts; where any will do, how many are there. */
    private static String ranked(boolean covered, String looked) {
        return " select k, count(*) over () as total, " + looked + " as looked from hits, q order by "
                + (covered ? "ts_rank_cd" : "ts_rank") + "(search, query, 1) desc, at desc, k desc limit " + SHOWN;
    }
}
