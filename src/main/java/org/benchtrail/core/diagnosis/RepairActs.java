package org.benchtrail.core.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** What can be repaired now, what waits for something, and what each leads to; one belief. */
final class RepairActs {
    private final Model model;
    private final PlanSettings settings;
    private final BenchSituation situation;
    private final Ranking ranking;
    private final RepairOrder repairs;
    private final Lookahead now;
    /** Causes that a test left mended as it stands: their repair is to leave it so. */
    private final BitSet cured;

    private final double[] p;
    private final double most;
    private final List<Advice.Blocked> blocked = new ArrayList<>();

    RepairActs(
            Model model,
            PlanSettings settings,
            BenchSituation situation,
            Ranking ranking,
            RepairOrder repairs,
            Lookahead now,
            BitSet cured) {
        this.model = model;
        this.settings = settings;
        this.situation = situation;
        this.ranking = ranking;
        this.repairs = repairs;
        this.now = now;
        this.cured = cured;
        p = ranking.probabilities();
        most = Arrays.stream(p).max().orElseThrow();
    }

    /** Repairs that a gate holds back; known once {@link #all} was asked. */
    List<Advice.Blocked> blocked() {
        return blocked;
    }

    /** The best repair of the order above the floor, the best that nothing holds back, and every shared one. */
    List<Action> all() {
        List<Action> acts = new ArrayList<>(single());
        for (SharedRepair s : model.category().sharedRepairs()) {
            if (ranking.evidence().failedRepairs().stream()
                    .noneMatch(f -> f.repair().equals(s.id()))) {
                shared(s).ifPresent(acts::add);
            }
        }
        return acts;
    }

    /** What nobody listed in a place has no repair of its own, but that of the place. */
    private List<Action> single() {
        List<Action> acts = new ArrayList<>();
        boolean open = false;
        for (int i : now.order()) {
            if (i >= model.listed()) {
                continue;
            }
            Cause c = model.category().causes().get(i);
            List<String> reasons = cured.get(i) ? List.of() : reasons(c.repair(), p[i], List.of(c));
            if (!reasons.isEmpty()) {
                blocked.add(new Advice.Blocked(c.id(), reasons));
            }
            boolean first = acts.isEmpty() || (!open && reasons.isEmpty());
            if (first && allows(p[i], minutes(c.repair(), cured.get(i)), c.repair())) {
                acts.add(act(i, reasons.isEmpty()));
                open |= reasons.isEmpty();
            }
        }
        return acts;
    }

    private List<String> reasons(Repair repair, double belief, List<Cause> causes) {
        return RepairGate.reasons(repair, belief, causes, situation, settings);
    }

    private double minutes(Repair repair, boolean left) {
        double own = RepairOrder.minutes(repair, settings);
        return left ? Math.min(own, settings.leaveMinutes()) : own;
    }

    private boolean allows(double belief, double minutes, Repair repair) {
        return settings.floor().allows(belief, most, minutes, repair);
    }

    /** Failure leaves the order of the others as it is. */
    private Action act(int i, boolean open) {
        double[] left = p.clone();
        left[i] *= 1 - repairs.fix[i];
        int[] others = Arrays.stream(now.order()).filter(k -> k != i).toArray();
        double minutes = repairs.minutes[i];
        return new Action(type(open), model.id(i), minutes, minutes + repairs.least(left, others));
    }

    private static Action.Type type(boolean open) {
        return open ? Action.Type.REPAIR : Action.Type.PREPARE;
    }

    /** Scored at the top only: inside the plan every cause keeps its own repair. */
    private Optional<Action> shared(SharedRepair s) {
        Map<Integer, Double> fixes = model.fixes(s.id());
        double[] parts = ranking.partProbabilities();
        double covered =
                fixes.keySet().stream().mapToDouble(part -> parts[part]).sum();
        boolean left = isLeft(fixes);
        List<String> reasons = left ? List.of() : reasons(s.repair(), covered, causes(fixes));
        if (!reasons.isEmpty()) {
            blocked.add(new Advice.Blocked(s.id(), reasons));
        }
        if (!allows(covered, minutes(s.repair(), left), s.repair())) {
            return Optional.empty();
        }
        double whole = RepairOrder.minutes(s.repair(), settings, situation.met());
        double minutes = left ? Math.min(whole, settings.leaveMinutes()) : whole;
        return Optional.of(new Action(
                type(reasons.isEmpty()), s.id(), minutes, minutes + now.minutesWithout(fixes, model.isOfPlace(fixes))));
    }

    private boolean isLeft(Map<Integer, Double> fixes) {
        return fixes.keySet().stream().allMatch(part -> cured.get(model.causeOf(part)));
    }

    private List<Cause> causes(Map<Integer, Double> fixes) {
        return fixes.keySet().stream()
                .map(model::causeOf)
                .distinct()
                .map(i -> model.category().causes().get(i))
                .sorted(Comparator.comparing(Cause::id))
                .toList();
    }

    /**
     * What opens a held repair.
     *
     * @param offered a test by its id, if it is on offer
     */
    Advice.Preparation preparation(String id, Function<String, Optional<Action>> offered) {
        Map<Integer, Double> fixes = model.fixes(id);
        Repair repair = model.repair(id);
        List<String> needs = Needs.missing(repair, situation.met());
        double[] parts = ranking.partProbabilities();
        double covered =
                fixes.keySet().stream().mapToDouble(part -> parts[part]).sum();
        boolean confirm = RepairGate.mustBeConfirmed(repair, covered, causes(fixes), situation, settings);
        Optional<Action> test = confirm
                ? causes(fixes).stream()
                        .flatMap(c -> model.confirming(c.id()).stream())
                        .distinct()
                        .flatMap(t -> offered.apply(t).stream())
                        .min(Comparator.comparingDouble(Action::minutes).thenComparing(Action::id))
                : Optional.empty();
        return new Advice.Preparation(id, needs, Needs.minutes(needs, settings), test);
    }
}
