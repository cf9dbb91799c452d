package org.benchtrail.core.figures;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.statistics.Proportion;

/**
 * So many of so many; of none as well.
 *
 * @param hits 0 to {@code of}
 */
public record Count(long hits, long of) {
    public Count {
        new Invalid.Collector()
                .require(hits >= 0 && hits <= of, "hits", "Give 0 or more hits, and no more than there are.")
                .throwIfAny();
    }

    static Count together(List<Count> counts) {
        return new Count(
                counts.stream().mapToLong(Count::hits).sum(),
                counts.stream().mapToLong(Count::of).sum());
    }

    public Proportion share() {
        return new Proportion(hits, of);
    }
}
