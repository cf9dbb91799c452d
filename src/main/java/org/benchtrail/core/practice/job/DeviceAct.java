package org.benchtrail.core.practice.job;

import java.util.List;
import java.util.Locale;

/** One thing that can be done with a device on practice. */
public interface DeviceAct {
    /** What it is for. */
    enum Way {
        ASK("Ask"),
        LOOK("Look"),
        MEASURE("Measure"),
        PREPARE("Make safe"),
        MEND("Mend"),
        TRY("Try the symptom");

        private final String words;

        Way(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * What is to be known of an act before it is done.
     *
     * @param minutes hands-on
     * @param prudent what is done before it by somebody who lets nothing come to harm
     */
    record Particulars(Way way, double minutes, String label, List<? extends DeviceAct> prudent) {
        public Particulars {
            prudent = List.copyOf(prudent);
        }
    }

    String name();

    Particulars particulars();

    default Way way() {
        return particulars().way();
    }

    default String label() {
        return particulars().label();
    }

    /** Hands-on. */
    default double minutes() {
        return particulars().minutes();
    }

    /** What is done before it by somebody who lets nothing come to harm. */
    default List<? extends DeviceAct> prudent() {
        return particulars().prudent();
    }

    /** Whether it holds for the rest of the job; else it is done again before the next act that asks for it. */
    default boolean lasting() {
        return true;
    }

    default String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
