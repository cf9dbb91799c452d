package org.benchtrail.core.method.identify;

public enum ChangeKind {
    HARDWARE("hardware"),
    SOFTWARE("software, updates"),
    SETTINGS("settings"),
    PLACE("place or surroundings"),
    INFRASTRUCTURE("power, network, building");

    private final String words;

    ChangeKind(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
