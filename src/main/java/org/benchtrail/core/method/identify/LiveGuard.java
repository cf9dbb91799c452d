package org.benchtrail.core.method.identify;

import java.util.List;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.desk.CautionsAcknowledged;

/** What has to be done before something is measured live outside a check. */
final class LiveGuard {
    private LiveGuard() {}

    static List<Missing> lacking(Situation s) {
        return CautionsAcknowledged.taken(s, Caution.LIVE)
                ? List.of()
                : Missing.rule(
                        "live-guarded",
                        "This is a live measurement: read its caution and acknowledge it before you measure, as an act of"
                                + " its own.",
                        "live-measurement");
    }
}
