package org.benchtrail.training;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What somebody's work shows so far, on the page and in the record that they take along.
 *
 * @param own whether it is the viewer's own
 * @param since day of the first work; empty if there was none
 * @param mentor whom they have now, and who signed; empty if nobody
 * @param jobs by kind of trouble
 * @param unseen titles of requirements of which nobody has looked at anything
 * @param dangerous acts with a mentor present
 * @param harmed practice jobs on which somebody, or somebody's data, came to harm
 * @param levels of the coach, by step
 * @param heads of the trails that it rests on
 * @param forecasts what was forecast; null where it is left out
 */
record ProgressView(
        String login,
        String name,
        boolean own,
        String made,
        String since,
        String mentor,
        List<Jobs> jobs,
        List<Line> lines,
        List<String> unseen,
        List<Dangerous> dangerous,
        int harmed,
        List<Level> levels,
        List<Head> heads,
        @Nullable ForecastsView forecasts) {

    record Jobs(String trade, int live, int practice) {}

    /** @param spoken whether there are enough for it to say anything */
    record Line(
            String step,
            String requirement,
            String trade,
            String source,
            String met,
            String interval,
            boolean spoken) {}

    /** @param entry of the start */
    record Dangerous(String ticket, int entry, String what, String mentor, String ended) {}

    record Level(String step, String shown) {}

    record Head(String ticket, int entry, String hash) {}
}
