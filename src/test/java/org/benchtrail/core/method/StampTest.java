package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Refused;
import org.junit.jupiter.api.Test;

/** What an entry says of how it was made. */
class StampTest {
    private static final Instant AT = Instant.parse("2031-03-03T08:00:00Z");

    private static Stamp stamp(int entry, Origin origin) {
        return new Stamp(entry, AT, "ines", Set.of(Role.TECHNICIAN), origin);
    }

    @Test
    void entriesOfOneRequest_areToldFromOthers_whateverTheirMoment() {
        Origin one = new Origin(Channel.API, "one", "p", null);
        assertTrue(stamp(1, one).sameRequest(stamp(2, one)));
        assertTrue(stamp(1, one).sameRequest(stamp(2, one.ofServerFor("ines"))));
        assertFalse(stamp(1, one).sameRequest(stamp(2, new Origin(Channel.API, "two", "p", null))));
    }

    @Test
    void entryOfFormat1_isARequestOfItsOwn_evenAtTheSameMoment() {
        Stamp first = new Stamp(1, AT, "ines", Set.of());
        Stamp second = new Stamp(2, AT, "ines", Set.of());
        assertFalse(first.sameRequest(second));
        assertTrue(first.sameRequest(first));
        assertNull(first.channel());
        assertEquals("ines", first.person());
    }

    @Test
    void serverSpeaks_onBehalfOfWhoeverActed() {
        Origin page = new Origin(Channel.PAGE, "one", "p", null);
        Stamp said = new Stamp(3, AT, Stamp.SERVER, Set.of(), page.ofServerFor("ines"));
        assertEquals("ines", said.person());
        assertEquals(Channel.SERVER, said.channel());
        assertThrows(IllegalArgumentException.class, () -> new Origin(Channel.PAGE, "one", "p", "ines"));
        assertThrows(IllegalArgumentException.class, () -> new Origin(Channel.PAGE, "", "p", null));
        assertThrows(IllegalArgumentException.class, () -> new Origin(Channel.PAGE, "one", "", null));
    }

    @Test
    void desk_givesEachActARequest_andWhatIsDoneTogetherOne() {
        TicketFixture desk = plain();
        desk.as(INES).records(anySymptom(false));
        desk.together(() -> {
            desk.as(INES).records(anySymptom(false));
            desk.as(INES).isRefused(new Advanced());
        });
        List<Stamp> last = desk.trail().stream()
                .skip(desk.trail().size() - 3)
                .map(Entry::stamp)
                .toList();
        assertFalse(last.get(0).sameRequest(last.get(1)));
        assertTrue(last.get(1).sameRequest(last.get(2)));
        assertEquals("ines", last.get(2).by(), "whoever tried");
        assertTrue(desk.sheet().latest(Refused.class).orElseThrow().stamp().sameRequest(last.get(1)));
    }

    /** A clock that is behind: the same moment in two requests. */
    @Test
    void time_isBorrowed_byAnotherRequestOfTheSameMoment() {
        Stamp before = new Stamp(1, AT, "ines", Set.of(), new Origin(Channel.PAGE, "one", "p", null));
        Origin two = new Origin(Channel.PAGE, "two", "p", null);
        assertTrue(new Stamp(2, AT, "ines", Set.of(), two).borrowsTime(before));
        assertFalse(new Stamp(2, AT.plusNanos(1_000), "ines", Set.of(), two).borrowsTime(before));
        assertFalse(new Stamp(2, AT, "ines", Set.of(), before.origin()).borrowsTime(before), "sent together");
        assertFalse(new Stamp(2, AT, "ines", Set.of()).borrowsTime(before), "not known of the first format");
    }
}
