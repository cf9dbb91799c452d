package org.benchtrail.proposals;

/** Where a proposal stands. */
public enum ProposalState {
    OPEN("waits for another supervisor"),
    CONFIRMED("confirmed"),
    DECLINED("declined"),
    WITHDRAWN("withdrawn");

    private final String words;

    ProposalState(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
