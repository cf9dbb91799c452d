package org.benchtrail.core.method.test;

import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.identify.IdentifyRequirement;

/** What has to be done before a check is made. */
final class CheckGuard {
    private CheckGuard() {}

    /** What keeps that check from being made now; nothing for one that neither warns nor opens nor changes anything. */
    static String lacking(Situation s, int check) {
        return s.sheet()
                .latest(CheckPlanned.class, c -> c.entry() == check)
                .map(planned -> lacking(s, planned))
                .orElse("");
    }

    private static String lacking(Situation s, StandingFact<CheckPlanned> check) {
        if (!CautionsAcknowledged.taken(s.sheet(), check, Integer.MAX_VALUE)
                .containsAll(check.fact().cautions())) {
            return "Read the cautions of the check and acknowledge them before you make it.";
        }
        if (!check.fact().invasive()) {
            return "";
        }
        Requirement.Status hazards = IdentifyRequirement.HAZARDS_SCREENED.status(s);
        Requirement.Status data = IdentifyRequirement.DATA_PROTECTED.status(s);
        return hazards.sentence().isEmpty() ? data.sentence() : hazards.sentence();
    }
}
