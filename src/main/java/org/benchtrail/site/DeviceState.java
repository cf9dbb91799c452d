package org.benchtrail.site;

/** What becomes of a device. */
public enum DeviceState {
    IN_USE("in use"),
    SPARE("spare"),
    IN_REPAIR("being repaired"),
    GIVEN_UP("no longer here");

    private final String words;

    DeviceState(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
