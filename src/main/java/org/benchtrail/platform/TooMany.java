package org.benchtrail.platform;

/** More was asked than is answered in a minute. */
public final class TooMany extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final long seconds;

    /** @param seconds after which the next request is answered */
    public TooMany(long seconds) {
        super("More requests came in a minute than are answered.");
        this.seconds = seconds;
    }

    public long seconds() {
        return seconds;
    }
}
