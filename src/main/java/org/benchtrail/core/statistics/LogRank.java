package org.benchtrail.core.statistics;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.statistics.KaplanMeier.Observation;

/**
 * Whether two groups end alike: at each time at which something ended, the ends of the first group are held against its share of those
 * still watched. Source: Mantel, Cancer Chemotherapy Reports 50 (1966); Peto and Peto, J. R. Statist. Soc. A 135 (1972).
 *
 * @param observed ends of the first group
 * @param expected of them, if both ended alike
 * @param variance of their number, if both ended alike
 * @param statistic chi square with one degree of freedom; 0 where nothing can differ
 */
public record LogRank(int observed, double expected, double variance, double statistic) {

    /** @throws Invalid if a group is empty */
    public static LogRank of(List<Observation> one, List<Observation> other) {
        new Invalid.Collector()
                .require(!one.isEmpty() && !other.isEmpty(), "observations", "Give at least one unit of each group.")
                .throwIfAny();
        List<Unit> all = Stream.concat(
                        one.stream().map(o -> new Unit(o, true)), other.stream().map(o -> new Unit(o, false)))
                .sorted(Comparator.comparingDouble(u -> u.seen().time()))
                .toList();
        int observed = 0;
        double expected = 0;
        double variance = 0;
        int firstLeft = one.size();
        for (int at = 0; at < all.size(); ) {
            double time = all.get(at).seen().time();
            double left = all.size() - at;
            int ends = 0;
            int gone = 0;
            for (; at < all.size() && all.get(at).seen().time() == time; at++) {
                Unit unit = all.get(at);
                ends += unit.seen().failed() ? 1 : 0;
                observed += unit.seen().failed() && unit.first() ? 1 : 0;
                gone += unit.first() ? 1 : 0;
            }
            double share = firstLeft / left;
            expected += ends * share;
            if (left > 1) {
                variance += ends * share * (1 - share) * (left - ends) / (left - 1);
            }
            firstLeft -= gone;
        }
        double apart = observed - expected;
        return new LogRank(observed, expected, variance, variance > 0 ? apart * apart / variance : 0);
    }

    private record Unit(Observation seen, boolean first) {}

    /** How often groups that end alike differ at least so much, by chance. */
    public double byChance() {
        return statistic > 0 ? ChiSquaredDistribution.of(1).survivalProbability(statistic) : 1;
    }
}
