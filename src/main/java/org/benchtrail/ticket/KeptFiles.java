package org.benchtrail.ticket;

import java.util.Optional;

/** The files that are kept, as far as an act on a ticket has to know of them. */
public interface KeptFiles {
    /** Size of the file in bytes; empty if none with that hash is kept. */
    Optional<Integer> size(String sha256);
}
