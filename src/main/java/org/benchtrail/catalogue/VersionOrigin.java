package org.benchtrail.catalogue;

/** How a version of the catalogue came about. */
public enum VersionOrigin {
    DELIVERED("delivered with the server"),
    EDITED("edited here"),
    LEARNED("learned from cases"),
    REVERSED("restored");

    private final String words;

    VersionOrigin(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
