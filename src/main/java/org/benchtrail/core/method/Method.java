package org.benchtrail.core.method;

import java.time.Instant;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.identify.ReadingRecorded;

/**
 * The method as one pure function: may this person record this fact on this sheet now, and if not, what is missing? Nobody
 * records anything without asking it.
 */
public final class Method {
    private Method() {}

    /**
     * Decides on an act.
     *
     * @param now not before the last entry of the sheet
     * @throws Invalid if the fact refers to what is not there
     */
    public static Decision decide(JobSheet sheet, Fact fact, Actor actor, Policy policy, Instant now) {
        List<Missing> missing = missing(sheet, fact, actor, policy, now);
        return missing.isEmpty() ? new Decision.Allowed() : new Decision.Refused(missing);
    }

    private static List<Missing> missing(JobSheet sheet, Fact fact, Actor actor, Policy policy, Instant now) {
        List<Missing> standing = Desk.standing(sheet.course(), fact);
        if (!standing.isEmpty()) {
            return standing;
        }
        List<Missing> act = Desk.act(fact);
        if (!act.isEmpty()) {
            return act;
        }
        List<Missing> person = Persons.refuse(sheet, fact, actor, policy, now);
        if (!person.isEmpty()) {
            return person;
        }
        if (fact instanceof MoveFact move) {
            return Desk.move(sheet, move, policy, now);
        }
        if (fact instanceof Waived waiver) {
            return Desk.waiver(sheet, waiver, policy, now);
        }
        if (fact instanceof Corrected correction) {
            return Corrections.refuse(sheet, correction, actor);
        }
        List<Missing> place = Desk.place(sheet, fact);
        return place.isEmpty() ? Guards.refuse(sheet, fact, policy, now) : place;
    }

    /** What stands between the sheet and leaving its step: the list on the page. */
    public static List<Requirement.Status> gate(JobSheet sheet, Policy policy, Instant now) {
        Move move = sheet.step() == Step.DOCUMENT ? Move.CLOSE : Move.ADVANCE;
        return Gate.of(new Situation(sheet, policy, now, move));
    }

    /** Whether an entry of that kind is ever put right; who may, and when, is decided with the act. */
    public static boolean correctable(Fact fact) {
        return Corrections.isCorrectable(fact);
    }

    /** Why policy asks for somebody else's approval of the plan of this round; empty if it does not. */
    public static List<String> approvalReasons(JobSheet sheet, Policy policy) {
        return PlanGaps.approvalReasons(sheet, policy);
    }

    /** How long an intermittent fault has to run clean, minutes: by policy, or by calculation where that is longer. */
    public static long soakMinutes(JobSheet sheet, Policy policy) {
        return VerifyGaps.soakMinutes(sheet, policy);
    }

    /** Readings that were outside their limit and have not been proven back within since the last action. */
    public static List<StandingFact<ReadingRecorded>> readingsToRepeat(JobSheet sheet) {
        return VerifyGaps.outstanding(sheet);
    }
}
