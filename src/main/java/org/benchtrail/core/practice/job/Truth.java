package org.benchtrail.core.practice.job;

import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.integrity.Commitment;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Harm;
import org.benchtrail.core.practice.Stated;
import org.benchtrail.core.practice.VirtualClock;
import org.jspecify.annotations.Nullable;

/**
 * What is true of a job. Nobody sees it before the debrief; what stands for it meanwhile is its commitment.
 *
 * @param seed lower-case hexadecimal, from which all parameters and all chance follow
 * @param fault one of the family's
 * @param own the mentor's job that it is one of; null if it is none
 */
public record Truth(
        Family family, String seed, String fault, @Nullable OwnJob own) {
    private static final String NAME = "practice.truth";

    public Truth {
        if (!family.faults().contains(fault)) {
            throw new IllegalArgumentException("no fault of " + family + ": " + fault);
        }
    }

    public Truth(Family family, String seed, String fault) {
        this(family, seed, fault, null);
    }

    /** A mentor's job, with one of its faults. */
    public static Truth of(OwnJob own, byte[] seed) {
        return new Truth(own.family(), HexFormat.of().formatHex(seed), own.fault(new Chance(seed)), own);
    }

    /** Another device that somebody with the same report might have. */
    public Truth like(String otherSeed, String otherFault) {
        return new Truth(family, otherSeed, otherFault, own);
    }

    /** Title of the job, as whoever took the call wrote it. */
    public String report() {
        return own == null ? family.report() : own.symptom();
    }

    /** What the requester said. */
    public String words() {
        return own == null ? family.words() : own.message();
    }

    public String device() {
        return own == null ? family.device() : own.device();
    }

    /** What its job is called in a list. */
    public String title() {
        return own == null ? family.title() : own.symptom();
    }

    /** The truth that follows from a seed. */
    public static Truth of(Family family, byte[] seed) {
        double draw = new Chance(seed).uniform("fault");
        List<String> faults = family.faults();
        return new Truth(family, HexFormat.of().formatHex(seed), faults.get((int) (draw * faults.size())));
    }

    /** The same bytes for the same truth. */
    public String canonical() {
        String ofOwn = own == null ? "" : "\"own\":\"" + own.digest() + "\",";
        return "{\"family\":\"" + family.id() + "\",\"fault\":\"" + fault + "\"," + ofOwn + "\"seed\":\"" + seed
                + "\",\"v\":" + (own == null ? 1 : 2) + "}";
    }

    /** @param salt 32 random bytes of this job alone */
    public String commitment(byte[] salt) {
        return Commitment.of(salt, NAME, canonical()).toString();
    }

    public PracticeDevice start() {
        return found().orElseThrow();
    }

    /** The device; empty if no draw shows the symptom, which is for a mentor's job alone. */
    public Optional<? extends PracticeDevice> found() {
        Chance chance = new Chance(HexFormat.of().parseHex(seed));
        return own == null ? family.start(chance, fault, Stated.NOTHING) : own.device(chance, fault);
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
