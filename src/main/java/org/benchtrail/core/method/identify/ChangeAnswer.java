package org.benchtrail.core.method.identify;

public enum ChangeAnswer {
    YES,
    NO,
    UNKNOWN
}
