package org.benchtrail.core.diagnosis;

/**
 * A cause as it sits in one place. A cause that may sit in several is carried as one part for each, and shown, ordered and
 * repaired as one.
 *
 * @param id of the part; that of the cause if it has no other
 * @param cause id of the cause
 * @param prior above 0; the parts and the unlisted cause sum to 1
 */
public record CausePart(String id, String cause, double prior) {}
