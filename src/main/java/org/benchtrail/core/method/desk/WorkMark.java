package org.benchtrail.core.method.desk;

/** What a mentor who looked at the work says of one requirement; who does not say leaves it not judged. */
public enum WorkMark {
    SATISFIED("satisfied"),
    NOT_SATISFIED("not satisfied");

    private final String words;

    WorkMark(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
