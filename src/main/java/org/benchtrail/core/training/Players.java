package org.benchtrail.core.training;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.practice.VirtualClock;
import org.benchtrail.core.practice.job.DeviceAct;
import org.benchtrail.core.practice.job.Seen;
import org.benchtrail.core.practice.job.Truth;
import org.benchtrail.core.practice.job.Truth.Played;

/** Practice jobs played by machine. Time is hands-on minutes; giving up costs what the catalogue says of escalating. */
public final class Players {
    private static final int MOST_ROUNDS = 60;
    private static final VirtualClock CLOCK = VirtualClock.at(Instant.EPOCH);

    private final Truth truth;
    private final Ties ties;
    private final Model model;

    public Players(Truth truth, Model model) {
        this.truth = truth;
        this.model = model;
        ties = Ties.of(truth.family());
    }

    /**
     * How a job ended.
     *
     * @param minutes worked, with those of escalating if it was not solved
     */
    public record Result(boolean solved, double minutes, Played played) {}

    /** One job while it is played. */
    private final class Game {
        private Played played = truth.opened(CLOCK);
        private Belief belief = Belief.reported(ties, model);
        private final Set<DeviceAct> done = new HashSet<>();

        /** Does what is prudent first, and nothing of that twice. */
        void act(DeviceAct act) {
            act.prudent().stream()
                    .filter(p -> !p.lasting() || !done.contains(p))
                    .forEach(this::act);
            done.add(act);
            played = played.with(act);
            Seen seen = played.steps().get(played.steps().size() - 1).answer().seen();
            belief = belief.seeing(act, seen == null ? new Seen(Seen.UNKNOWN, null) : seen);
        }

        /** Whether the symptom is gone after the repair of that cause. */
        boolean repaired(String cause) {
            for (DeviceAct act : belief.repairing(cause)) {
                if (!done.contains(act)) {
                    act(act);
                    act(truth.family().tried());
                    if (played.device().isWell()) {
                        return true;
                    }
                }
            }
            Belief after = belief.failedBy(done);
            belief = after.equals(belief) ? belief.failed(cause) : after;
            return false;
        }

        Result solved() {
            return new Result(true, played.clock().handsOn(), played);
        }

        Result givenUp() {
            return new Result(false, played.clock().handsOn() + model.category().escalateMinutes(), played);
        }
    }

    /** By the catalogue's next best act on what the device answers, with everything prudent done first. */
    public Result recommended() {
        Game game = new Game();
        for (int round = 0; round < MOST_ROUNDS; round++) {
            game.belief = game.belief.practicable();
            Action next = game.belief.advice().recommended().orElseThrow();
            switch (next.type()) {
                case TEST -> game.act(ties.answering(next.id()).orElseThrow());
                case ESCALATE -> {
                    return game.givenUp();
                }
                default -> {
                    if (game.repaired(next.id())) {
                        return game.solved();
                    }
                }
            }
        }
        return game.givenUp();
    }

    /** Repairs the commonest cause at once, without a look; if that does not help, it is escalated. */
    public Result firstCause() {
        Game game = new Game();
        String first = Belief.commonest(ties, model.category()).orElseThrow();
        return game.repaired(first) ? game.solved() : game.givenUp();
    }

    /** Minutes below which nobody solves it without harm: the truth known, the cheapest repairs and one trial; empty if none. */
    public OptionalDouble leastMinutes() {
        List<DeviceAct> mending = truth.family().acts().stream()
                .filter(a -> a.way() == DeviceAct.Way.MEND)
                .toList();
        OptionalDouble one = least(mending.stream().map(List::of));
        return one.isPresent()
                ? one
                : least(mending.stream().flatMap(a -> mending.stream().map(b -> List.of(a, b))));
    }

    private OptionalDouble least(Stream<List<DeviceAct>> repairs) {
        return repairs.map(this::repaired)
                .filter(played -> played.device().isWell() && played.harm().isEmpty())
                .mapToDouble(played -> played.clock().handsOn())
                .min();
    }

    private Played repaired(List<DeviceAct> acts) {
        Game game = new Game();
        acts.forEach(game::act);
        if (game.played.device().isWell()) {
            game.act(truth.family().tried());
        }
        return game.played;
    }
}
