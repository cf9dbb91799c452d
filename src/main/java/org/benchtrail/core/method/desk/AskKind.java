package org.benchtrail.core.method.desk;

/** What who works on a ticket asks of those who judge. */
public enum AskKind {
    APPROVAL(WaitKind.APPROVAL),
    WAIVER(WaitKind.WAIVER),
    MENTOR(WaitKind.MENTOR);

    private final WaitKind wait;

    AskKind(WaitKind wait) {
        this.wait = wait;
    }

    /** What it is to those whom it waits for. */
    public WaitKind waiting() {
        return wait;
    }

    public String words() {
        return wait.words();
    }
}
