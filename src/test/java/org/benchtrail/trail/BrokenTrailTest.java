package org.benchtrail.trail;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.benchtrail.BesideOthers;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.integrity.Hole;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.junit.jupiter.api.Test;

/** Whatever was cut or altered: what is lost is told rightly, its own bytes bring it back exactly, and no others do. */
@BesideOthers
class BrokenTrailTest {
    private static final long SEED = 20_261_128;
    private static final int LENGTH = 9;
    private static final int ROUNDS = 400;

    private static List<TrailEntry> chain(String words) {
        List<Fact> facts = new ArrayList<>(List.of(Samples.OPENED));
        for (int i = 2; i <= LENGTH; i++) {
            facts.add(new FindingRecorded(words + " " + i, false));
        }
        return Chains.of(facts);
    }

    private static byte[] file(List<TrailEntry> entries) {
        return entries.stream()
                .map(entry -> new String(entry.canonical(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("\n"))
                .getBytes(StandardCharsets.UTF_8);
    }

    private static Map<Integer, String> leaves(List<TrailEntry> chain, int sealed) {
        Map<Integer, String> leaves = new HashMap<>();
        chain.subList(0, sealed).forEach(entry -> leaves.put(entry.entry(), entry.hash()));
        return leaves;
    }

    private static BrokenTrail repair(List<TrailEntry> trail, List<TrailEntry> chain, int sealed) {
        return new BrokenTrail(Chains.TICKET, stored(trail, chain, sealed), leaves(chain, sealed), null);
    }

    private static StoredTrail stored(List<TrailEntry> trail, List<TrailEntry> chain, int sealed) {
        StoredTrail.SealedEnd end = sealed == 0
                ? null
                : new StoredTrail.SealedEnd(sealed, chain.get(sealed - 1).hash());
        return new StoredTrail(trail, LENGTH, chain.get(LENGTH - 1).hash(), end);
    }

    private static TrailEntry altered(TrailEntry entry, SplittableRandom random) {
        byte[] bytes = new String(entry.canonical(), StandardCharsets.UTF_8)
                .replace("Seen", "Unseen")
                .replace("\"title\":\"", "\"title\":\"Another ")
                .getBytes(StandardCharsets.UTF_8);
        return switch (random.nextInt(3)) {
            case 0 ->
                new TrailEntry(
                        entry.entry(), entry.at(), entry.actor(), entry.kind(), bytes, entry.hash(), entry.words());
            case 1 ->
                new TrailEntry(
                        entry.entry(),
                        entry.at(),
                        entry.actor(),
                        entry.kind(),
                        bytes,
                        HashChain.hash(bytes),
                        entry.words());
            default ->
                new TrailEntry(
                        entry.entry(),
                        entry.at(),
                        "nobody",
                        entry.kind(),
                        entry.canonical(),
                        entry.hash(),
                        entry.words());
        };
    }

    @Test
    void anythingLost_isToldFromItsFirst_andComesBackByteByByte() throws BrokenTrail.Lacking {
        List<TrailEntry> chain = chain("Seen");
        List<TrailEntry> others = chain("Elsewhere");
        SplittableRandom random = new SplittableRandom(SEED);
        for (int round = 0; round < ROUNDS; round++) {
            List<TrailEntry> trail = new ArrayList<>();
            int first = LENGTH + 1;
            // the first entry is the same in both chains
            boolean bytes = false;
            for (TrailEntry entry : chain) {
                int what = random.nextInt(4);
                TrailEntry now = what == 0 ? altered(entry, random) : entry;
                boolean lost = what == 1 || !now.isAlike(entry) || now.canonical() != entry.canonical();
                first = lost ? Math.min(first, entry.entry()) : first;
                bytes |= entry.entry() > 1 && (what == 1 || now.canonical() != entry.canonical());
                if (what != 1) {
                    trail.add(now);
                }
            }
            // unsealed, only the row and the entries after it tell what an entry was
            int sealed = random.nextBoolean() ? LENGTH : random.nextInt(LENGTH);
            BrokenTrail repair = repair(trail, chain, sealed);
            String seed = "seed " + SEED + ", round " + round;
            if (sealed == LENGTH) {
                assertEquals(first, repair.first(), seed);
            }
            assertEquals(new BrokenTrail.End(LENGTH, chain.get(LENGTH - 1).hash()), repair.end(), seed);
            BrokenTrail.Whole whole = repair.putBack(file(chain));
            assertEquals(hashes(chain), hashes(whole.entries()), seed);
            if (bytes) {
                assertThrows(BrokenTrail.Lacking.class, () -> repair.putBack(file(others)), seed);
            }
        }
    }

    private static List<String> hashes(List<TrailEntry> trail) {
        return trail.stream().map(TrailEntry::hash).toList();
    }

    /** A row that names more than was ever written, with a tail forged onto what is sealed, contradicts no leaf; one below them does. */
    @Test
    void tailThatIsForgedBelowALeaf_fitsNowhere() {
        List<TrailEntry> chain = chain("Seen");
        List<TrailEntry> forged = chain("Elsewhere");
        StoredTrail row = new StoredTrail(
                chain.subList(0, 3),
                LENGTH,
                forged.get(LENGTH - 1).hash(),
                new StoredTrail.SealedEnd(6, chain.get(5).hash()));
        BrokenTrail repair = new BrokenTrail(Chains.TICKET, row, leaves(chain, 6), null);
        String why = assertThrows(BrokenTrail.Lacking.class, () -> repair.putBack(file(forged)))
                .getMessage();
        assertTrue(why.startsWith("Entry 6 is neither"), why);
    }

    /** The incident, the leaf and the row each may be the furthest. */
    @Test
    void theFurthestOfRow_leafAndIncident_isTheEnd() {
        List<TrailEntry> chain = chain("Seen");
        StoredTrail cut = new StoredTrail(
                chain.subList(0, 3),
                3,
                chain.get(2).hash(),
                new StoredTrail.SealedEnd(5, chain.get(4).hash()));
        assertEquals(
                5,
                new BrokenTrail(Chains.TICKET, cut, leaves(chain, 5), null)
                        .end()
                        .place());
        BrokenTrail.End found = new BrokenTrail.End(7, chain.get(6).hash());
        assertEquals(found, new BrokenTrail(Chains.TICKET, cut, leaves(chain, 5), found).end());
        StoredTrail row = new StoredTrail(chain.subList(0, 3), 8, chain.get(7).hash(), cut.sealed());
        assertEquals(
                8,
                new BrokenTrail(Chains.TICKET, row, leaves(chain, 5), found)
                        .end()
                        .place());
        StoredTrail longer = new StoredTrail(chain, 5, chain.get(4).hash(), cut.sealed());
        assertTrue(new BrokenTrail(Chains.TICKET, longer, leaves(chain, 5), null).isLonger());
        assertFalse(repair(chain, chain, LENGTH).isLonger());
    }

    /** A trail that went on after a hole is broken again behind it. */
    @Test
    void secondBreak_leavesTheHoleAsItIs() throws BrokenTrail.Lacking {
        List<TrailEntry> chain = chain("Seen");
        Hole hole = new Hole(4, 6, chain.get(5).hash(), 9);
        List<TrailEntry> trail = new ArrayList<>(chain.subList(0, 3));
        trail.addAll(chain.subList(6, 8));
        StoredTrail stored = new StoredTrail(
                trail,
                LENGTH,
                chain.get(LENGTH - 1).hash(),
                new StoredTrail.SealedEnd(3, chain.get(2).hash()),
                List.of(hole),
                Set.of(),
                null);
        BrokenTrail repair = new BrokenTrail(Chains.TICKET, stored, leaves(chain, 3), null);
        assertEquals(LENGTH, repair.first());
        assertEquals(
                List.of(1, 2, 3, 7, 8, 9),
                repair.putBack(file(chain)).entries().stream()
                        .map(TrailEntry::entry)
                        .toList());
        assertEquals(1, repair.putBack(file(chain)).written().size());
    }
}
