package org.benchtrail.core.bench;

/** The trades by which the bench is sorted. */
public enum Trade {
    POWER,
    COOLING,
    STORAGE,
    MEMORY,
    NETWORK,
    WIRELESS,
    VOICE,
    JUDGING
}
