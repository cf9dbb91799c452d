package org.benchtrail.core.diagnosis;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/**
 * What to do next. Advice only: the technician chooses, and choosing another test needs no excuse.
 *
 * @param hazards to clear first; if there is one, there are no actions
 * @param actions best first
 * @param recommended empty while a hazard stands
 * @param blocked repairs that a gate holds back, with what would open it
 * @param preparation what to do first, if what is recommended is to prepare a repair
 * @param planMinutes expected by repairing and escalating alone, gates aside
 * @param threshold minutes that a test must save to be recommended
 */
public record Advice(
        Set<String> hazards,
        List<Action> actions,
        Optional<Action> recommended,
        List<Blocked> blocked,
        Optional<Preparation> preparation,
        double planMinutes,
        double threshold) {
    public Advice {
        hazards = Set.copyOf(hazards);
        actions = List.copyOf(actions);
        blocked = List.copyOf(blocked);
    }

    /** The same, where another test is recommended. */
    public Advice recommending(Action test) {
        return new Advice(hazards, actions, Optional.of(test), blocked, preparation, planMinutes, threshold);
    }

    /** A repair that may not be proposed yet. */
    public record Blocked(String repair, List<String> reasons) {}

    /**
     * What opens the best repair.
     *
     * @param needs to be met first, such as {@code backup-done}
     * @param needMinutes what meeting them takes
     * @param test that would confirm the cause, if belief holds the repair back and there is one on offer
     */
    public record Preparation(String repair, List<String> needs, double needMinutes, Optional<Action> test) {
        public Preparation {
            needs = List.copyOf(needs);
        }
    }

    /** The best three actions, or fewer. */
    public List<Action> bestThree() {
        return actions.subList(0, Math.min(3, actions.size()));
    }

    /** The test that leads to the least expected minutes. */
    public Optional<Action> bestTest() {
        return actions.stream().filter(a -> a.type() == Action.Type.TEST).findFirst();
    }

    /** The better of repairing and escalating. */
    public Optional<Action> bestOther() {
        return actions.stream().filter(a -> a.type() != Action.Type.TEST).findFirst();
    }

    /** Whole minutes that a test saves on average against acting at once; empty if below the threshold. */
    public OptionalLong saves(Action test) {
        double x = bestOther().orElseThrow().expectedMinutes() - test.expectedMinutes();
        return x < threshold || x <= 0 ? OptionalLong.empty() : OptionalLong.of(Math.round(x));
    }
}
