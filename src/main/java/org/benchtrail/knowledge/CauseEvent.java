package org.benchtrail.knowledge;

import com.fasterxml.jackson.annotation.JsonValue;

/** What happened to a known cause. */
public enum CauseEvent {
    PROPOSED("proposed"),
    CONFIRMED("confirmed"),
    WITHDRAWN("a confirmation withdrawn"),
    FLAGGED("flagged"),
    CORRECTED("corrected"),
    RETIRED("retired"),
    BROUGHT_BACK("brought back"),
    MERGED("merged into another"),
    TOOK_IN("took another in"),
    SPLIT("split"),
    SPLIT_OFF("split off from another");

    private final String words;

    CauseEvent(String words) {
        this.words = words;
    }

    @JsonValue
    public String words() {
        return words;
    }
}
