package org.benchtrail.core.figures;

import java.util.List;
import java.util.Optional;
import org.benchtrail.core.figures.Lasting.Lasted;
import org.benchtrail.core.statistics.LogRank;

/**
 * How long something lasts in two groups, side by side.
 *
 * @param difference whether they end alike; empty where fewer than ten of either have ended
 */
public record TwoLastings(Lasting one, Lasting other, Optional<LogRank> difference) {
    public static TwoLastings of(List<Lasted> first, List<Lasted> second) {
        Lasting one = Lasting.of(first);
        Lasting other = Lasting.of(second);
        return new TwoLastings(
                one,
                other,
                one.isEnough() && other.isEnough()
                        ? Optional.of(LogRank.of(Lasting.observed(first), Lasting.observed(second)))
                        : Optional.empty());
    }
}
