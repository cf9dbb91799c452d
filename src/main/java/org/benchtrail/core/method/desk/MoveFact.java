package org.benchtrail.core.method.desk;

import java.util.List;
import java.util.Locale;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.Gate;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Part;
import org.benchtrail.core.method.RecordPlace;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.identify.IdentifyRequirement;

/** A change of step, of standing or of hands: one record for each move of the method. */
public sealed interface MoveFact extends DeskFact
        permits Advanced,
                Cancelled,
                Closed,
                Escalated,
                HandOverOffered,
                HandedOver,
                Held,
                OfferWithdrawn,
                Reopened,
                Resumed,
                Rethought,
                Returned,
                RuledOut,
                VerifyFailed {
    Move move();

    /** Where the ticket stands once this has happened. */
    Course after(Course before, Stamp stamp);

    /** Which moves a hazard bars is asked of the move, with all else that bars it. */
    @Override
    default boolean possibleWhileStopped() {
        return true;
    }

    /** To go on, go round or close is the work of whoever has the ticket. */
    @Override
    default Part takesPart() {
        return move().changesStep() ? Part.WORK : Part.NONE;
    }

    /** Moves on to the next step are the steps' signatures. */
    @Override
    default RecordPlace placeIn(JobSheet sheet) {
        return move().gated() ? RecordPlace.SIGNATURE : RecordPlace.LINE;
    }

    @Override
    default List<Missing> unsound(Situation s, Actor actor) {
        Situation trying = s.trying(move());
        List<Missing> barred = barred(trying);
        return barred.isEmpty() ? notNow(trying) : barred;
    }

    /** What keeps this move, as possible as it is, from being made now. */
    default List<Missing> notNow(Situation s) {
        return List.of();
    }

    private List<Missing> barred(Situation s) {
        Course course = s.sheet().course();
        if (!move().possibleFrom(course.step(), course.standing())) {
            return Missing.rule(
                    "no-such-move",
                    "From " + course.step().title().toLowerCase(Locale.ROOT) + " nobody can " + move().words() + ".",
                    "step");
        }
        if (move().changesStep() && course.hold() != null) {
            return Missing.rule("on-hold", "This ticket is on hold: resume it first.", "desk");
        }
        if (move().gated()) {
            return Gate.missing(s);
        }
        return move().changesStep() && s.sheet().workStopped()
                ? List.of(IdentifyRequirement.HAZARDS_SCREENED.status(s).missing())
                : List.of();
    }
}
