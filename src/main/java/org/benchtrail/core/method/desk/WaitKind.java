package org.benchtrail.core.method.desk;

/** What on a ticket can wait for somebody, in the order in which it is shown to them. */
public enum WaitKind {
    APPROVAL("To approve", "an approval of the plan"),
    WAIVER("Waivers asked for", "a waiver"),
    LESSENING("Corrections to agree to", "agreement to a correction"),
    SIGNATURE("To sign as mentor", "a signature"),
    MENTOR("To look at as mentor", "a mentor to look at it"),
    PRESENCE("You were present: say how it went", "the mentor to say how it went"),
    ADDENDUM("Added to a closed ticket", "a countersignature"),
    SENT_BACK("Sent back to you", "the assignee to correct it"),
    REMARK("Remarks on your work", "the assignee to read a remark"),
    OFFER("Offered to you", "an answer to an offer"),
    SOAK("Soak time is over", "the end of the soak time"),
    FOLLOW_UP("Held, follow-up is due", "the follow-up of a hold");

    private final String title;
    private final String words;

    WaitKind(String title, String words) {
        this.title = title;
        this.words = words;
    }

    /** Of the group, as whom it waits for reads it. */
    public String title() {
        return title;
    }

    /** What is waited for, as everybody else reads it. */
    public String words() {
        return words;
    }
}
