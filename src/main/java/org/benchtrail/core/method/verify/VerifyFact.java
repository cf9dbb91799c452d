package org.benchtrail.core.method.verify;

import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Step;

/** What is recorded to verify full function and to prevent recurrence. */
public sealed interface VerifyFact extends Fact
        permits FunctionChecked, PreventionConsidered, RequesterAnswered, SoakRun, SymptomRechecked {
    @Override
    default Step step() {
        return Step.VERIFY;
    }
}
