package org.benchtrail.core.training;

import static java.util.Map.entry;
import static org.benchtrail.core.practice.job.MemoryAct.*;

import java.util.List;
import java.util.Map;
import java.util.Set;

/** Memory in the words of the catalogue. */
final class MemoryTies {
    static final Ties TIES = new Ties(
            "memory",
            Map.ofEntries(
                    entry(ASK_ADDED, "m10"),
                    entry(ASK_HARDWARE, "m12"),
                    entry(ASK_SETTINGS, "m13"),
                    entry(LOOK_CODES, "m1"),
                    entry(LOOK_START, "m2"),
                    entry(LOOK_MIXED, "m9"),
                    entry(LOOK_FITTED, "m17"),
                    entry(LOOK_PAGE_FILE, "m18"),
                    entry(IN_USE, "m7"),
                    entry(VOLTS, "m8"),
                    entry(LONG_TEST, "m3"),
                    entry(STANDARD_RUN, "m6"),
                    entry(COLD_AND_WARM, "m20"),
                    entry(GOES_ALONG, "m4"),
                    entry(STAYS, "m5")),
            Map.of(
                    "memory/module-failed", List.of(REPLACE_A, REPLACE_B),
                    "memory/module-badly-seated", List.of(RESEAT),
                    "memory/slot-or-board", List.of(OTHER_SLOTS),
                    "memory/profile-unstable", List.of(STANDARD_SPEED),
                    "memory/modules-overheat", List.of(FREE_AIR)),
            Map.of(
                    "MODULE", Set.of("memory/module-failed"),
                    "SLOT", Set.of("memory/slot-or-board"),
                    "PROFILE", Set.of("memory/profile-unstable"),
                    "HEAT", Set.of("memory/modules-overheat")),
            Map.of("m14", "no"));

    private MemoryTies() {}
}
