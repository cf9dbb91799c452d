package org.benchtrail.core.method.theorize;

/**
 * A cause of the catalogue as it was ranked.
 *
 * @param causeId id in the catalogue
 * @param probability in [0, 1], decimal with four digits
 */
public record RankedCause(String causeId, String name, String probability) {}
