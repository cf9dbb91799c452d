package org.benchtrail.core.training;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.practice.Harm;
import org.benchtrail.core.practice.job.DeviceAct;
import org.benchtrail.core.practice.job.Seen;
import org.benchtrail.core.practice.job.Truth;
import org.benchtrail.core.practice.job.Truth.Played;

/**
 * What there is to learn from a practice job. Regret is in minutes by the next-test rules with the catalogue, at what was known
 * then: the act's expectation less the least one. What makes safe and what tries the symptom is never a detour.
 *
 * @param acts in their order
 * @param recommended on the same seed, with the same noise
 * @param least minutes below which nobody solves it without harm
 */
public record Debrief(Truth truth, List<Judged> acts, Players.Result recommended, OptionalDouble least) {
    public Debrief {
        acts = List.copyOf(acts);
    }

    /**
     * One act.
     *
     * @param regret minutes; empty for what the catalogue does not weigh
     * @param allowed minutes of regret up to which it is no divergence
     * @param better what would have cost least; empty where this did, or nearly
     * @param skipped what would have kept it from harm and had not been done
     */
    public record Judged(
            DeviceAct act,
            OptionalDouble regret,
            double allowed,
            Optional<Action> better,
            List<DeviceAct> skipped,
            List<Harm> harm) {
        public Judged {
            skipped = List.copyOf(skipped);
            harm = List.copyOf(harm);
        }

        public boolean diverges() {
            return regret.isPresent() && regret.getAsDouble() > allowed;
        }
    }

    public static Debrief of(Truth truth, Played played, Model model) {
        Players players = new Players(truth, model);
        return new Debrief(truth, judged(truth, played, model), players.recommended(), players.leastMinutes());
    }

    private static List<Judged> judged(Truth truth, Played played, Model model) {
        Belief belief = Belief.reported(Ties.of(truth.family()), model);
        Set<DeviceAct> done = new HashSet<>();
        Set<DeviceAct> safe = new HashSet<>();
        List<Judged> judged = new ArrayList<>();
        for (Truth.Step step : played.steps()) {
            DeviceAct act = step.act();
            List<DeviceAct> skipped = step.answer().harm().isEmpty() ? List.of() : unsafe(act, safe);
            belief = belief.practicable();
            judged.add(belief.judge(act, step.answer().harm(), skipped));
            done.add(act);
            safe.add(act);
            if (act.way() == DeviceAct.Way.MEND) {
                safe.removeIf(p -> !p.lasting());
            }
            belief = learned(belief, step, done, truth);
        }
        return judged;
    }

    private static List<DeviceAct> unsafe(DeviceAct act, Set<DeviceAct> safe) {
        List<DeviceAct> skipped = new ArrayList<>();
        act.prudent().stream().filter(p -> !safe.contains(p)).forEach(skipped::add);
        return skipped;
    }

    private static Belief learned(Belief before, Truth.Step step, Set<DeviceAct> done, Truth truth) {
        Seen seen = step.answer().seen();
        Belief belief = before.seeing(step.act(), seen == null ? new Seen(Seen.UNKNOWN, null) : seen);
        boolean failed = step.act() == truth.family().tried()
                && seen != null
                && seen.value().equals("yes");
        return failed ? belief.failedBy(done) : belief;
    }

    /** The first act that cost more than the best would have, by more than a trifle. */
    public Optional<Judged> firstDivergent() {
        return acts.stream().filter(Judged::diverges).findFirst();
    }

    /** Minutes, over all acts that the catalogue weighs. */
    public double regret() {
        return acts.stream().mapToDouble(a -> a.regret().orElse(0)).sum();
    }
}
