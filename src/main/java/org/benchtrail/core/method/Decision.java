package org.benchtrail.core.method;

import java.util.List;

/** The answer of the method to an act: do it, or what is missing. */
public sealed interface Decision {
    record Allowed() implements Decision {}

    /**
     * Never empty.
     *
     * @param person whether it is because of who asks
     */
    record Refused(List<Missing> missing, boolean person) implements Decision {
        public Refused {
            missing = List.copyOf(missing);
            if (missing.isEmpty()) {
                throw new IllegalArgumentException("a refusal says what is missing");
            }
        }
    }
}
