package org.benchtrail.core.practice.job;

import org.benchtrail.core.practice.Chance;

/** Who reported the trouble: knows most of what changed, is sometimes wrong, and says the same when asked again. */
final class Reporter {
    private static final double KNOWS = 0.70;
    private static final double WRONG = 0.05;

    private Reporter() {}

    static Seen asked(Chance chance, String about, boolean isSo) {
        double draw = chance.uniform("asked|" + about);
        if (draw < KNOWS) {
            return Seen.of(isSo);
        }
        return draw < KNOWS + WRONG ? Seen.of(!isSo) : new Seen(Seen.UNKNOWN, null);
    }
}
