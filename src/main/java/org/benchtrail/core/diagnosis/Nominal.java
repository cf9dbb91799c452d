package org.benchtrail.core.diagnosis;

import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What a limit depends on: the same number may be good at one mains voltage and bad at another.
 *
 * @param by what has to be known
 * @param cases the limit in each case, by its name; empty for a nameplate
 * @param lowPercent of the nameplate's value, below 0; null but for a nameplate
 * @param highPercent of the nameplate's value, above 0; null but for a nameplate
 */
public record Nominal(
        By by,
        Map<String, Case> cases,
        @Nullable Double lowPercent,
        @Nullable Double highPercent) {

    /** What has to be known before a value is held against the limit. */
    public enum By {
        /** The nominal mains voltage of the place, V. */
        MAINS("say first which mains voltage the place has"),
        /** The generation of the memory module. */
        MEMORY("say first which generation the module is"),
        /** Whether the drive has turning platters. */
        DRIVE("say first whether the drive turns or is solid-state"),
        /** What the maker wrote on the device. */
        NAMEPLATE("say first what the nameplate says");

        private final String missing;

        By(String missing) {
            this.missing = missing;
        }

        /** What to do where it is not known. */
        public String missing() {
            return missing;
        }
    }

    /**
     * The limit in one case; in the unit of the limits, both inclusive.
     *
     * @param source where it comes from
     */
    public record Case(@Nullable Double low, @Nullable Double high, String source) {}

    private static final double HUNDRED = 100;

    public Nominal {
        cases = java.util.Collections.unmodifiableMap(new TreeMap<>(cases));
    }

    /**
     * The limit for what is written on a device.
     *
     * @param nameplate in the unit of the limits
     */
    public Case of(double nameplate) {
        return new Case(share(nameplate, lowPercent), share(nameplate, highPercent), "the nameplate, common practice");
    }

    private static @Nullable Double share(double nameplate, @Nullable Double percent) {
        return percent == null ? null : (Double) (nameplate * (1 + percent / HUNDRED));
    }
}
