package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.benchtrail.core.integrity.Census;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Cosignature;
import org.benchtrail.core.integrity.Frontier;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.integrity.Hole;
import org.benchtrail.core.integrity.KeyHistory;
import org.benchtrail.core.integrity.Leaf;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.TreeReader;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.platform.LongWork;
import org.benchtrail.seal.StoredLeaves.StoredLeaf;
import org.benchtrail.seal.VerificationRows.Edge;
import org.benchtrail.seal.VerificationRows.Finding;
import org.benchtrail.seal.VerificationRows.Run;
import org.jspecify.annotations.Nullable;

/**
 * The part of a look at the whole site that is about the log itself: every leaf and what it seals, every hash over a tile, every head
 * with its signatures. Whatever stands in a row, the look goes on with the next.
 */
@ApplicationScoped
class LogLook {
    private static final int LEAVES = 10_000;
    private static final int SIGNATURES = 1_000;
    private static final int MOST_UNSIGNED = 100;

    private final LogRows rows;
    private final StoredLeaves stored;
    private final VerificationRows runs;
    private final LogKeys keys;
    private final TimesLook times;
    private final CensusRecord census;
    private final Clock clock;

    LogLook(
            LogRows rows,
            StoredLeaves stored,
            VerificationRows runs,
            LogKeys keys,
            TimesLook times,
            CensusRecord census,
            Clock clock) {
        this.rows = rows;
        this.stored = stored;
        this.runs = runs;
        this.keys = keys;
        this.times = times;
        this.census = census;
        this.clock = clock;
    }

    /** Some leaves one after the other, and what else the log holds of them. */
    private record Some(
            List<StoredLeaf> leaves, List<Long> lost, List<LogRows.Signed> heads, List<LogRows.NodeRow> nodes) {}

    /**
     * Walks through the log.
     *
     * @param found takes what was found, some at a time
     * @param progress is told how far it is
     * @return whether it came to its end
     */
    boolean look(Run run, Consumer<List<Finding>> found, LongWork progress) {
        List<Finding> all = new ArrayList<>();
        Walk walk = new Walk(known(all::add), all::add);
        TimesLook.Walk entered = times.begin(all::add);
        while (walk.frontier.size() < run.size()) {
            long from = walk.frontier.size();
            long to = Math.min(run.size(), from + LEAVES);
            Some some = alone(() -> new Some(
                    stored.between(from, to), rows.lost(from, to), rows.heads(from, to), rows.nodes(from, to)));
            if (some.leaves().isEmpty()) {
                walk.find(
                        "leaf",
                        "leaf " + from,
                        "It is missing, and all that follow: the log was cut or rewritten.",
                        from);
                break;
            }
            walk.lost = new HashSet<>(some.lost());
            walk.leaves(to, some.leaves(), some.heads());
            walk.nodes(some.nodes());
            entered.leaves(from, to);
            found.accept(List.copyOf(all));
            all.clear();
            progress.at(to, run.size(), "leaves");
            if (!alone(() -> runs.goOn(run.id(), to, clock.instant()))) {
                return false;
            }
        }
        walk.end();
        // what never was one, of no size or of more than there is, and those that were made since
        long seen = walk.frontier.size();
        alone(() -> rows.heads(Long.MIN_VALUE, 0)).forEach(head -> walk.head(head, null));
        alone(() -> rows.heads(seen, Long.MAX_VALUE)).forEach(head -> walk.head(head, null));
        edge(all::add);
        witnesses(all::add);
        found.accept(all);
        return true;
    }

    private static <T> T alone(Callable<T> work) {
        return QuarkusTransaction.requiringNew().call(work);
    }

    private KeyHistory known(Consumer<Finding> found) {
        try {
            KeyHistory known = alone(keys::known);
            known.strangers()
                    .forEach(
                            place -> found.accept(
                                    new Finding(
                                            "key",
                                            LogKeys.STREAM + " " + (place + 1),
                                            "It names a key for which no earlier key of this log signed: what that key signs is not of this log.")));
            return known;
        } catch (IllegalStateException e) {
            found.accept(
                    new Finding("record", LogKeys.STREAM, "The keys of this log cannot be read: " + e.getMessage()));
            return KeyHistory.of(List.of());
        }
    }

