package org.benchtrail.seal.timestamp;

/** An answer that is no time-stamp of what was asked, or not by somebody who is trusted. */
public final class TimeStampRefused extends Exception {
    private static final long serialVersionUID = 1L;

    TimeStampRefused(String sentence) {
        super(sentence);
    }

    TimeStampRefused(String sentence, Throwable cause) {
        super(sentence, cause);
    }

    public String sentence() {
        return String.valueOf(getMessage());
    }
}
