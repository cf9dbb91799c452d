package org.benchtrail.training;

import java.util.List;

/**
 * Somebody's forecasts, and what they say of them.
 *
 * @param person account of whose they are
 * @param name of whose they are
 * @param own whether they are the viewer's
 * @param words how sure against how right, a sentence
 * @param chosenOnly whether so many were skipped that the rest may be chosen ones
 * @param skipped share of what was due, with its count
 * @param scores in pairs; none while nothing is scored
 * @param cells how often what was stated came
 * @param waiting how many are not scored, with why
 * @param forecasts newest first
 * @param chances of single things
 * @param readings by mentors, newest first
 * @param trainees whose forecasts the viewer may read
 */
record ForecastsView(
        String person,
        String name,
        boolean own,
        String words,
        boolean chosenOnly,
        String skipped,
        List<Pair> scores,
        List<Cell> cells,
        String waiting,
        List<Line> forecasts,
        Chances chances,
        List<Pair> readings,
        List<Pair> trainees) {

    /**
     * Chances of single things.
     *
     * @param words what they say so far; empty while nothing is scored
     * @param cells how often what was stated came
     * @param lines newest first
     */
    record Chances(String words, List<Cell> cells, List<Chance> lines) {}

    /** @param erasable whether it may be erased now */
    record Chance(String ticket, int entry, String said, String came, boolean erasable) {}

    record Pair(String name, String value) {}

    /** @param spoken whether there are enough for it to say anything */
    record Cell(String stated, String came, String interval, boolean spoken) {}

    /**
     * A forecast.
     *
     * @param causes with their chances, the greatest first
     * @param result what became of it, in words
     * @param erasable whether it may be erased now
     */
    record Line(
            String ticket,
            int entry,
            String what,
            String made,
            List<String> causes,
            String next,
            String result,
            boolean erasable) {}
}
