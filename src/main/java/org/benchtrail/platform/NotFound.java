package org.benchtrail.platform;

/** What was asked for is not here. */
public final class NotFound extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** @param what the thing looked for, as a noun phrase: {@code account "kim"}; what no page can show of it is replaced */
    public NotFound(String what) {
        super("There is no " + what.replaceAll("\\p{Cntrl}", "\uFFFD") + ".");
    }
}
