package org.benchtrail.core.method.verify;

import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Step;

/** What is recorded to verify full function and to prevent recurrence. */
public sealed interface VerifyFact extends Fact
        permits FunctionChecked, PreventionConsidered, RequesterAnswered, SoakRun, SoakStarted, SymptomRechecked {
    @Override
    default Step step() {
        return Step.VERIFY;
    }

    /** What verify asks for is asked again at close, and so may be proven until then. */
    @Override
    default boolean lateAllowed() {
        return true;
    }
}
