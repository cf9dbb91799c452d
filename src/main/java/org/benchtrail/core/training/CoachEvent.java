package org.benchtrail.core.training;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** Something that was recorded of a person and one requirement, and moves how much the coach shows of it. */
public sealed interface CoachEvent {
    /** When it became known. */
    Instant at();

    /**
     * A job on which the requirement applied and was judged, or missed. A job is one occasion, however often it was looked at.
     *
     * @param worked when the step was first tried to be left: what stood beside it then is what the success was made with
     * @param met at the first try to leave the step, and judged satisfied afterwards
     * @param chosen what the person had chosen to be shown then; null if they left it to the coach
     */
    record Occasion(Instant at, Instant worked, boolean met, CoachChoices.@Nullable Choice chosen)
            implements CoachEvent {}

    /** An act was refused for it, before anything happened. */
    record NearMiss(Instant at) implements CoachEvent {}

    /** What was answered was found untrue, and somebody or somebody's data could have come to harm. */
    record CriticalMiss(Instant at) implements CoachEvent {}
}
