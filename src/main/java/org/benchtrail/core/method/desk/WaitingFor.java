package org.benchtrail.core.method.desk;

/** What a ticket on hold waits for. */
public enum WaitingFor {
    PART("a part"),
    REQUESTER("the requester"),
    SUPPLIER("a supplier"),
    WINDOW("a maintenance window"),
    SOAK("the soak time");

    private final String words;

    WaitingFor(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
