package org.benchtrail.core.method.identify;

public enum Reproduction {
    YES,
    NO,
    INTERMITTENT,
    UNSAFE_TO_TRY
}
