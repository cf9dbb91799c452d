package org.benchtrail.core.method.theorize;

/** The obvious, which is questioned first. */
public enum Obvious {
    POWER("power on, supply and switch"),
    CABLES("cables and seating"),
    SETTINGS("settings"),
    RECENT_CHANGE("what changed last");

    private final String words;

    Obvious(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
