package org.benchtrail.core.method.identify;

public enum DataState {
    BACKUP_VERIFIED("backup verified"),
    TAKEN_NOW("backup taken now"),
    NOT_YET("not yet backed up"),
    IMPOSSIBLE("backup impossible"),
    NO_USER_DATA("no user data");

    private final String words;

    DataState(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    public boolean backedUp() {
        return this == BACKUP_VERIFIED || this == TAKEN_NOW;
    }
}
