package org.benchtrail.core.method.desk;

/** What who works on a ticket asks of those who judge. */
public enum AskKind {
    APPROVAL("an approval of the plan"),
    WAIVER("a waiver"),
    MENTOR("a mentor to look at it");

    private final String words;

    AskKind(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
