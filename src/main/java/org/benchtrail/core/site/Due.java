package org.benchtrail.core.site;

import java.time.Instant;

/**
 * What is due next on a ticket, and when.
 *
 * @param at when
 * @param what to be answered as long as nobody has had it, then to be fixed
 */
public record Due(Instant at, What what) {
    /** What is to be done by then. */
    public enum What {
        ANSWER("to be answered"),
        FIX("to be fixed");

        private final String words;

        What(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }
}
