package org.benchtrail.core.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.Published;
import org.benchtrail.core.audit.Mending.Wanted;
import org.junit.jupiter.api.Test;

/** What of papers counts as mended, at and about each bound. */
class MendingTest {
    private static final Instant NOW = Instant.parse("2026-11-27T12:00:00Z");
    private static final Instant DUE = NOW.minusSeconds(100);

    private static Mending of(Wanted... all) {
        return Mending.of(List.of(all), NOW);
    }

    @Test
    void onlyWhatIsDue_counts() {
        Wanted quick = new Wanted(NOW.plusNanos(1000), NOW.minusSeconds(9), true);
        assertEquals(new Mending(1, 0, 0, 0), of(quick), "not due yet, though it is mended already");
        assertEquals(new Mending(1, 1, 0, 0), of(new Wanted(NOW, null, false)), "due at this moment");
        assertEquals(new Mending(2, 1, 1, 1), of(quick, new Wanted(DUE, DUE, true)));
    }

    @Test
    void whatIsWritten_isMended_onceItIsCountersigned() {
        assertEquals(new Mending(1, 1, 1, 0), of(new Wanted(DUE, DUE, false)), "written in time by the last moment");
        assertEquals(new Mending(1, 1, 0, 1), of(new Wanted(DUE, DUE.plusNanos(1000), true)), "late, and mended");
        assertEquals(
                new Mending(1, 1, 0, 0), of(new Wanted(DUE, null, true)), "nothing is countersigned that is not there");
    }

    /** 9 of 30: 0.166647 to 0.478758, recomputed in the design of the audit. */
    @Test
    void aShare_isShownFromThirty() {
        List<Wanted> all = new ArrayList<>(Collections.nCopies(20, new Wanted(DUE, null, false)));
        all.addAll(Collections.nCopies(9, new Wanted(DUE, DUE, true)));
        assertEquals(Optional.empty(), Mending.of(all, NOW).rate(), "29");
        all.add(new Wanted(NOW.plusSeconds(1), NOW, true));
        assertEquals(Optional.empty(), Mending.of(all, NOW).rate(), "the thirtieth is not due");
        all.add(new Wanted(DUE, null, false));
        Mending enough = Mending.of(all, NOW);
        String source = "Wilson's score interval of 9 in 30, recomputed with exact fractions";
        Published.check(source, 0.166647, enough.rate().orElseThrow().lower(), 5e-7);
        Published.check(source, 0.478758, enough.rate().orElseThrow().upper(), 5e-7);
    }
}
