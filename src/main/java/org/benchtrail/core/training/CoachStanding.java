package org.benchtrail.core.training;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How much the coach shows one person beside one requirement, and on what that rests. It begins with the whole example, goes down one
 * level at a time and comes back with what goes wrong.
 *
 * <p>Only what was met with no more help than the level counts for it: work that was done before the level was reached, with more
 * beside it, does not. A miss counts whatever stood beside it. What was met without any help in a person's first week counts at every
 * level until something is missed so that a level comes back.
 *
 * @param met of {@code looked}, at this level
 * @param looked occasions at this level
 * @param raised when it last came back; {@link Instant#MIN} if it never did
 */
public record CoachStanding(CoachLevel level, int met, int looked, Instant raised) {
    /** Days without an occasion after which it is silent no longer. */
    static final Duration FORGOTTEN = Duration.ofDays(90);

    private static final Duration FIRST_WEEK = Duration.ofDays(7);
    private static final int WINDOW = 10;
    private static final int MISSES = 2;

    /** Before anything was recorded. */
    public static final CoachStanding START = new CoachStanding(CoachLevel.EXAMPLE, 0, 0, Instant.MIN);

    /**
     * @param events all that were recorded of it, in any order
     * @param safety whether it is a requirement of safety, which is never silent
     * @param begun the person's first work
     * @param bound share that has to be met before a level goes, see {@link CoachLevel#isLeftBy}
     */
    public static CoachStanding of(
            List<? extends CoachEvent> events, boolean safety, Instant begun, Instant now, double bound) {
        Course course = new Course(safety ? CoachLevel.PROMPT : CoachLevel.SILENT, begun.plus(FIRST_WEEK), bound);
        events.stream().sorted(Comparator.comparing(CoachEvent::at)).forEach(course::take);
        course.passTo(now);
        return course.standing();
    }

    /** What is shown: as it stands, or as the person chose since it last came back. */
    public CoachLevel shown(Optional<CoachChoices.Choice> choice) {
        return choice.filter(c -> c.at().isAfter(raised))
                .map(c -> Objects.requireNonNullElse(c.level(), level))
                .orElse(level);
    }

    /** The replay. */
    private static final class Course {
        private final CoachLevel least;
        private final Instant firstWeek;
        private final double bound;
        private final Deque<Boolean> lately = new ArrayDeque<>();
        private CoachLevel level = CoachLevel.EXAMPLE;
        private Instant since = Instant.MIN;
        private Instant raised = Instant.MIN;
        private Instant last = Instant.MIN;
        private int met;
        private int looked;
        private int unaided;

        Course(CoachLevel least, Instant firstWeek, double bound) {
            this.least = least;
            this.firstWeek = firstWeek;
            this.bound = bound;
        }

        CoachStanding standing() {
            return new CoachStanding(level, met, looked, raised);
        }

        void passTo(Instant now) {
            if (level == CoachLevel.SILENT && !now.isBefore(last.plus(FORGOTTEN))) {
                raise(CoachLevel.PROMPT, last.plus(FORGOTTEN));
            }
        }

        void take(CoachEvent event) {
            passTo(event.at());
            if (event instanceof CoachEvent.Occasion occasion) {
                occasion(occasion);
            } else if (event instanceof CoachEvent.NearMiss) {
                raise(level.up(), event.at());
            } else {
                anew();
                raise(level.atLeast(CoachLevel.COMPLETION), event.at());
            }
        }

        private void occasion(CoachEvent.Occasion occasion) {
            last = occasion.worked().isAfter(last) ? occasion.worked() : last;
            if (occasion.met() && isUnaided(occasion)) {
                unaided++;
            } else if (occasion.met() && hadMore(occasion)) {
                return;
            }
            looked++;
            met += occasion.met() ? 1 : 0;
            if (isMissedTwice(occasion.met())) {
                raise(level.up(), occasion.at());
            } else if (level != least && level.isLeftBy(met, looked, bound)) {
                level = level.down();
                since = occasion.at();
                met = unaided;
                looked = unaided;
            }
        }

        private boolean isUnaided(CoachEvent.Occasion occasion) {
            return chosen(occasion) == CoachLevel.SILENT
                    && occasion.worked().isBefore(firstWeek)
                    && !occasion.worked().isBefore(raised);
        }

        private boolean hadMore(CoachEvent.Occasion occasion) {
            CoachLevel chosen = chosen(occasion);
            return chosen == null ? occasion.worked().isBefore(since) : chosen.ordinal() > level.ordinal();
        }

        /** What was chosen before the level came back held no longer for work after it. */
        private @Nullable CoachLevel chosen(CoachEvent.Occasion occasion) {
            CoachChoices.Choice choice = occasion.chosen();
            if (choice == null) {
                return null;
            }
            boolean lapsed = !choice.at().isAfter(raised) && occasion.worked().isAfter(raised);
            return lapsed ? null : choice.level();
        }

        /** Of the last occasions at a prompt or less. */
        private boolean isMissedTwice(boolean met) {
            if (level.ordinal() > CoachLevel.PROMPT.ordinal()) {
                return false;
            }
            lately.addLast(met);
            if (lately.size() > WINDOW) {
                lately.removeFirst();
            }
            return lately.stream().filter(m -> !m).count() >= MISSES;
        }

        private void raise(CoachLevel to, Instant at) {
            if (to != level) {
                level = to;
                since = at;
                raised = at;
                anew();
            }
        }

        private void anew() {
            met = 0;
            looked = 0;
            unaided = 0;
            lately.clear();
        }
    }
}
