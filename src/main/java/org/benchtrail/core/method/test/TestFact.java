package org.benchtrail.core.method.test;

import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Step;

/** What is recorded to test the theory. */
public sealed interface TestFact extends Fact permits CheckPlanned, ResultRecorded {
    @Override
    default Step step() {
        return Step.TEST;
    }
}
