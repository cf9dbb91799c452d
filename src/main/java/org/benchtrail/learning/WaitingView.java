package org.benchtrail.learning;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A closed ticket that waits to be judged.
 *
 * @param cause as the ticket names it
 * @param entry id of the cause in the catalogue, or UNLISTED; null if the ticket has nothing to teach
 * @param findings how many findings of the catalogue it answers
 * @param obstacle why this person cannot accept it, a sentence; null if they can
 */
public record WaitingView(
        String ticket,
        String title,
        Instant closed,
        String technician,
        String cause,
        @Nullable String entry,
        String sureness,
        int findings,
        @Nullable String obstacle) {

    WaitingView keptBack(String why) {
        return new WaitingView(ticket, title, closed, technician, cause, entry, sureness, findings, why);
    }
}
