package org.benchtrail.core.diagnosis;

import java.util.List;

/**
 * A kind of trouble with its findings and causes.
 *
 * @param escalateMinutes minutes that escalating or swapping the device costs; always ends the ticket; 0.5 to 10 000
 */
public record CauseCategory(
        String id,
        String title,
        double escalateMinutes,
        List<Group> groups,
        List<Finding> findings,
        List<Cause> causes,
        List<SharedRepair> sharedRepairs) {
    public CauseCategory {
        groups = List.copyOf(groups);
        findings = List.copyOf(findings);
        causes = List.copyOf(causes);
        sharedRepairs = List.copyOf(sharedRepairs);
    }
}
