package org.benchtrail.core.figures;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.core.site.Span;
import org.jspecify.annotations.Nullable;

/**
 * When a ticket was where. A step that is entered again is a stay of its own, and so is each way from an opening, or a reopening,
 * to the closing that follows it.
 *
 * @param stays in steps, in order
 * @param ways from opened or reopened to closed, in order
 * @param holds in order
 */
public record TicketTimes(List<Stay> stays, List<Way> ways, List<Pause> holds) {
    private static final double HOUR_SECONDS = 3600;

    /** @param to null while it lasts */
    public record Stay(Step step, Instant from, @Nullable Instant to, Leaving how) {}

    /** @param to null while it lasts */
    public record Way(Instant from, @Nullable Instant to, Leaving how) {}

    /**
     * A hold.
     *
     * @param to null while it lasts
     * @param followUp from when on no clock stands still any more, whether somebody resumed it or not
     */
    public record Pause(
            WaitingFor waitingFor, Instant from, @Nullable Instant to, Instant followUp, Leaving how) {}

    public TicketTimes {
        stays = List.copyOf(stays);
        ways = List.copyOf(ways);
        holds = List.copyOf(holds);
    }

    /** @param moves in the order of the trail; those that change neither step nor hold are passed over */
    public static TicketTimes of(Instant opened, List<Moved> moves) {
        Reading reading = new Reading(opened);
        moves.forEach(reading::read);
        reading.stillThere();
        return new TicketTimes(reading.stays, reading.ways, reading.holds);
    }

    /** Working time of a stay up to now, less the holds for which the site stops the clock; in hours. */
    public double hours(Stay stay, SiteHistory site, Instant now) {
        return worked(stay.from(), stay.to() == null ? now : stay.to(), site);
    }

    /** Working time of a way up to now, less the holds for which the site stops the clock; in hours. */
    public double hours(Way way, SiteHistory site, Instant now) {
        return worked(way.from(), way.to() == null ? now : way.to(), site);
    }

    /** Working time on hold up to now; in hours. */
    public static double hours(Pause hold, SiteHistory site, Instant now) {
        return hours(site.workingTime().between(hold.from(), hold.to() == null ? now : hold.to()));
    }

    private double worked(Instant from, Instant to, SiteHistory site) {
        Duration all = site.workingTime().between(from, to);
        for (Pause hold : holds) {
            if (site.at(hold.from()).rules().stops().contains(hold.waitingFor())) {
                Instant until = hold.to() == null || hold.followUp().isBefore(hold.to()) ? hold.followUp() : hold.to();
                Span stopped = new Span(hold.from(), until).within(new Span(from, to));
                all = all.minus(site.workingTime().between(stopped.from(), stopped.to()));
            }
        }
        return hours(all);
    }

    private static double hours(Duration time) {
        return time.toMillis() / (1000 * HOUR_SECONDS);
    }

    /** The moves, one by one. */
    private static final class Reading {
        private final List<Stay> stays = new ArrayList<>();
        private final List<Way> ways = new ArrayList<>();
        private final List<Pause> holds = new ArrayList<>();
        private @Nullable Step step = Step.IDENTIFY;
        private Instant entered;
        private Instant started;
        private @Nullable Moved held;

        Reading(Instant opened) {
            entered = opened;
            started = opened;
        }

        void read(Moved moved) {
            switch (moved.move()) {
                case ADVANCE -> {
                    if (step != null) {
                        goTo(step.next(), moved.at(), Leaving.FORWARD);
                    }
                }
                case REFUTE, RETHINK, FAIL -> goTo(Step.THEORIZE, moved.at(), Leaving.BACK);
                case CLOSE -> end(moved.at(), Leaving.FORWARD);
                case CANCEL -> end(moved.at(), Leaving.CANCELLED);
                case REOPEN -> {
                    step = Step.IDENTIFY;
                    entered = moved.at();
                    started = moved.at();
                }
                case HOLD -> held = moved;
                case RESUME -> resume(moved.at(), Leaving.FORWARD);
                case HAND_OVER, OFFER, END_OFFER, ESCALATE, RETURN -> {}
            }
        }

        private void goTo(@Nullable Step next, Instant at, Leaving how) {
            if (step != null) {
                stays.add(new Stay(step, entered, at, how));
            }
            step = next;
            entered = at;
        }

        private void end(Instant at, Leaving how) {
            if (step != null) {
                goTo(null, at, how);
                ways.add(new Way(started, at, how));
            }
            resume(at, how);
        }

        private void resume(@Nullable Instant at, Leaving how) {
            Moved hold = held;
            if (hold != null) {
                holds.add(new Pause(
                        Objects.requireNonNull(hold.waitingFor()),
                        hold.at(),
                        at,
                        Objects.requireNonNull(hold.followUp()),
                        how));
                held = null;
            }
        }

        void stillThere() {
            if (step != null) {
                stays.add(new Stay(step, entered, null, Leaving.OPEN));
                ways.add(new Way(started, null, Leaving.OPEN));
            }
            resume(null, Leaving.OPEN);
        }
    }
}
