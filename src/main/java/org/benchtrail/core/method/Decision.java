package org.benchtrail.core.method;

import java.util.List;

/** The answer of the method to an act: do it, or what is missing. */
public sealed interface Decision {
    record Allowed() implements Decision {}

    /** Never empty. */
    record Refused(List<Missing> missing) implements Decision {
        public Refused {
            missing = List.copyOf(missing);
            if (missing.isEmpty()) {
                throw new IllegalArgumentException("a refusal says what is missing");
            }
        }
    }
}
