package org.benchtrail.knowledge;

/** Where a search looks: cases or known causes. Both are ranked alike, within the same bounds. */
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

    /**
     * A statement of {@link WordSearch} for this index.
     *
     * @param every whether every word has to be there: then how near they stand counts, else how many are there
     * @param walk how many of the newest it looks at
     */
    String statement(String text, boolean every, int walk) {
        return text.replace("{table}", table)
                .replace("{key}", key)
                .replace("{time}", time)
                .replace("{shown}", shown)
                .replace("{rank}", every ? "ts_rank_cd" : "ts_rank")
                .replace("{walk}", String.valueOf(walk))
                .replace("{ranked}", String.valueOf(RANKED))
                .replace("{rows}", String.valueOf(SHOWN));
    }
}
