package org.benchtrail.proposals;

import java.util.List;

/**
 * A kind of change that takes two supervisors; a feature that has such changes provides one. Nothing else makes the change: that
 * takes an {@link Agreement}, which only a confirmed proposal has.
 *
 * @param <C> what is proposed, stored as JSON until it is confirmed
 */
public interface ProposedChange<C extends Record> {

    /** As it is stored; never renamed. */
    String name();

    Class<C> change();

    /** What is proposed, in one line. */
    String words(C change);

    /**
     * What would be different.
     *
     * @throws org.benchtrail.core.Invalid if the change cannot be made any more
     */
    List<Difference> differences(C change);

    /**
     * Asks more of the reason than that there is one.
     *
     * @throws org.benchtrail.core.Invalid with what is wrong with it
     */
    default void requireReason(C change, String reason) {}

    /**
     * Makes the change, within the transaction that confirms it.
     *
     * @return the page that shows it
     * @throws org.benchtrail.core.Invalid if it cannot be made any more
     */
    String make(C change, Agreement agreed);
}
