package org.benchtrail.training;

import java.util.List;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.StopWorkCleared;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.verify.ReadingsBack;
import org.benchtrail.core.method.verify.VerifyRequirement;
import org.benchtrail.core.practice.job.Truth.Played;

/**
 * The second person of practice jobs. Looks at the device before letting a value outside its limit stand and before signing: what
 * still shows its trouble is sent back with a remark. Who asks too early pays with minutes of waiting.
 */
final class InventedMentor {
    /** No account has such a name. */
    static final Actor ACTOR =
            new Actor("invented mentor", "The invented mentor", Set.of(Role.MENTOR, Role.SUPERVISOR));

    private InventedMentor() {}

    /** @throws Invalid if nothing waits for a second person */
    static Fact answer(JobSheet sheet, Played played) {
        if (sheet.workStopped()) {
            return new StopWorkCleared("Looked at by a second person.", true);
        }
        return switch (sheet.step()) {
            case PLAN ->
                new PlanApproved(
                        sheet.actions().stream().map(StandingFact::entry).toList(), "Looked at.");
            case VERIFY -> outside(sheet, played);
            case DOCUMENT ->
                played.device().isWell()
                        ? new Signed(Signatory.MENTOR)
                        : remark("I tried it before signing: the trouble still shows.");
            default ->
                throw new Invalid("form", "There is nothing here for a mentor to approve, waive, sign or clear.");
        };
    }

    /** An old trace stays in the counters of a drive that works again; what was not measured since the repair is no such thing. */
    private static Fact outside(JobSheet sheet, Played played) {
        List<StandingFact<ReadingRecorded>> outside = ReadingsBack.outstanding(sheet);
        if (outside.isEmpty()) {
            throw new Invalid("form", "No value is outside its limit: there is nothing here for a mentor to waive.");
        }
        boolean measured = outside.stream()
                .allMatch(r -> ReadingsBack.again(sheet, r.fact()).isPresent());
        if (!measured) {
            return remark("Measure what was outside once more after the repair, at the same point. Then ask again.");
        }
        return played.device().isWell()
                ? new Waived(
                        VerifyRequirement.READINGS_BACK.code(),
                        "It does its work again; what is still outside is a trace of before.")
                : remark("I tried it: the trouble still shows, so the value does not stay as it is.");
    }

    private static Remarked remark(String words) {
        return new Remarked(1, null, words);
    }
}
