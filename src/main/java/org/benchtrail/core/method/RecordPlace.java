package org.benchtrail.core.method;

/** Where a fact stands in a record that is read step by step. */
public enum RecordPlace {
    /** On a line of its own. */
    LINE,
    /** A row of the table of its kind, once it stands: one that was struck out is a line. */
    TABLE,
    /** At the entry that it is about. */
    AT_ENTRY,
    /** As the signature of its step. */
    SIGNATURE,
    /** In the trail alone. */
    TRAIL
}
