package org.benchtrail.core.method.identify;

/** What a mark on a picture looks like. */
public enum MarkKind {
    /** Its tip is at the second place. */
    ARROW("arrow"),
    /** Round what lies in the box between both places. */
    CIRCLE("circle"),
    /** Words at the first place. */
    TEXT("words");

    private final String words;

    MarkKind(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
