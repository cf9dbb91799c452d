package org.benchtrail.learning;

/** Where a closed ticket stands as a case. */
public enum CaseState {
    WAITING("waits to be judged"),
    ACCEPTED("accepted"),
    LEFT_OUT("left out"),
    /** It was accepted, and counts no more. */
    WITHDRAWN("withdrawn");

    private final String words;

    CaseState(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
