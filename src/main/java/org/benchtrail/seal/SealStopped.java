package org.benchtrail.seal;

/** Nothing may be signed until somebody has looked; the message says why, for people. */
class SealStopped extends RuntimeException {
    private static final long serialVersionUID = 1;

    SealStopped(String sentence) {
        super(sentence);
    }

    String sentence() {
        return String.valueOf(getMessage());
    }
}
