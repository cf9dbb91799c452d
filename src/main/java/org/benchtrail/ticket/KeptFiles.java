package org.benchtrail.ticket;

import java.util.Collection;
import java.util.Map;
import java.util.Optional;

/** The files that are kept, as far as an act on a ticket has to know of them. */
public interface KeptFiles {
    /** Size of the file in bytes; empty if none with that hash is kept. */
    Optional<Integer> size(String sha256);

    /** The hash of the bytes as they are now, by the hash under which they were kept; without those that are not kept. */
    Map<String, String> hashes(Collection<String> sha256);
}
