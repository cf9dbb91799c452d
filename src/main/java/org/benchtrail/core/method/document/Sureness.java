package org.benchtrail.core.method.document;

/** How the cause is known. */
public enum Sureness {
    MEASURED("confirmed by measurement"),
    BY_REPAIR("confirmed by the repair"),
    PRESUMED("presumed");

    private final String words;

    Sureness(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
