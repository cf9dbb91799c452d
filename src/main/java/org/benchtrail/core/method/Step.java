package org.benchtrail.core.method;

/** The six steps of the method, in the order in which every ticket passes them. */
public enum Step {
    IDENTIFY("Identify", "What is wrong, since when, what changed, is it dangerous?"),
    THEORIZE("Theorize", "What could cause it? Simple things first."),
    TEST("Test", "Do the checks support the theory?"),
    PLAN("Plan", "What will be done, what can go wrong, what is the way back?"),
    VERIFY("Verify", "Is every symptom gone, does everything work, will it last?"),
    DOCUMENT("Document", "What was it, what was done, what is learned?");

    private final String title;
    private final String question;

    Step(String title, String question) {
        this.title = title;
        this.question = question;
    }

    public String title() {
        return title;
    }

    /** The question that the step answers, as shown beside its title. */
    public String question() {
        return question;
    }

    /** Place in the order, 1 to 6. */
    public int place() {
        return ordinal() + 1;
    }

    public boolean isBefore(Step other) {
        return ordinal() < other.ordinal();
    }

    /**
     * The step after this one.
     *
     * @throws IllegalStateException for {@link #DOCUMENT}: what follows it is closing the ticket
     */
    public Step next() {
        if (this == DOCUMENT) {
            throw new IllegalStateException("no step follows document");
        }
        return values()[ordinal() + 1];
    }
}
