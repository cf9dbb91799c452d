package org.benchtrail.core.advice;

import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.StandingFact;

/**
 * What a fact of a job sheet says of a finding.
 *
 * @param by the fact
 * @param source how it is known
 * @param excess how far a number lies beyond its limit, in the unit of the finding; negative within; 0 for an answer
 */
public record Heard(StandingFact<?> by, Finding finding, Report report, Kind kind, Source source, double excess) {

    /** How it came to be heard. */
    public enum Kind {
        /** Somebody gave the answer, or took the reading for it. */
        EXPLICIT,
        /** It follows from what everybody is asked at intake. */
        INTAKE,
        /** It was not named by whoever named another complaint. */
        UNNAMED,
        /** It follows from a reading, a result of the bench, or what a device told. */
        MEASURED
    }

    boolean isExplicit() {
        return kind == Kind.EXPLICIT;
    }

    /** Whether it says one of the values, whatever has been measured since. */
    boolean informs() {
        return finding.values().contains(report.value()) && report.reliability() > 0;
    }

    /** Whether it says that nothing is out of the ordinary. */
    boolean isNormal() {
        return report.value().equals(finding.usual());
    }

    Heard with(Report other) {
        return new Heard(by, finding, other, kind, source, excess);
    }
}
