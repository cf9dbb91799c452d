package org.benchtrail.core.method.theorize;

public enum Inspection {
    IN_ORDER,
    SUSPECT,
    NOT_APPLICABLE
}
