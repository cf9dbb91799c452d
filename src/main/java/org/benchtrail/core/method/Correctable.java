package org.benchtrail.core.method;

/** Whether an entry of a kind is ever put right. */
public enum Correctable {
    NEVER,
    /** Only struck out: what was calculated is calculated again. */
    STRUCK,
    /** Replaced by another of its kind, or struck out. */
    REPLACED
}