    /** One walk from the first leaf to the last. */
    private final class Walk {
        private final KeyHistory known;
        private final Consumer<Finding> found;
        private final Map<String, Long> places = new HashMap<>();
        private final Map<String, Hash> completed = new HashMap<>();
        private final Frontier frontier =
                new Frontier(0, List.of(), (level, n, hash) -> completed.put(name(level, n), hash));
        private final Map<String, List<Hole>> holes = alone(rows::holes);
        private final Map<String, Long> kinds = new TreeMap<>();
        private final Map<Long, List<Census>> days =
                alone(census::all).stream().collect(Collectors.groupingBy(Census::size));
        private final Map<String, Long> now = alone(census::rows);
        private Set<Long> lost = Set.of();
        private long lostOnes;
        private long unlikeRoots;
        private long unsigned;

        Walk(KeyHistory known, Consumer<Finding> found) {
            this.known = known;
            this.found = found;
        }

        private static String name(int level, long n) {
            return "seal_node " + level + " " + n;
        }

        private void find(String what, String place, String sentence) {
            found.accept(new Finding(what, place, sentence));
        }

        /** @param leaf that says otherwise */
        private void find(String what, String place, String sentence, long leaf) {
            found.accept(new Finding(what, place, sentence, leaf));
        }

        void leaves(long to, List<StoredLeaf> leaves, List<LogRows.Signed> heads) {
            Map<Long, LogRows.Signed> bySize =
                    heads.stream().collect(Collectors.toMap(LogRows.Signed::size, head -> head));
            Iterator<StoredLeaf> stored = leaves.iterator();
            StoredLeaf next = stored.next();
            boolean here = true;
            while (frontier.size() < to) {
                long index = frontier.size();
                boolean before = here;
                here = next.index() == index;
                if (!here && before) {
                    find("leaf", "leaf " + index, "It is missing: the log was cut or rewritten.", index);
                }
                if (here) {
                    kinds.merge(Census.kind(next.stream()), 1L, Long::sum);
                }
                frontier.add(here ? hashOf(index, next) : Hash.EMPTY_TREE);
                next = here && stored.hasNext() ? stored.next() : next;
                days.getOrDefault(frontier.size(), List.of()).forEach(this::day);
                LogRows.Signed head = bySize.get(frontier.size());
                if (head != null) {
                    head(head, frontier.root());
                }
            }
        }

        private void day(Census day) {
            day.faults(kinds, now).forEach(fault -> find("census", "census of " + day.day(), fault));
        }

        private Hash hashOf(long index, StoredLeaf stored) {
            Hash kept = Hash.of(stored.leafHash());
            try {
                Leaf leaf = stored.leaf();
                sealed(index, leaf, stored.canonical());
                if (!leaf.leafHash().equals(kept)) {
                    find("leaf", "leaf " + index, "Its hash is not that of what stands in its row.", index);
                }
                return leaf.leafHash();
            } catch (IllegalArgumentException e) {
                find("leaf", "leaf " + index, "What stands in its row is no leaf.", index);
                return kept;
            }
        }

        private void sealed(long index, Leaf leaf, byte[] canonical) {
            String place = leaf.stream() + " " + leaf.place();
            if (leaf.place() != places.merge(leaf.stream(), 1L, Long::sum)) {
                find("stream", place, "A place of this stream is missing or there twice.", index);
            }
            List<Hole> agreed = holes.getOrDefault(leaf.stream(), List.of());
            if (agreed.stream().anyMatch(hole -> hole.takes(leaf.place()))) {
                return;
            }
            if (canonical.length == 0 && lost.contains(index)) {
                lostOnes++;
            } else if (canonical.length == 0) {
                find("record", place, "What was sealed is gone, or another hash stands beside it.", index);
            } else if (!HashChain.isHash(leaf.hash(), canonical)) {
                find("record", place, "What is stored is not what was sealed.", index);
            }
        }

