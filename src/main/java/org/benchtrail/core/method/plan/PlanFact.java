package org.benchtrail.core.method.plan;

import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Step;

/** What is recorded to plan the fix and carry it out. */
public sealed interface PlanFact extends Fact
        permits ActionPlanned,
                ActionSettled,
                MakerConsulted,
                PartFitChecked,
                PartOverrideApproved,
                PlanApproved,
                PlanDeclined {
    @Override
    default Step step() {
        return Step.PLAN;
    }
}
