package org.benchtrail.core.practice.job;

import java.util.List;
import java.util.Locale;
import org.benchtrail.core.practice.Chance;

/** Who reported the trouble: knows most of what changed, is sometimes wrong, and says the same when asked again. */
final class Reporter {
    static final double KNOWS = 0.70;
    private static final double WRONG = 0.05;

    private Reporter() {}

    /** By which chance knows what somebody says to that question: the devices call it by either. */
    static List<String> labels(DeviceAct ask) {
        String about = ask == PowerAct.ASK_WORK
                ? "wiring"
                : ask.name().substring("ASK_".length()).toLowerCase(Locale.ROOT);
        return List.of("asked|" + ask.name(), "asked|" + about);
    }

    static Seen asked(Chance chance, String about, boolean isSo) {
        double draw = chance.uniform("asked|" + about);
        if (draw < KNOWS) {
            return Seen.of(isSo);
        }
        return draw < KNOWS + WRONG ? Seen.of(!isSo) : new Seen(Seen.UNKNOWN, null);
    }
}
