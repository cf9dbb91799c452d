package org.benchtrail.core.diagnosis;

import java.time.Instant;
import java.util.Set;
import org.benchtrail.core.Invalid;

/**
 * One statement about a finding.
 *
 * @param value one of the finding's values, or {@link #UNKNOWN} or {@link #NOT_APPLICABLE}, which weigh nothing and are
 *     never taken for "no"
 * @param reliability in [0, {@value #MOST_RELIABLE}]: probability that the true value is passed on, a blind guess otherwise
 * @param superseded measured again after a change: kept, without weight
 */
public record Report(String id, String finding, String value, double reliability, Instant at, boolean superseded) {
    public static final double MOST_RELIABLE = 0.98;
    public static final String UNKNOWN = "unknown";
    public static final String NOT_APPLICABLE = "not applicable";
    static final Set<String> SILENT = Set.of(UNKNOWN, NOT_APPLICABLE);

    /** @throws Invalid if the reliability is outside its domain */
    public Report {
        new Invalid.Collector()
                .require(
                        reliability >= 0 && reliability <= MOST_RELIABLE,
                        "reliability",
                        "give a reliability from 0 to " + MOST_RELIABLE)
                .throwIfAny();
    }

    public static Report of(String id, String finding, String value, Source source, Instant at) {
        return new Report(id, finding, value, source.reliability(), at, false);
    }

    /** Whether it names a value at all, valid now: it then answers the question, even with reliability 0. */
    public boolean isAnswer() {
        return !superseded && !SILENT.contains(value);
    }

    /** Whether it can move a belief. */
    boolean isInformative() {
        return isAnswer() && reliability > 0;
    }

    Report supersede() {
        return new Report(id, finding, value, reliability, at, true);
    }
}
