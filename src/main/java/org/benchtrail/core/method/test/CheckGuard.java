package org.benchtrail.core.method.test;

import java.util.Set;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.identify.IdentifyRequirement;

/** What has to be done before a check is made. */
final class CheckGuard {
    private CheckGuard() {}

    /**
     * What keeps that result from being recorded now; nothing for a check that neither warns nor opens nor changes anything.
     *
     * @param told what was seen; what it says was done raises cautions too
     */
    static String lacking(Situation s, StandingFact<CheckPlanned> check, String told) {
        String open = unread(CautionsAcknowledged.open(s, check, owed(check.fact(), told)));
        return open.isEmpty() ? unsafe(s, check.fact()) : open;
    }

    /** The cautions of the check, and of what its result says was done. */
    static Set<Caution> owed(CheckPlanned check, String told) {
        return EnumCopies.union(Caution.class, check.cautions(), Caution.toldBy(told));
    }

    /** What was lacking when that result was recorded. */
    static String lacked(Situation s, StandingFact<ResultRecorded> result) {
        return s.sheet()
                .latest(CheckPlanned.class, c -> c.entry() == result.fact().check())
                .map(check -> lacked(s, check, result))
                .orElse("");
    }

    private static String lacked(Situation s, StandingFact<CheckPlanned> check, StandingFact<ResultRecorded> result) {
        String missed = unread(
                CautionsAcknowledged.missed(s.sheet(), check, check.fact().cautions(), result));
        return missed.isEmpty() ? unsafe(s.on(s.sheet().before(result.entry())), check.fact()) : missed;
    }

    private static String unread(Set<Caution> open) {
        return open.isEmpty()
                ? ""
                : "Read the cautions of the check and acknowledge them before you make it, as an act of its own: "
                        + CautionsAcknowledged.titles(open) + ".";
    }

    private static String unsafe(Situation s, CheckPlanned check) {
        if (!check.invasive()) {
            return "";
        }
        Requirement.Status hazards = IdentifyRequirement.HAZARDS_SCREENED.status(s);
        Requirement.Status data = IdentifyRequirement.DATA_PROTECTED.status(s);
        return hazards.sentence().isEmpty() ? data.sentence() : hazards.sentence();
    }
}
