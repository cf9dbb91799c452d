package org.benchtrail.training;

import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.practice.VirtualClock;
import org.benchtrail.core.practice.job.OwnJob;
import org.benchtrail.core.practice.job.Truth;
import org.benchtrail.core.practice.job.Truth.Played;
import org.benchtrail.trail.TrailEntry;
import org.jspecify.annotations.Nullable;

/**
 * A practice job as it is kept.
 *
 * @param morning from which its own time counts
 * @param truth what is true of the device; for no page to show before the job has ended
 * @param salt of the commitment
 * @param done what was done with the device, in its order
 * @param coached whether the coach stands beside it; null if it is no part of a test of the coach
 */
record PracticeJob(
        int id,
        String person,
        Instant begun,
        Instant morning,
        State state,
        String commitment,
        Truth truth,
        byte[] salt,
        List<TrailEntry> trail,
        List<Done> done,
        @Nullable Boolean coached) {
    private static final int FIRST_NUMBER = 900_000_000;

    enum State {
        OPEN("open"),
        CLOSED("closed"),
        GIVEN_UP("given up"),
        /** Ended by what was done. */
        OVER("ended by an act that is not ours to do");

        private final String words;

        State(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * An act on the device or a time of waiting.
     *
     * @param entry the last one on the sheet when it was done
     */
    record Done(String act, int entry, Step step) {}

    /** By which its entries name it; no ticket ever has such a number. */
    TicketNumber number() {
        return number(id);
    }

    static TicketNumber number(int id) {
        return new TicketNumber(FIRST_NUMBER + id);
    }

    String base() {
        return "/practice/" + id + "/sheet";
    }

    boolean isOpen() {
        return state == State.OPEN;
    }

    /** Whether it is worked without the coach, as its test asks. */
    boolean isSilent() {
        return Boolean.FALSE.equals(coached);
    }

    /** Whether what is true of it is what its commitment stands for. */
    boolean opens() {
        return truth.commitment(salt).equals(commitment);
    }

    JobSheet sheet() {
        return JobSheet.replay(trail.stream().map(TrailEntry::read).toList());
    }

    /** What is there to be noticed, each with its words; nothing but in a mentor's job. */
    Map<Hazard, String> hazards() {
        Map<Hazard, String> hazards = new EnumMap<>(Hazard.class);
        OwnJob own = truth.own();
        if (own != null) {
            own.hazards().forEach((name, words) -> hazards.put(Hazard.valueOf(name), words));
        }
        return hazards;
    }

    /** Whether somebody screened and named it. */
    boolean named(Hazard hazard) {
        return sheet().all(HazardsScreened.class).stream()
                .anyMatch(s -> s.fact().found().contains(hazard));
    }

    /** The device and its time as they are now. */
    Played played() {
        Played played = truth.opened(VirtualClock.at(morning));
        for (Done act : done) {
            played = Deed.of(truth.family(), act.act()).on(played);
        }
        return played;
    }
}
