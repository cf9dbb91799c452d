package org.benchtrail.core.method;

/**
 * An earlier entry that a fact names.
 *
 * @param kind what the entry has to be
 * @param field component of the fact that names it
 */
public record Reference(int entry, Class<? extends Fact> kind, String field) {}
