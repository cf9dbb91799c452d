package org.benchtrail.core.diagnosis;

import java.util.List;
import java.util.Set;

/** What must be so before an act, and what still has to be done for it. */
public final class Needs {
    public static final String BACKUP_DONE = "backup-done";

    /** The owner of the data has said that they may be lost. */
    public static final String LOSS_ACCEPTED = "loss-accepted";

    /** No copy can be made, with a reason: what can be undone may go on, and what may destroy data waits for the owner. */
    public static final String COPY_IMPOSSIBLE = "copy-impossible";

    private Needs() {}

    /** The repair's needs that are not met; where no copy is possible, the owner's word instead of the copy. */
    public static List<String> missing(Repair repair, Set<String> met) {
        return missing(repair.needs(), repair.reversible(), met);
    }

    /**
     * The needs that are not met.
     *
     * @param reversible whether what is done can be undone, or only reads
     */
    public static List<String> missing(List<String> needs, boolean reversible, Set<String> met) {
        if (needs.isEmpty()) {
            return needs;
        }
        return needs.stream()
                .filter(n -> !met.contains(n))
                .filter(n -> !n.equals(BACKUP_DONE) || !doesWithoutCopy(reversible, met))
                .map(n -> n.equals(BACKUP_DONE) && met.contains(COPY_IMPOSSIBLE) ? LOSS_ACCEPTED : n)
                .distinct()
                .toList();
    }

    private static boolean doesWithoutCopy(boolean reversible, Set<String> met) {
        return met.contains(LOSS_ACCEPTED) || (reversible && met.contains(COPY_IMPOSSIBLE));
    }

    static double minutes(List<String> missing, PlanSettings settings) {
        return missing.stream().mapToDouble(settings::minutes).sum();
    }

    /** High where data may be destroyed of which there is no copy. */
    static Risk risk(Repair repair, Set<String> met) {
        boolean bare = repair.needs().contains(BACKUP_DONE)
                && !repair.reversible()
                && !met.contains(BACKUP_DONE)
                && met.contains(LOSS_ACCEPTED);
        return bare ? Risk.HIGH : repair.risk();
    }
}