        /**
         * The signatures of a head, and that it is of this tree.
         *
         * @param root of the tree at its size; null where that is not known
         */
        void head(LogRows.Signed head, @Nullable Hash root) {
            String place = "head of " + head.size();
            try {
                SignedNote note = SignedNote.parse(head.note());
                Checkpoint checkpoint = Checkpoint.parse(note.text());
                if (note.signers(known.signing(checkpoint.size())).size()
                                != note.lines().size()
                        || checkpoint.size() != head.size()
                        || !checkpoint.origin().equals(known.origin())) {
                    unsigned(place, "What stands in its row is not what this log signed at that size.");
                } else if (root != null && !checkpoint.root().equals(root) && unlikeRoots++ == 0) {
                    find("root", place, "The leaves below it are not those that were signed.", head.size() - 1);
                }
            } catch (IllegalArgumentException e) {
                unsigned(place, "It is not signed by a key of this log.");
            }
        }

        /** Where the record of the key was altered none is: the first ones say enough. */
        private void unsigned(String place, String sentence) {
            if (unsigned++ < MOST_UNSIGNED) {
                find("signature", place, sentence);
            }
        }

        void nodes(List<LogRows.NodeRow> nodes) {
            for (LogRows.NodeRow node : nodes) {
                Hash hash = completed.remove(name(node.level(), node.n()));
                if (hash != null && !Arrays.equals(hash.bytes(), node.hash())) {
                    find("node", name(node.level(), node.n()), "It is not the hash over the leaves below it.");
                }
            }
        }

        void end() {
            new ArrayList<>(completed.keySet())
                    .stream().sorted().forEach(node -> find("node", node, "The hash over its tile is missing."));
            if (lostOnes > 0) {
                find(
                        "record",
                        "lost records",
                        lostOnes + " records were lost when an old backup was restored; their leaves hold.");
            }
            if (unlikeRoots > 1) {
                find("root", "further heads", unlikeRoots - 1 + " more heads are of other leaves.");
            }
        }
    }

    private void edge(Consumer<Finding> found) {
        Edge edge = alone(runs::edge);
        if (edge.size() != edge.leaves() || !edgeRoot(edge)) {
            found.accept(
                    new Finding("leaf", "seal_head", "The edge of the tree is not that of the leaves that are there."));
        }
        if (edge.beyond() > 0) {
            found.accept(new Finding("node", "seal_node", "There are hashes over tiles that the log does not have."));
        }
    }

    private boolean edgeRoot(Edge edge) {
        try {
            List<Hash> subtrees = LogRows.hashes(edge.frontier());
            Hash root = new Frontier(edge.size(), subtrees, (level, n, hash) -> {}).root();
            return root.equals(alone(() -> new TreeReader(edge.size(), rows).root()));
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    private void witnesses(Consumer<Finding> found) {
        long after = 0;
        List<VerificationRows.Signed> some;
        do {
            long from = after;
            some = alone(() -> runs.cosignatures(from, SIGNATURES));
            for (VerificationRows.Signed one : some) {
                if (!holds(one)) {
                    found.accept(new Finding(
                            "signature",
                            "cosignature " + one.size() + " " + one.key(),
                            "It is not what that witness signed of that head, or not when."));
                }
                after = one.size();
            }
        } while (some.size() == SIGNATURES);
    }

    private static boolean holds(VerificationRows.Signed one) {
        try {
            VerifierKey key = VerifierKey.parse(one.key());
            SignedNote.Line line = SignedNote.Line.parse(one.line());
            return key.isOf(line)
                    && key.verifies(SignedNote.parse(one.note()).text(), line)
                    && Instant.ofEpochSecond(Cosignature.time(line)).equals(one.at());
        } catch (IllegalArgumentException e) {
            return false;
        }
    }
}
