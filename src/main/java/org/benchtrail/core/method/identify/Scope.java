package org.benchtrail.core.method.identify;

public enum Scope {
    ONE("one user or device"),
    SEVERAL("several users or devices"),
    SITE("a whole site");

    private final String words;

    Scope(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
