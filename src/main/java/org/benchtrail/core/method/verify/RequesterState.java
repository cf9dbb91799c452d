package org.benchtrail.core.method.verify;

public enum RequesterState {
    AGREES("agrees that it is solved"),
    DISAGREES("does not agree"),
    NOT_REACHED("could not be reached"),
    NO_USER("the device has no user");

    private final String words;

    RequesterState(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
