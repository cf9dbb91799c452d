package org.benchtrail.core.method.document;

public enum Signatory {
    ASSIGNEE,
    MENTOR
}
