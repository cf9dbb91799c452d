package org.benchtrail.core.bench;

/** A choice that the trade spells in a way of its own; others are called by their name in small letters. */
public interface Choice {
    /** As the form offers it and sentences name it. */
    String words();
}
