package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.anySymptom;
import static org.benchtrail.core.method.Sheets.temperature;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.identify.EvidenceFact;
import org.benchtrail.core.method.identify.IdentifyFact;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.junit.jupiter.api.Test;

/** A sheet rebuilt from its trail: in linear time, and the same as one that grew entry by entry. */
class ReplayTest {
    private static final int LONG = 8_000;

    private static List<Entry> trail(int entries) {
        List<Entry> trail = new ArrayList<>();
        trail.add(entry(1, opened()));
        for (int n = 2; n <= entries; n++) {
            trail.add(entry(n, fact(n)));
        }
        return trail;
    }

    /** Symptoms and readings; every tenth entry puts the one before right, every twentieth strikes it. */
    private static Fact fact(int n) {
        if (n % 20 == 0) {
            return new Corrected(n - 1, "a slip", null);
        }
        if (n % 10 == 0) {
            return new Corrected(n - 1, "a slip", temperature("70", "corrected " + n));
        }
        return n % 2 == 0 ? anySymptom(false) : temperature("71", "point " + n);
    }

    private static Opened opened() {
        return new Opened(
                "40718-6",
                "It shuts down",
                "",
                Category.HEAT,
                "Desk 4",
                "Hall",
                1,
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.HINDERED,
                "ines",
                Set.of(Role.TECHNICIAN));
    }

    private static Entry entry(int n, Fact fact) {
        return new Entry(
                new Stamp(n, Instant.parse("2031-03-03T08:00:00Z").plusSeconds(n), "ines", Set.of(Role.TECHNICIAN)),
                fact);
    }

    @Test
    void eightThousandEntries_areReplayedInATenthOfASecond() {
        List<Entry> trail = trail(LONG);
        JobSheet.replay(trail); // warm
        long best = Long.MAX_VALUE;
        for (int i = 0; i < 5; i++) {
            long start = System.nanoTime();
            JobSheet.replay(trail);
            best = Math.min(best, System.nanoTime() - start);
        }
        System.out.println("replay of " + LONG + " entries: " + best / 1_000 + " µs");
        assertTrue(best < Duration.ofMillis(100).toNanos(), "took " + best + " ns");
    }

    @Test
    void replay_isWhatGrewEntryByEntry() {
        List<Entry> trail = trail(200);
        JobSheet grown = JobSheet.open(trail.get(0));
        for (Entry entry : trail.subList(1, trail.size())) {
            grown = grown.with(entry);
        }
        assertEquals(JobSheet.replay(trail), grown);
        assertEquals(JobSheet.replay(trail).hashCode(), grown.hashCode());
    }

    @Test
    void aSheet_isNotChangedByOneThatGrewFromIt() {
        List<Entry> trail = trail(19);
        JobSheet before = JobSheet.replay(trail);
        int readings = before.all(ReadingRecorded.class).size();
        before.with(entry(20, new Corrected(19, "a slip", null)));
        assertEquals(readings, before.all(ReadingRecorded.class).size());
        assertEquals(19, before.entries());
    }

    @Test
    void kindsAndGroups_areFoundAsAScanFindsThem() {
        JobSheet sheet = JobSheet.replay(trail(500));
        for (Class<? extends Fact> kind : List.of(
                Fact.class,
                IdentifyFact.class,
                EvidenceFact.class,
                SymptomRecorded.class,
                ReadingRecorded.class,
                Corrected.class)) {
            List<? extends StandingFact<?>> scanned = sheet.facts().stream()
                    .filter(f -> kind.isInstance(f.fact()))
                    .toList();
            assertEquals(scanned, sheet.all(kind), kind.getSimpleName());
            assertEquals(scanned.get(scanned.size() - 1), sheet.latest(kind).orElseThrow());
            scanned.forEach(f -> assertEquals(f, sheet.at(f.entry(), kind, "entry")));
        }
        assertThrows(Invalid.class, () -> sheet.at(19, ReadingRecorded.class, "entry")); // struck by entry 20
        assertThrows(Invalid.class, () -> sheet.at(2, ReadingRecorded.class, "entry")); // a symptom
    }
}
