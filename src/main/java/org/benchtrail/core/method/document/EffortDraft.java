package org.benchtrail.core.method.document;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.benchtrail.core.method.JobSheet;

/** The time spent as the record alone shows it, for whoever worked to correct. */
public final class EffortDraft {
    /** Longer without an entry is taken for a pause (common practice, no source). */
    public static final Duration PAUSE = Duration.ofMinutes(30);

    private EffortDraft() {}

    /** Minutes between what those who worked on the ticket recorded, pauses left out; at least 1. */
    public static long minutes(JobSheet sheet) {
        List<Instant> worked = sheet.facts().stream()
                .filter(fact -> sheet.isHand(fact.stamp().by()))
                .map(fact -> fact.stamp().at())
                .sorted()
                .toList();
        Duration spent = Duration.ZERO;
        for (int i = 1; i < worked.size(); i++) {
            Duration between = Duration.between(worked.get(i - 1), worked.get(i));
            spent = between.compareTo(PAUSE) > 0 ? spent : spent.plus(between);
        }
        return Math.max(1, spent.toMinutes());
    }
}
