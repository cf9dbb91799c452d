package org.benchtrail.core.method;

/** The door by which an entry came in. */
public enum Channel {
    PAGE("a page"),
    API("the API"),
    /** A file that was loaded by somebody who runs the server. */
    IMPORT("a file that was loaded"),
    /** Through no door: what the server says of itself. */
    SERVER("the server");

    private final String words;

    Channel(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
