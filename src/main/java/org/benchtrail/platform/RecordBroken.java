package org.benchtrail.platform;

import io.quarkus.transaction.annotations.Rollback;

/**
 * What is stored does not hold together, and nothing is built on it. The transaction is committed all the same: all that it wrote
 * is the alarm.
 */
@Rollback(false)
public class RecordBroken extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** @param sentence what was found, and that nothing is recorded */
    public RecordBroken(String sentence) {
        super(sentence);
    }
}
