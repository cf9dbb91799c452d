package org.benchtrail.core.diagnosis;

/** How much harm an act may do when it goes wrong. The minutes it is charged with are {@link PlanSettings#riskMinutes}. */
public enum Risk {
    NONE,
    LOW,
    MEDIUM,
    HIGH
}
