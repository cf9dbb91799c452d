package org.benchtrail.trail;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.benchtrail.BesideOthers;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Any single change of a trail is found, and the first entry that does not hold is named. */
@BesideOthers
class VerificationTest {
    private static final int LENGTH = 12;

    static IntStream entries() {
        return IntStream.rangeClosed(1, LENGTH);
    }

    private static List<Fact> facts(int length) {
        List<Fact> facts = new ArrayList<>(List.of(Samples.OPENED));
        for (int i = 2; i <= length; i++) {
            facts.add(new FindingRecorded("Finding " + i, false));
        }
        return facts;
    }

    private static List<TrailEntry> chain() {
        return new ArrayList<>(Chains.of(facts(LENGTH)));
    }

    private static Verification verify(List<TrailEntry> trail) {
        return verify(trail, LENGTH);
    }

    /** Against a row that names so many entries, and the end of the untouched chain. */
    private static Verification verify(List<TrailEntry> trail, int expected) {
        return new StoredTrail(trail, expected, chain().get(LENGTH - 1).hash(), null).verify(Chains.TICKET);
    }

    private static void assertBrokenAt(int entry, List<TrailEntry> trail) {
        List<Entry> holding = new ArrayList<>();
        Verification found = new StoredTrail(
                        trail, LENGTH, chain().get(LENGTH - 1).hash(), null)
                .verify(Chains.TICKET, holding::add);
        int before = Math.min(entry - 1, trail.size());
        // a last entry that is written anew whole holds in itself; only the row tells
        assertTrue(holding.size() == before || (entry == LENGTH && holding.size() == LENGTH), "" + holding.size());
        assertFalse(found.holds(), found::sentence);
        assertEquals(entry, found.brokenAt(), found::sentence);
        assertEquals(trail.size(), found.entries());
    }

