package org.benchtrail.core.method.test;

public enum CheckOutcome {
    SUPPORTS("supports the theory"),
    REFUTES("rules the theory out"),
    INCONCLUSIVE("leaves it open");

    private final String words;

    CheckOutcome(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
