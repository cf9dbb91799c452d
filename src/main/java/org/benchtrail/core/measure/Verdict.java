package org.benchtrail.core.measure;

/** A reading held against a limit. */
public enum Verdict {
    WITHIN("within"),
    OUTSIDE("outside"),
    /** The guard band, or an uncertainty wider than the limits, leaves both answers open. */
    TOO_CLOSE_TO_CALL("too close to call");

    private final String words;

    Verdict(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
