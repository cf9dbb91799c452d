package org.benchtrail.core.integrity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** What a day's count says of what there is now. */
class CensusTest {
    private static final Census DAY = new Census(
            LocalDate.of(2026, 3, 29),
            12,
            new TreeMap<>(Map.of("ticket", 9L, "keys", 1L, "audit", 2L)),
            new TreeMap<>(Map.of("tickets", 3L, "files", 0L)));

    @Test
    void streamsOfTicketsAreOneKind_andThoseOfTheSiteTheirOwn() {
        assertEquals("ticket", Census.kind("ticket/40718-6"));
        assertEquals("audit", Census.kind("audit/2026-03"));
        assertEquals("keys", Census.kind("keys"));
    }

    @Test
    void asManyOrMore_isNoFault() {
        assertEquals(List.of(), DAY.faults(DAY.leaves(), DAY.rows()));
        assertEquals(List.of(), DAY.faults(DAY.leaves(), Map.of("tickets", 4L, "files", 7L, "requesters", 1L)));
    }

    @Test
    void fewerRows_areNamedWithBothCounts() {
        assertEquals(
                List.of("On that day there were 3 tickets, and now there are 2."),
                DAY.faults(DAY.leaves(), Map.of("tickets", 2L, "files", 0L)));
        assertEquals(
                List.of("On that day there were 3 tickets, and now there are 0."),
                DAY.faults(DAY.leaves(), Map.of()),
                "what is not counted any more is gone");
    }

    /** As many leaves, but of other streams: only the kinds tell. */
    @Test
    void leavesOfOtherKinds_areNamed() {
        assertEquals(
                List.of(
                        "On that day the first 12 leaves were 2 audit, 1 keys, 9 ticket; now they are 2 audit, 2 keys, 8 ticket."),
                DAY.faults(Map.of("ticket", 8L, "keys", 2L, "audit", 2L), DAY.rows()));
    }
}
