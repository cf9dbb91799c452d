package org.benchtrail.core.method.desk;

import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Stamp;

/** A change of step, of standing or of hands: one record for each move of the method. */
public sealed interface MoveFact extends DeskFact
        permits Advanced,
                Cancelled,
                Closed,
                Escalated,
                HandedOver,
                Held,
                Reopened,
                Resumed,
                Rethought,
                Returned,
                RuledOut,
                VerifyFailed {
    Move move();

    /** Where the ticket stands once this has happened. */
    Course after(Course before, Stamp stamp);
}