    private static List<TrailEntry> with(int entry, TrailEntry other) {
        List<TrailEntry> trail = chain();
        trail.set(entry - 1, other);
        return trail;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 100})
    void untouchedTrail_holds(int length) {
        List<TrailEntry> trail = Chains.of(facts(length));
        String last = trail.get(length - 1).hash();
        Verification found = new StoredTrail(trail, length, last, null).verify(Chains.TICKET);
        assertEquals(new Verification(length, true, null, "All " + length + " entries hold."), found);
        assertNull(found.brokenAt());
    }

    @ParameterizedTest
    @MethodSource("entries")
    void everyFlippedByte_isFound(int entry) {
        byte[] content = chain().get(entry - 1).canonical();
        SplittableRandom random = new SplittableRandom(entry);
        for (int place = 0; place < content.length; place++) {
            byte[] other = content.clone();
            other[place] ^= (byte) (1 << random.nextInt(8));
            TrailEntry old = chain().get(entry - 1);
            assertBrokenAt(
                    entry,
                    with(
                            entry,
                            new TrailEntry(
                                    old.entry(), old.at(), old.actor(), old.kind(), other, old.hash(), old.words())));
        }
    }

    @ParameterizedTest
    @MethodSource("entries")
    void bytesAddedOrCut_areFound(int entry) {
        TrailEntry old = chain().get(entry - 1);
        String content = new String(old.canonical(), StandardCharsets.UTF_8);
        for (String other : List.of(content + " ", " " + content, content.substring(1), "")) {
            byte[] bytes = other.getBytes(StandardCharsets.UTF_8);
            assertBrokenAt(
                    entry,
                    with(
                            entry,
                            new TrailEntry(
                                    old.entry(), old.at(), old.actor(), old.kind(), bytes, old.hash(), old.words())));
        }
    }

    @ParameterizedTest
    @MethodSource("entries")
    void alteredHash_isFound(int entry) {
        TrailEntry old = chain().get(entry - 1);
        for (int place = 0; place < old.hash().length(); place++) {
            char digit = old.hash().charAt(place) == '0' ? '1' : '0';
            String other = old.hash().substring(0, place) + digit + old.hash().substring(place + 1);
            assertBrokenAt(
                    entry,
                    with(
                            entry,
                            new TrailEntry(
                                    old.entry(),
                                    old.at(),
                                    old.actor(),
                                    old.kind(),
                                    old.canonical(),
                                    other,
                                    old.words())));
        }
    }

    @ParameterizedTest
    @MethodSource("entries")
    void alteredColumn_isFound(int entry) {
        TrailEntry old = chain().get(entry - 1);
        byte[] bytes = old.canonical();
        assertBrokenAt(
                entry,
                with(entry, new TrailEntry(99, old.at(), old.actor(), old.kind(), bytes, old.hash(), old.words())));
        assertBrokenAt(
                entry,
                with(
                        entry,
                        new TrailEntry(
                                entry,
                                old.at().plusNanos(1000),
                                old.actor(),
                                old.kind(),
                                bytes,
                                old.hash(),
                                old.words())));
        assertBrokenAt(
                entry, with(entry, new TrailEntry(entry, old.at(), "ole", old.kind(), bytes, old.hash(), old.words())));
        assertBrokenAt(
                entry,
                with(entry, new TrailEntry(entry, old.at(), old.actor(), "waived", bytes, old.hash(), old.words())));
    }

    @Test
    void anyTwoSwapped_areFound() {
        for (int first = 1; first <= LENGTH; first++) {
            for (int second = first + 1; second <= LENGTH; second++) {
                List<TrailEntry> trail = chain();
                TrailEntry kept = trail.get(first - 1);
                trail.set(first - 1, trail.get(second - 1));
                trail.set(second - 1, kept);
                assertBrokenAt(first, trail);
            }
        }
    }

    /** Also when the numbers beside the content are made to fit. */
    @Test
    void anyTwoSwappedAndRenumbered_areFound() {
        for (int first = 1; first < LENGTH; first++) {
            List<TrailEntry> trail = chain();
            TrailEntry kept = trail.get(first - 1);
            trail.set(first - 1, numbered(trail.get(first), first));
            trail.set(first, numbered(kept, first + 1));
            assertBrokenAt(first, trail);
        }
    }

    private static TrailEntry numbered(TrailEntry e, int entry) {
        return new TrailEntry(entry, e.at(), e.actor(), e.kind(), e.canonical(), e.hash(), e.words());
    }

    @ParameterizedTest
    @MethodSource("entries")
    void droppedEntry_isFound(int entry) {
        List<TrailEntry> trail = chain();
        trail.remove(entry - 1);
        assertBrokenAt(entry, trail);
    }

    @ParameterizedTest
    @MethodSource("entries")
    void droppedEntryWithTheRestRenumbered_isFound(int entry) {
        List<TrailEntry> trail = chain();
        trail.remove(entry - 1);
        for (int i = entry; i < LENGTH; i++) {
            trail.set(i - 1, numbered(trail.get(i - 1), i));
        }
        assertBrokenAt(entry, trail);
    }

    @ParameterizedTest
    @MethodSource("entries")
    void cutTail_isFound(int entry) {
        assertBrokenAt(entry, chain().subList(0, entry - 1));
    }

    @ParameterizedTest
    @MethodSource("entries")
    void doubledEntry_isFound(int entry) {
        List<TrailEntry> trail = chain();
        trail.add(entry, trail.get(entry - 1));
        assertBrokenAt(entry + 1, trail);
    }

    /** The hash of the entry itself made to fit, as somebody would who knows how it is made: the next one gives it away. */
    @ParameterizedTest
    @MethodSource("entries")
    void rewrittenEntry_isFoundByTheNextOne(int entry) {
        List<TrailEntry> trail = chain();
        TrailEntry old = trail.get(entry - 1);
        Fact other = entry == 1 ? Samples.all().get(1) : new FindingRecorded("Nothing", false);
        TrailEntry forged =
                EntryCodec.encode(Chains.TICKET.toString(), new Entry(Chains.stamp(entry), other), old.previous());
        assertNotEquals(old.hash(), forged.hash());
        trail.set(entry - 1, forged);
        if (entry < LENGTH) {
            assertBrokenAt(entry + 1, trail);
        } else {
            // nothing follows it, but the row names the hash of what was there
            assertBrokenAt(LENGTH, trail);
            assertEquals(
                    "The ticket's row names another last entry than the trail has.",
                    verify(trail).sentence());
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, LENGTH})
    void entryOlderThanTheOneBefore_isFound(int entry) {
        List<TrailEntry> trail = new ArrayList<>(chain().subList(0, entry - 1));
        String previous = trail.get(entry - 2).hash();
        for (int i = entry; i <= LENGTH; i++) {
            Instant at = i == entry
                    ? Chains.stamp(i - 1).at().minusNanos(1000)
                    : Chains.stamp(i).at();
            Entry next = new Entry(new Stamp(i, at, "ines", Set.of(Role.TECHNICIAN)), new FindingRecorded("x", false));
            trail.add(EntryCodec.encode(Chains.TICKET.toString(), next, previous));
            previous = trail.get(i - 1).hash();
        }
        assertBrokenAt(entry, trail);
    }

    @Test
    void entriesOfOneMoment_hold() {
        List<TrailEntry> trail = new ArrayList<>();
        String previous = HashChain.START;
        for (int i = 1; i <= LENGTH; i++) {
            Fact fact = i == 1 ? Samples.OPENED : new FindingRecorded("x", false);
            Entry next = new Entry(new Stamp(i, Chains.START, "ines", Set.of(Role.TECHNICIAN)), fact);
            trail.add(EntryCodec.encode(Chains.TICKET.toString(), next, previous));
            previous = trail.get(i - 1).hash();
        }
        assertTrue(new StoredTrail(trail, LENGTH, previous, null)
                .verify(Chains.TICKET)
                .holds());
    }

    @Test
    void trailOfAnotherTicket_isFound() {
        Verification found =
                new StoredTrail(chain(), LENGTH, chain().get(LENGTH - 1).hash(), null).verify(new TicketNumber(40719));
        assertEquals(1, found.brokenAt());
    }

    @ParameterizedTest
    @ValueSource(strings = {"{}", "{\"format\":1}", "null", "not json", "{\"format\":2}"})
    void contentThatIsNoEntry_isFoundAndNotThrown(String content) {
        byte[] bytes = content.getBytes(StandardCharsets.UTF_8);
        TrailEntry old = chain().get(4);
        assertBrokenAt(
                5,
                with(
                        5,
                        new TrailEntry(
                                5, old.at(), old.actor(), old.kind(), bytes, HashChain.hash(bytes), old.words())));
    }

    @Test
    void moreEntriesThanTheTicketHas_areFound() {
        Verification found = verify(chain(), LENGTH - 1);
        assertEquals(LENGTH, found.brokenAt());
        assertEquals("The ticket has 11 entries, but 12 are there.", found.sentence());
    }
}
