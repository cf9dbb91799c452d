package org.benchtrail.core.practice.job;

import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Harm;

/** What hands inside a computer do, whose plug and wrist strap nobody saw to. */
final class HandsInCase {
    private static final double SPARK_KILLS = 0.25;
    private static final double BOARD_PRICE = 160;

    private HandsInCase() {}

    static List<Harm> harm(Chance chance, boolean pulled, boolean strapped) {
        List<Harm> harm = new ArrayList<>();
        if (!pulled) {
            harm.add(new Harm(
                    Harm.Kind.PERSON,
                    "Hands in the case with the plug in: a screwdriver slipped, and hand and board got it.",
                    30,
                    0));
        }
        if (!strapped && chance.uniform("spark") < SPARK_KILLS) {
            harm.add(new Harm(
                    Harm.Kind.DEVICE,
                    "No strap: a spark of static went into the board, which has to be replaced.",
                    60,
                    BOARD_PRICE));
        }
        return harm;
    }
}
