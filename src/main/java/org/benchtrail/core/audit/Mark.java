package org.benchtrail.core.audit;

/** What a reviewer says of one requirement of one ticket; the order is that of the keys 1 to 4. */
public enum Mark {
    SATISFIED("Satisfied", "The record shows it."),
    NOT_SATISFIED("Not satisfied", "The record shows that it was not done, or not so."),
    NOT_APPLICABLE("Not applicable", "Rightly not asked here."),
    CANNOT_TELL("Cannot tell", "The record leaves it open.");

    private final String words;
    private final String meaning;

    Mark(String words, String meaning) {
        this.words = words;
        this.meaning = meaning;
    }

    public String words() {
        return words;
    }

    public String meaning() {
        return meaning;
    }
}
