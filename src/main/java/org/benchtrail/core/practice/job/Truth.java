package org.benchtrail.core.practice.job;

import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.benchtrail.core.integrity.Commitment;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Harm;
import org.benchtrail.core.practice.VirtualClock;

/**
 * What is true of a job. Nobody sees it before the debrief; what stands for it meanwhile is its commitment.
 *
 * @param seed lower-case hexadecimal, from which all parameters and all chance follow
 * @param fault one of the family's
 */
public record Truth(Family family, String seed, String fault) {
    private static final String NAME = "practice.truth";

    public Truth {
        if (!family.faults().contains(fault)) {
            throw new IllegalArgumentException("no fault of " + family + ": " + fault);
        }
    }

    /** The truth that follows from a seed. */
    public static Truth of(Family family, byte[] seed) {
        double draw = new Chance(seed).uniform("fault");
        List<String> faults = family.faults();
        return new Truth(family, HexFormat.of().formatHex(seed), faults.get((int) (draw * faults.size())));
    }

    /** The same bytes for the same truth. */
    public String canonical() {
        return "{\"family\":\"" + family.id() + "\",\"fault\":\"" + fault + "\",\"seed\":\"" + seed + "\",\"v\":1}";
    }

    /** @param salt 32 random bytes of this job alone */
    public String commitment(byte[] salt) {
        return Commitment.of(salt, NAME, canonical()).toString();
    }

    public PracticeDevice start() {
        return family.start(new Chance(HexFormat.of().parseHex(seed)), fault);
    }

    /** An act, and how it ended. */
    public record Step(DeviceAct act, Answer answer) {}

    /** The job as far as it was played. */
    public record Played(PracticeDevice device, VirtualClock clock, List<Step> steps) {
        public Played {
            steps = List.copyOf(steps);
        }

        public List<Harm> harm() {
            return steps.stream().flatMap(s -> s.answer().harm().stream()).toList();
        }

        public double cost() {
            return steps.stream().mapToDouble(s -> s.answer().cost()).sum();
        }

        public boolean isOver() {
            return steps.stream().anyMatch(s -> s.answer().over());
        }

        /** After minutes in which nobody worked on it. */
        public Played waited(double minutes) {
            return new Played(device, clock.waited(minutes), steps);
        }

        public Played with(DeviceAct act) {
            Answer answer = device.act(act);
            List<Step> all = new ArrayList<>(steps);
            all.add(new Step(act, answer));
            return new Played(answer.after(), clock.worked(answer.handsOn()).waited(answer.waiting()), all);
        }
    }

    /** The job before the first act. */
    public Played opened(VirtualClock clock) {
        return new Played(start(), clock, List.of());
    }

    /** The same acts in the same order end the same, whenever they are played. */
    public Played played(VirtualClock clock, List<String> acts) {
        Played played = opened(clock);
        for (String act : acts) {
            played = played.with(family.act(act));
        }
        return played;
    }
}
