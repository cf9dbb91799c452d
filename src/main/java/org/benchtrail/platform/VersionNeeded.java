package org.benchtrail.platform;

/** A change was asked for without naming the version that it builds on. */
public final class VersionNeeded extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** @param sentence what to send */
    public VersionNeeded(String sentence) {
        super(sentence);
    }
}
