package org.benchtrail.core.method.document;

public enum Lesson {
    CONFIRMED("confirms a known cause"),
    PROPOSED("proposes a new known cause"),
    NOTHING("nothing is learned");

    private final String words;

    Lesson(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
