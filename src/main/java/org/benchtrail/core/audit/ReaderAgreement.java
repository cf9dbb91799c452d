package org.benchtrail.core.audit;

import java.util.List;
import java.util.Optional;
import org.benchtrail.core.statistics.Kappa;

/**
 * How far first and second reviews agree, by the first marks of both.
 *
 * @param table counts, rows the first and columns the second reader, in the order of {@link Mark}
 * @param kappa empty where there are fewer pairs than it takes
 */
public record ReaderAgreement(List<List<Long>> table, long pairs, long agreed, Optional<Kappa> kappa) {
    private static final int LEAST = 30;
    private static final int LEAST_FOR_TALK = 60;
    private static final double LOW = 0.4;

    public static ReaderAgreement of(AuditLot lot) {
        int size = Mark.values().length;
        long[][] counts = new long[size][size];
        List<AuditLot.Difference> pairs = lot.pairs();
        pairs.forEach(p -> counts[p.first().mark().ordinal()][p.second().mark().ordinal()]++);
        long agreed = 0;
        for (int i = 0; i < size; i++) {
            agreed += counts[i][i];
        }
        return new ReaderAgreement(
                java.util.Arrays.stream(counts)
                        .map(row -> java.util.Arrays.stream(row).boxed().toList())
                        .toList(),
                pairs.size(),
                agreed,
                pairs.size() < LEAST ? Optional.empty() : Optional.of(Kappa.of(counts)));
    }

    /** Whether the readers agree so little that they talk before the lot is concluded. */
    public boolean asksForTalk() {
        return pairs >= LEAST_FOR_TALK
                && kappa.filter(k -> k.kappa().isPresent() && k.kappa().getAsDouble() < LOW)
                        .isPresent();
    }
}
