package org.benchtrail.core.diagnosis;

import java.util.Set;

/**
 * A test that is half a repair: with one outcome the device is mended as it stands, and what remains is to leave it so, verify
 * and record.
 *
 * @param finding id of the test
 * @param value the outcome that says the fault is gone
 * @param causes whose repair is then {@link PlanSettings#leaveMinutes}
 */
public record Cure(String finding, String value, Set<String> causes) {
    public Cure {
        causes = Set.copyOf(causes);
    }
}
