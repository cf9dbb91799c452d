package org.benchtrail.training;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.judging.Soak;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.junit.jupiter.api.Test;

class SoaksTest {
    private final List<Entry> entries = new ArrayList<>();

    private void add(Fact fact) {
        entries.add(new Entry(
                new Stamp(entries.size() + 1, Instant.parse("2026-03-02T08:00:00Z"), "kim", Set.of(Role.TRAINEE)),
                fact));
    }

    private static Fact attached(String calculation, int version, String input) {
        return new BenchResultAttached(calculation, version, "x", input, Result.Level.NONE, "x", "y", List.of());
    }

    @Test
    void whatASoakTimeWasMadeFrom_isReadAsTheBenchReadsIt() {
        add(new Opened(
                "40718-6",
                "dark",
                "it is dark",
                Category.HEAT,
                "till",
                "hall",
                0,
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.HINDERED,
                "kim",
                Set.of(Role.TRAINEE)));
        int now = Soak.CALCULATION.version();
        add(attached("soak", now, "{\"every\":6,\"doubt\":5,\"clean\":null}"));
        add(attached("soak", now - 1, "{\"every\":6,\"doubt\":5,\"clean\":null}"));
        add(attached("soak", now, "{\"every\":-6,\"doubt\":5}"));
        add(attached("warm-up", 1, "{\"every\":6,\"doubt\":5}"));
        assertEquals(Map.of(2, new Soak.Input(6, 5, null)), Soaks.of(JobSheet.replay(entries)));
    }
}
