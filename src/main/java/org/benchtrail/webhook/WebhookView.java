package org.benchtrail.webhook;

import java.util.List;

/** The receivers of changes, as the page shows them. */
public record WebhookView(List<Line> lines) {
    /**
     * One of them.
     *
     * @param place scheme, host and port; empty if this server's settings do not name it
     * @param waiting leaves of the log since the last one that it knows of; not each is a change of a ticket
     * @param answer of the last message, in words
     * @param trouble whether it did not take the last message
     * @param again when it is tried again; empty if nothing is in the way
     */
    public record Line(String name, String place, long waiting, String answer, boolean trouble, String again) {}
}
