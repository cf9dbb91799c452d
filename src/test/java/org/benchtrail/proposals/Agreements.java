package org.benchtrail.proposals;

/** Agreements without a proposal, for tests of what is made by them. */
public final class Agreements {
    private Agreements() {}

    public static Agreement between(String proposer, String confirmer, String note) {
        return new Agreement(proposer, confirmer, note);
    }
}
