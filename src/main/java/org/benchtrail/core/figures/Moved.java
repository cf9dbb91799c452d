package org.benchtrail.core.figures;

import java.time.Instant;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.desk.WaitingFor;
import org.jspecify.annotations.Nullable;

/**
 * A move of a ticket, as its trail has it.
 *
 * @param waitingFor of a hold; else null
 * @param followUp of a hold: when it was to be looked at again; else null
 */
public record Moved(
        Move move,
        Instant at,
        @Nullable WaitingFor waitingFor,
        @Nullable Instant followUp) {
    public static Moved of(Move move, Instant at) {
        return new Moved(move, at, null, null);
    }
}
