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

    String name();

    Way way();

    String label();

    /** Hands-on. */
    double minutes();

    /** What is done before it by somebody who lets nothing come to harm. */
    List<? extends DeviceAct> prudent();

    /** Whether it holds for the rest of the job; else it is done again before the next act that asks for it. */
    default boolean lasting() {
        return true;
    }

    default String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
