package org.benchtrail.core.method;

import java.time.Instant;

/** How a fact is told to who reads it. */
public interface Telling {
    /** A moment in the reader's zone. */
    String time(Instant at);

    /** A person's name by account. */
    String name(String account);
}
