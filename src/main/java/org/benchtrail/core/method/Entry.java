package org.benchtrail.core.method;

/** One entry of a ticket's trail: what was recorded, when and by whom. */
public record Entry(Stamp stamp, Fact fact) {}
