package org.benchtrail.core.diagnosis;

import java.time.Instant;

/**
 * A repair that was carried out and did not remove the fault.
 *
 * @param repair id of the cause whose repair it was, or of a shared repair
 * @param beliefThen probability of what it covers, as shown when it was chosen; in [0, 1]
 */
public record FailedRepair(String repair, double beliefThen, Instant at) {}
