package org.benchtrail.core.diagnosis;

/**
 * Findings that tell partly the same thing.
 *
 * @param correlation 0 if they are independent given the cause, 1 if each is a copy of the others
 */
public record Group(String id, double correlation) {}
