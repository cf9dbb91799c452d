package org.benchtrail.core.training;

import static java.util.Map.entry;
import static org.benchtrail.core.practice.job.SupplyAct.*;

import java.util.List;
import java.util.Map;
import java.util.Set;

/** A supply under load in the words of the catalogue. */
final class SupplyTies {
    static final Ties TIES = new Ties(
            "power",
            Map.ofEntries(
                    entry(ASK_RAN, "p38"),
                    entry(ASK_HARD, "p6"),
                    entry(ASK_COLD, "p41"),
                    entry(ASK_CHANGED, "p22"),
                    entry(ASK_STORM, "p32"),
                    entry(LOOK_DARK, "p1"),
                    entry(LOOK_STANDBY, "p2"),
                    entry(LOOK_STRIP, "p33"),
                    entry(LOOK_REAR, "p34"),
                    entry(LOOK_LEAD, "p28"),
                    entry(LOOK_BROWN, "p42"),
                    entry(LOOK_OTHERS, "p46"),
                    entry(LOOK_INSIDE, "p7"),
                    entry(OUTLET, "p3"),
                    entry(RAIL_LOAD, "p4"),
                    entry(LABEL, "p31"),
                    entry(ALONE, "p5"),
                    entry(OTHER_CORD, "p8"),
                    entry(FEWEST, "p11")),
            Map.of(
                    "power/cord-strip-or-outlet-dead", List.of(OTHER_OUTLET),
                    "power/contact-gives-way", List.of(OTHER_OUTLET),
                    "power/supply-failed", List.of(NEW_SUPPLY),
                    "power/supply-weak-under-load", List.of(NEW_SUPPLY),
                    "power/supply-aged", List.of(NEW_SUPPLY),
                    "power/short-by-part-or-cable", List.of(LIFT_BOARD),
                    "power/board-plug-loose", List.of(PRESS_PLUGS)),
            Map.of(
                    "AGED_CAPACITOR", Set.of("power/supply-aged", "power/supply-weak-under-load"),
                    "HIGH_RESISTANCE", Set.of("power/supply-weak-under-load"),
                    "STANDOFF", Set.of("power/short-by-part-or-cable"),
                    "DEAD_OUTLET", Set.of("power/cord-strip-or-outlet-dead"),
                    "BAD_CONTACT", Set.of("power/contact-gives-way", "power/cord-strip-or-outlet-dead"),
                    "SMALL_SUPPLY", Set.of("power/supply-weak-under-load")),
            Map.of("p30", "no"));

    private SupplyTies() {}
}
