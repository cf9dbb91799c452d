package org.benchtrail.platform.database;

/** The embedded database cannot be used. The message is meant for the person at the console: what is wrong and what to do. */
public final class DatabaseNotStarted extends RuntimeException {
    private static final long serialVersionUID = 1L;

    DatabaseNotStarted(String sentence) {
        super(sentence);
    }

    DatabaseNotStarted(String sentence, Throwable cause) {
        super(sentence, cause);
    }
}
