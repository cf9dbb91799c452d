package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import org.benchtrail.core.integrity.Frontier;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.Leaf;
import org.jspecify.annotations.Nullable;

/**
 * Numbers what is queued. One node at a time, and never in an act's way: it takes rows out of the queue that are committed, and no
 * lock that an act waits for.
 */
@ApplicationScoped
class Sealing {
    static final int BATCH = 10_000;

    private static final String FILES = "files";

    private final LogRows rows;
    private final Incidents incidents;
    private final Clock clock;

    Sealing(LogRows rows, Incidents incidents, Clock clock) {
        this.rows = rows;
        this.incidents = incidents;
        this.clock = clock;
    }

    /**
     * Seals all that is queued; answers with how many leaves there are more. Empty if another node is at it, who signs them: a head
     * in the middle of what had waited long would make the rest of it look as if it had been entered late.
     */
    OptionalLong sealAll() {
        return seal(Long.MAX_VALUE);
    }

    /** As {@link #sealAll()}, and nothing behind that record: it is the last leaf, where it still waits. */
    OptionalLong sealTo(String stream, long place) {
        return seal(QuarkusTransaction.requiringNew()
                .call(() -> rows.queued(stream, place))
                .orElse(Long.MAX_VALUE));
    }

    /** @param last of the queue that is sealed */
    private OptionalLong seal(long last) {
        long sealed = 0;
        Taken taken;
        do {
            taken = QuarkusTransaction.requiringNew().call(() -> sealSome(last));
            sealed += taken.sealed();
        } while (taken.queued() == BATCH);
        return taken == LEFT ? OptionalLong.empty() : OptionalLong.of(sealed);
    }

    private record Taken(int queued, int sealed) {}

    /** To another node. */
    private static final Taken LEFT = new Taken(-1, 0);

    private Taken sealSome(long last) {
        if (!rows.lock()) {
            return LEFT;
        }
        List<LogRows.Queued> queued = rows.take(BATCH, last);
        List<Leaf> leaves = fitting(queued);
        if (!leaves.isEmpty()) {
            List<LogRows.Node> nodes = new ArrayList<>();
            Frontier frontier = rows.frontier((level, n, hash) -> nodes.add(new LogRows.Node(level, n, hash)));
            long first = frontier.size();
            List<Hash> hashes = leaves.stream().map(Leaf::leafHash).toList();
            hashes.forEach(frontier::add);
            rows.add(first, leaves, hashes);
            if (!nodes.isEmpty()) {
                rows.add(nodes);
            }
            rows.grow(frontier);
        }
        return new Taken(queued.size(), leaves.size());
    }

    /** What goes on where its stream ends; the rest is set aside, and all that comes after it in the same stream. */
    private List<Leaf> fitting(List<LogRows.Queued> queued) {
        Map<String, LogRows.End> ends = new HashMap<>(
                rows.ends(queued.stream().map(LogRows.Queued::stream).collect(Collectors.toSet())));
        List<Leaf> leaves = new ArrayList<>();
        for (LogRows.Queued one : queued) {
            LogRows.End end = ends.get(one.stream());
            long expected = end == null ? 1 : end.place() + 1;
            Optional<Leaf> leaf = goesOn(one, end, expected) ? leaf(one, expected) : Optional.empty();
            if (leaf.isPresent()) {
                ends.put(one.stream(), new LogRows.End(one.stream(), expected, one.hash()));
                leaves.add(leaf.get());
            } else {
                rows.setAside(one);
                incidents.found(
                        "not-sealed",
                        one.stream(),
                        "Place " + one.place() + " of " + one.stream() + " does not go on from place " + (expected - 1)
                                + ", which is the last that is sealed.",
                        clock.instant());
            }
        }
        return leaves;
    }

    /** Empty if it is no leaf, whatever was done to its row: it must not keep all others waiting. */
    private static Optional<Leaf> leaf(LogRows.Queued one, long place) {
        try {
            return Optional.of(new Leaf(one.stream(), place, Hash.ofHex(one.hash())));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static boolean goesOn(LogRows.Queued one, LogRows.@Nullable End end, long expected) {
        if (one.stream().equals(FILES)) {
            return one.place() == null;
        }
        String before = end == null ? "0".repeat(Hash.BYTES * 2) : end.hash();
        return Objects.equals(one.place(), expected) && before.equals(one.previous());
    }
}
