package org.benchtrail.knowledge;

/** How far a known cause can be relied on. */
public enum CauseState {
    DRAFT("◌", "draft", "written when its first ticket closed; nobody else has found it true yet"),
    CONFIRMED("●", "confirmed", "found true, in these words, by somebody who did not write them"),
    FLAGGED("▲", "flagged", "somebody says that it is wrong: read the reason before you rely on it"),
    RETIRED("○", "retired", "no longer shown; kept for what was said with it");

    private final String shape;
    private final String words;
    private final String meaning;

    CauseState(String shape, String words, String meaning) {
        this.shape = shape;
        this.words = words;
        this.meaning = meaning;
    }

    /** One sign, so that the state is told by more than a colour. */
    public String shape() {
        return shape;
    }

    public String words() {
        return words;
    }

    public String meaning() {
        return meaning;
    }
}
