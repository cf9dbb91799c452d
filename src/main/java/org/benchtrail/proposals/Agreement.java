package org.benchtrail.proposals;

/** That two people agree to a change. Only confirming a proposal makes one. */
public final class Agreement {
    private final String proposer;
    private final String confirmer;
    private final String note;

    /** @throws IllegalArgumentException if both are the same person */
    Agreement(String proposer, String confirmer, String note) {
        if (proposer.equals(confirmer)) {
            throw new IllegalArgumentException("an agreement takes two people, not " + proposer + " alone");
        }
        this.proposer = proposer;
        this.confirmer = confirmer;
        this.note = note;
    }

    /** Account of who proposed it. */
    public String proposer() {
        return proposer;
    }

    /** Account of who confirmed it. */
    public String confirmer() {
        return confirmer;
    }

    /** Why, in the proposer's words. */
    public String note() {
        return note;
    }
}
