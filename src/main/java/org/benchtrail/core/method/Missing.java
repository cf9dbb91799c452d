package org.benchtrail.core.method;

/**
 * One thing that stands in the way of an act.
 *
 * @param code stable code, of a requirement or of a rule of the desk
 * @param sentence what is missing and what to do, for people
 * @param anchor the place on the job sheet where it is met, without the {@code #}
 * @param waivable whether a supervisor may waive it
 */
public record Missing(String code, String sentence, String anchor, boolean waivable) {}
