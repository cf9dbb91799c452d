package org.benchtrail.core.diagnosis;

import java.util.Arrays;
import java.util.BitSet;
import org.jspecify.annotations.Nullable;

/**
 * A likelihood table over causes instead of their parts. A cause whose parts have different rows has no row until it is known
 * how the belief in it is shared among them.
 *
 * @param mixed those causes, ascending
 */
record UnitTable(LikelihoodTable table, int[] mixed) {
    private static final int[] NONE = {};

    /** @param partsOf for each cause its parts; null if every cause is one part */
    static UnitTable of(LikelihoodTable t, int @Nullable [][] partsOf, int[] group) {
        if (partsOf == null) {
            return new UnitTable(t, NONE);
        }
        BitSet mixed = new BitSet();
        int[] deviators = new int[partsOf.length];
        double[][] rows = new double[partsOf.length][];
        int k = 0;
        for (int u = 0; u < partsOf.length; u++) {
            double[] first = t.row(partsOf[u][0], -1);
            if (Arrays.stream(partsOf[u]).anyMatch(p -> !Arrays.equals(t.row(p, -1), first))) {
                mixed.set(u);
            } else if (t.deviates(partsOf[u][0])) {
                deviators[k] = u;
                rows[k++] = first;
            }
        }
        LikelihoodTable merged = LikelihoodTable.of(
                t.values, group, t.base, Arrays.copyOf(deviators, k), Arrays.copyOf(rows, k), t.marginal, t.unlisted);
        return new UnitTable(merged, mixed.stream().toArray());
    }
}
