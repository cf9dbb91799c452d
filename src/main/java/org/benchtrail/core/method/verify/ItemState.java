package org.benchtrail.core.method.verify;

public enum ItemState {
    WORKS,
    NOT_APPLICABLE,
    FAULTY
}
