package org.benchtrail.core.method;

import java.util.Set;

/** What the server knows better than whoever records a fact. */
public interface ServerKnowledge {

    /**
     * Who works on tickets under that account.
     *
     * @throws org.benchtrail.core.Invalid on {@code to} if nobody does
     */
    Actor worker(String account);

    /**
     * Size of the kept file with that SHA-256, bytes.
     *
     * @throws org.benchtrail.core.Invalid on {@code sha256} if no such file is kept
     */
    int fileSize(String sha256);

    Policy policy();

    /**
     * Makes sure that a ticket may be named as the one that another is a duplicate of.
     *
     * @throws org.benchtrail.core.Invalid on {@code duplicateOf} if there is none, or it was itself cancelled as a duplicate
     */
    void requireOriginal(String ticket);

    /** The cautions that the words of an act raise. */
    default Set<Caution> cautionsFor(String act) {
        return Caution.raisedBy(act);
    }
}
