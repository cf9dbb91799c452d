package org.benchtrail.core.method;

import java.time.Instant;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.plan.Approval;
import org.benchtrail.core.method.verify.ReadingsBack;
import org.benchtrail.core.method.verify.SoakTime;

/**
 * The method as one pure function: may this person record this fact on this sheet now, and if not, what is missing? Nobody
 * records anything without asking it. What it asks of a fact, each kind answers in its own file.
 */
public final class Method {
    private Method() {}

    /**
     * Decides on an act.
     *
     * @param now not before the last entry of the sheet
     * @param request which will be that of the entry, see {@link Stamp#request}
     * @throws Invalid if the fact refers to what is not there
     */
    public static Decision decide(JobSheet sheet, Fact fact, Actor actor, Policy policy, Instant now, String request) {
        Situation s = new Situation(sheet, policy, now, Move.ADVANCE, request);
        List<Missing> ended = Place.standing(sheet.course(), fact);
        if (!ended.isEmpty()) {
            return new Decision.Refused(ended, false);
        }
        List<Missing> person = Persons.refuse(fact, actor, s);
        if (!person.isEmpty()) {
            return new Decision.Refused(person, true);
        }
        List<Missing> missing = missing(s, fact, actor);
        return missing.isEmpty() ? new Decision.Allowed() : new Decision.Refused(missing, false);
    }

    private static List<Missing> missing(Situation s, Fact fact, Actor actor) {
        List<Missing> place = Place.step(s.sheet(), fact);
        if (!place.isEmpty()) {
            return place;
        }
        fact.references().forEach(r -> s.sheet().at(r.entry(), r.kind(), r.field()));
        return fact.unsound(s, actor);
    }

    /** What stands between the sheet and leaving its step: the list on the page. */
    public static List<Requirement.Status> gate(JobSheet sheet, Policy policy, Instant now) {
        Move move = sheet.step() == Step.DOCUMENT ? Move.CLOSE : Move.ADVANCE;
        return Gate.of(new Situation(sheet, policy, now, move, ""));
    }

    /** Why policy asks for somebody else's approval of the plan of this round; empty if it does not. */
    public static List<String> approvalReasons(JobSheet sheet, Policy policy) {
        return Approval.reasons(sheet, policy).stream()
                .map(reason -> reason.words(sheet, policy))
                .toList();
    }

    /** How long an intermittent fault has to run clean, minutes: by policy, or by calculation where that is longer. */
    public static long soakMinutes(JobSheet sheet, Policy policy) {
        return SoakTime.needed(sheet, policy);
    }

    /** Readings that were outside their limit and have not been proven back within since the last action. */
    public static List<StandingFact<ReadingRecorded>> readingsToRepeat(JobSheet sheet) {
        return ReadingsBack.outstanding(sheet);
    }
}
