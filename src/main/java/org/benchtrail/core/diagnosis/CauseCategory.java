package org.benchtrail.core.diagnosis;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A kind of trouble with its findings and causes.
 *
 * @param escalateMinutes minutes that escalating or swapping the device costs; always ends the ticket; 0.5 to 10 000
 * @param hints what recorded facts and words say of its findings
 */
public record CauseCategory(
        String id,
        String title,
        double escalateMinutes,
        List<Group> groups,
        List<Finding> findings,
        List<Cause> causes,
        List<SharedRepair> sharedRepairs,
        Hints hints) {
    public CauseCategory {
        groups = List.copyOf(groups);
        findings = List.copyOf(findings);
        causes = List.copyOf(causes);
        sharedRepairs = List.copyOf(sharedRepairs);
    }

    /** One that hears nothing but answers. */
    public CauseCategory(
            String id,
            String title,
            double escalateMinutes,
            List<Group> groups,
            List<Finding> findings,
            List<Cause> causes,
            List<SharedRepair> sharedRepairs) {
        this(id, title, escalateMinutes, groups, findings, causes, sharedRepairs, Hints.NONE);
    }

    /** With other questions. */
    public CauseCategory asking(List<Finding> other) {
        return new CauseCategory(id, title, escalateMinutes, groups, other, causes, sharedRepairs, hints);
    }

    /** With other causes. */
    public CauseCategory among(List<Cause> other) {
        return new CauseCategory(id, title, escalateMinutes, groups, findings, other, sharedRepairs, hints);
    }

    /** The cause with that id, or that had it before. */
    public Optional<Cause> cause(@Nullable String id) {
        return causes.stream().filter(c -> c.isKnownAs(id)).findFirst();
    }

    /** With other figures. */
    CauseCategory learned(List<Finding> otherFindings, List<Cause> otherCauses) {
        return new CauseCategory(id, title, escalateMinutes, groups, otherFindings, otherCauses, sharedRepairs, hints);
    }
}
