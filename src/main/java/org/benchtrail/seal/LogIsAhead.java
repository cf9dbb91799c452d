package org.benchtrail.seal;

/** Somebody has seen more leaves than there are: an old backup was restored, or leaves were taken away. Nothing can be recorded. */
final class LogIsAhead extends SealStopped {
    private static final long serialVersionUID = 1L;

    /** @param sentence who says so, and how many there are */
    LogIsAhead(String sentence) {
        super(sentence + " An old backup was restored, or leaves were taken away.");
    }
}
