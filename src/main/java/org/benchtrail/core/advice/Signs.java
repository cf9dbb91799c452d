package org.benchtrail.core.advice;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchtrail.core.method.identify.ChangeAnswer;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.Scope;

/** The signs that recorded facts can give, by the names that a catalogue's feeds know them by. */
public final class Signs {
    private static final Map<String, String> UNITS = new HashMap<>();

    static {
        for (ChangeKind kind : ChangeKind.values()) {
            flags("changed/" + kind + "/" + ChangeAnswer.YES, "changed/" + kind + "/" + ChangeAnswer.NO);
        }
        for (Hazard hazard : Hazard.values()) {
            flags("hazard/" + hazard + "/present", "hazard/" + hazard + "/absent");
        }
        Stream.of(Scope.values()).forEach(scope -> flags("scope/" + scope));
        flags("comes-and-goes/true", "comes-and-goes/false", "drive-failure/true");
        List.of(
                        "ups-battery-bad",
                        "ups-battery-low",
                        "ups-overload",
                        "ups-input-bad",
                        "ups-there",
                        "supply-unhealthy",
                        "drive-failing",
                        "drive-suspect",
                        "crc-rising")
                .forEach(sign -> flags("read-in/" + sign));
        UNITS.putAll(BenchSigns.UNITS);
    }

    private Signs() {}

    private static void flags(String... names) {
        for (String name : names) {
            UNITS.put(name, "");
        }
    }

    /** The unit of the number that a sign is; blank for one that is there or not; empty if no fact gives it. */
    public static Optional<String> unit(String sign) {
        return Optional.ofNullable(UNITS.get(sign));
    }
}
