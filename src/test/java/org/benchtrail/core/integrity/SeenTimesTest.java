package org.benchtrail.core.integrity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.benchtrail.core.integrity.SeenTimes.Head;
import org.benchtrail.core.integrity.SeenTimes.Span;
import org.junit.jupiter.api.Test;

/** Honest runs of a log, of which none is called late; and times that no honest run gives. */
class SeenTimesTest {
    private static final Instant NINE = Instant.parse("2026-03-02T09:00:00Z");

    private static Instant at(int minutes) {
        return NINE.plus(Duration.ofMinutes(minutes));
    }

    /** Signed and seen at once. */
    private static Head head(long size, int minutes) {
        return new Head(size, at(minutes), at(minutes));
    }

    private static String fault(List<Head> heads, long leaf, Instant at) {
        List<Span> spans = new SeenTimes(heads).between(leaf, leaf + 1);
        assertEquals(1, spans.size());
        return spans.get(0).fault(at);
    }

    @Test
    void withoutWitness_nothingCanBeTold() {
        SeenTimes none = new SeenTimes(List.of());
        assertFalse(none.known());
        assertEquals(List.of(new Span(0, 10, null, null)), none.between(0, 10));
        assertEquals("", fault(List.of(), 3, Instant.EPOCH));
        assertEquals("", fault(List.of(), 3, NINE.plus(Duration.ofDays(9000))));
    }

    @Test
    void aSpanEndsWithTheHead_thatHoldsItsLeaves() {
        SeenTimes times = new SeenTimes(List.of(head(10, 0), head(20, 10)));
        assertTrue(times.known());
        assertEquals(
                List.of(new Span(5, 10, null, at(0)), new Span(10, 20, at(0), at(10)), new Span(20, 25, at(10), null)),
                times.between(5, 25));
        assertEquals(List.of(new Span(10, 12, at(0), at(10))), times.between(10, 12));
    }

    /** What was there before the log began was all sealed in its first head. */
    @Test
    void whatWasThereBeforeTheLog_isNotLate() {
        assertEquals("", fault(List.of(head(5000, 0), head(5001, 9)), 0, at(-400_000)));
    }

    /** The sealing, the network or the witness was away for a day; work went on, and all of it is in the next head. */
    @Test
    void aDayWithoutSealingOrWitness_makesNothingLate() {
        List<Head> heads = List.of(head(10, 0), head(500, 1440));
        for (int minute = 0; minute <= 1440; minute++) {
            assertEquals("", fault(heads, 10, at(minute)));
            assertEquals("", fault(heads, 499, at(minute)));
        }
    }

    /** A head is carried to a witness by hand, or a new witness is shown an old one: the log has grown meanwhile. */
    @Test
    void aHeadThatIsSeenLongAfterItWasSigned_makesNothingLate() {
        List<Head> heads = List.of(new Head(10, at(0), at(2880)), head(500, 4000));
        for (int minute = 0; minute <= 4000; minute += 7) {
            assertEquals("", fault(heads, 10, at(minute)));
        }
        assertEquals(List.of(), new SeenTimes(heads).setBack());
    }

    /** A witness signs an old head after a newer one: nothing is later for it. */
    @Test
    void aWitnessThatIsAsked_lastOfTheOldHead_changesNothing() {
        List<Head> heads = List.of(new Head(10, at(0), at(100)), head(20, 5), head(30, 10));
        assertEquals("", fault(heads, 12, at(3)));
        assertTrue(fault(heads, 5, at(11)).startsWith("It bears the time "), "it was in the head that was seen at 5");
    }

    /** Two servers whose clocks are a little apart. */
    @Test
    void clocksThatAreALittleApart_makeNothingLate() {
        List<Head> heads = List.of(head(10, 0), new Head(20, at(-4), at(1)), head(30, 2));
        assertEquals("", fault(heads, 12, at(-5)));
        assertEquals("", fault(heads, 12, at(6)));
        assertEquals(List.of(), new SeenTimes(heads).setBack());
    }

    @Test
    void anEntryWithAnOldTime_isSaidToBeEnteredLate() {
        List<Head> heads = List.of(head(10, 0), head(20, 60), head(21, 61));
        assertEquals(
                "Entered late: it bears the time 2026-03-02T09:54:59.999999999Z, and at 2026-03-02T10:00:00Z the log was"
                        + " without it, as a witness saw.",
                fault(heads, 20, at(55).minusNanos(1)));
        assertEquals("", fault(heads, 20, at(55)));
    }

    @Test
    void anEntryWithATimeThatIsStillToCome_isNamed() {
        List<Head> heads = List.of(head(10, 0), head(20, 60));
        assertEquals("", fault(heads, 19, at(65)));
        assertEquals(
                "It bears the time 2026-03-02T10:05:00.000000001Z, but a witness saw it in the log at"
                        + " 2026-03-02T10:00:00Z already: a clock was ahead, or the time is not true.",
                fault(heads, 19, at(65).plusNanos(1)));
    }

    /** Whoever sets the server's clock back writes old times, and signs heads at old times. */
    @Test
    void aClockThatWasSetBack_isSeenByTheHeads_andByTheEntries() {
        List<Head> heads =
                List.of(head(10, 0), head(20, 60), new Head(21, at(-600), at(61)), new Head(22, at(-599), at(62)));
        assertEquals(heads.subList(2, 4), new SeenTimes(heads).setBack());
        assertTrue(fault(heads, 20, at(-600)).startsWith("Entered late: "));
        assertTrue(fault(heads, 21, at(-599)).startsWith("Entered late: "));
    }

    /** The server's own word about one head gives its owner no more than the time between two heads. */
    @Test
    void anOlderTimeOfSigning_opensNoGap() {
        List<Head> heads = List.of(head(10, 0), head(20, 60), new Head(21, at(10), at(61)));
        assertEquals(heads.subList(2, 3), new SeenTimes(heads).setBack());
        assertTrue(fault(heads, 21, at(10)).startsWith("Entered late: "));
    }
}
