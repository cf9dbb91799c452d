package org.benchtrail.catalogue;

import java.time.Instant;
import java.util.List;

/**
 * What the figures of a version were learned from.
 *
 * @param at the moment that ages are taken from
 * @param cases ids of the accepted cases, ascending
 */
public record LearningBasis(Instant at, List<Long> cases) {
    public LearningBasis {
        cases = List.copyOf(cases);
    }
}
