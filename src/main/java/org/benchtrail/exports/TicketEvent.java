package org.benchtrail.exports;

import java.time.Instant;
import java.util.List;
import org.benchtrail.core.figures.Whereabouts;
import org.jspecify.annotations.Nullable;

/**
 * One entry of a trail as an event. Nothing in it was typed by anybody.
 *
 * @param person stands for an account within one file, and for no account beyond it
 * @param roles in which it was done; empty where the entry cannot be read
 * @param before where the ticket was when it was done
 * @param hash of the entry
 * @param leaf index in the log; null while the entry is not sealed
 * @param proof that the leaf is in the log of the head that the file names, from the leaf upwards; empty where the file holds no
 *     proofs, the head does not cover it, or it is the only leaf
 */
record TicketEvent(
        int entry,
        Instant at,
        String kind,
        String person,
        List<String> roles,
        Whereabouts before,
        String hash,
        @Nullable Long leaf,
        List<String> proof) {
    TicketEvent {
        roles = List.copyOf(roles);
        proof = List.copyOf(proof);
    }

    TicketEvent(
            int entry,
            Instant at,
            String kind,
            String person,
            List<String> roles,
            Whereabouts before,
            String hash,
            @Nullable Long leaf) {
        this(entry, at, kind, person, roles, before, hash, leaf, List.of());
    }

    /** Whether it is an act that was refused, and so changed nothing. */
    boolean refused() {
        return kind.equals("refused");
    }
}
