package org.benchtrail.core.training;

import static java.util.Map.entry;
import static org.benchtrail.core.practice.job.ArrayAct.*;

import java.util.List;
import java.util.Map;
import java.util.Set;

/** An array in the words of the catalogue. */
final class ArrayTies {
    static final Ties TIES = new Ties(
            "array",
            Map.ofEntries(
                    entry(ASK_HARDWARE, "a10"),
                    entry(ASK_POWER, "a11"),
                    entry(LOOK_STATE, "a1"),
                    entry(LOOK_MEMBERS, "a2"),
                    entry(LOOK_CACHE, "a4"),
                    entry(LOOK_REBUILD, "a5"),
                    entry(LOOK_EVENTS, "a7"),
                    entry(LOOK_FOREIGN, "a13"),
                    entry(LOOK_HEALTH, "a12"),
                    entry(LOOK_TASKS, "a17"),
                    entry(LOOK_SHELF, "a18"),
                    entry(LOOK_LOG, "a19"),
                    entry(LATENCY, "a6"),
                    entry(MEDIA_ERRORS, "a9"),
                    entry(TEST_DRIVE, "a20")),
            Map.of(
                    "array/member-failed", List.of(REPLACE),
                    "array/bay-or-backplane", List.of(OTHER_BAY),
                    "array/cache-without-protection", List.of(CACHE_BATTERY),
                    "array/background-check", List.of(EASE_CHECK)),
            Map.of(
                    "MEMBER", Set.of("array/member-failed"),
                    "BAY", Set.of("array/bay-or-backplane"),
                    "CACHE", Set.of("array/cache-without-protection"),
                    "CHECKING", Set.of("array/background-check")),
            Map.of());

    private ArrayTies() {}
}
