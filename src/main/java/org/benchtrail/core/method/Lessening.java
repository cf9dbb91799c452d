package org.benchtrail.core.method;

/**
 * A correction that takes away something that was owed, and to which nobody independent has agreed yet.
 *
 * @param owed the fact as it stood before; it obliges until then
 * @param by stamp of the latest correction
 */
public record Lessening(StandingFact<?> owed, Stamp by) {}
