package org.benchtrail.platform;

/** Why the server, or a command, does not start: one sentence for whoever started it, without a trace. */
public final class StartRefused extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public StartRefused(String sentence) {
        super(sentence);
    }
}
