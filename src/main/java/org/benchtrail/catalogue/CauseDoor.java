package org.benchtrail.catalogue;

import org.benchtrail.core.method.Actor;

/** Asked before the figures of a kind of trouble are shown: whoever is to forecast the causes of one reads no chances first. */
public interface CauseDoor {
    /**
     * Lets nobody pass who has to say first what they expect.
     *
     * @param category id of the catalogue; empty for all of them
     */
    void pass(String category, Actor viewer);
}
