package org.benchtrail.ticket;

import java.util.List;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.desk.MoveFact;
import org.jspecify.annotations.Nullable;

/**
 * What is to be done on a ticket in one go.
 *
 * @param acts done all or none, in their order
 * @param move made after them; null if the ticket stays where it is. What the acts recorded stays even if the move is refused
 * @param after done after the move, where it leads; if one of them is refused, nothing at all is recorded
 */
public record Work(List<? extends Act> acts, @Nullable MoveFact move, List<? extends Act> after) {

    /** With nothing after the move. */
    public Work(List<? extends Act> acts, @Nullable MoveFact move) {
        this(acts, move, List.of());
    }

    /** Says what is to be done on the sheet as it stands once nobody else can write on it. */
    @FunctionalInterface
    public interface Order {
        /** @throws org.benchtrail.core.Invalid if what was asked for is malformed; nothing is recorded */
        Work on(JobSheet sheet);
    }
}
