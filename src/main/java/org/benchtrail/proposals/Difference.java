package org.benchtrail.proposals;

/**
 * One thing that a change makes otherwise.
 *
 * @param before empty if it is new
 * @param after empty if it is gone
 */
public record Difference(String what, String before, String after) {}
