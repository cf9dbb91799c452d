package org.benchtrail.core.method;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.StopWorkCleared;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.PartFitChecked;
import org.benchtrail.core.method.plan.PartOverrideApproved;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.core.method.verify.FunctionChecked;
import org.benchtrail.core.method.verify.SoakRun;
import org.benchtrail.core.method.verify.SymptomRechecked;

/** What must hold before a single act: that what it refers to is there, and that what guards it has been done. */
final class Guards {
    private Guards() {}

    static List<Missing> refuse(JobSheet sheet, Fact fact, Policy policy, Instant now) {
        Situation situation = new Situation(sheet, policy, now, Move.ADVANCE);
        if (fact instanceof StopWorkCleared && !sheet.workStopped()) {
            return Desk.refusal("work-not-stopped", "No hazard is waiting to be cleared.", "hazards-screened");
        }
        if (fact instanceof TheoryChosen choice) {
            sheet.at(choice.theory(), TheoryStated.class, "theory");
        } else if (fact instanceof TheoriesRanked ranked) {
            ranked.order().forEach(theory -> sheet.at(theory, TheoryStated.class, "order"));
        } else if (fact instanceof CheckPlanned check) {
            sheet.at(check.theory(), TheoryStated.class, "theory");
        } else if (fact instanceof ResultRecorded result) {
            return result(situation, result);
        } else if (fact instanceof CautionsAcknowledged taken) {
            sheet.at(taken.about(), Fact.class, "about");
        } else if (fact instanceof PartFitChecked fit) {
            action(sheet, fit.action());
        } else if (fact instanceof PartOverrideApproved override) {
            action(sheet, override.action());
        } else if (fact instanceof PlanApproved approval) {
            approval.actions().forEach(action -> action(sheet, action));
        } else if (fact instanceof ActionSettled settled) {
            return settled(situation, settled);
        } else if (fact instanceof SymptomRechecked recheck) {
            sheet.at(recheck.symptom(), SymptomRecorded.class, "symptom");
        } else if (fact instanceof FunctionChecked checked) {
            functions(sheet, checked);
        } else if (fact instanceof SoakRun run) {
            soak(sheet, run, now);
        } else if (fact instanceof Signed
                && sheet.latestOfRound(SummaryWritten.class).isEmpty()) {
            throw new Invalid("summary", "Write the summary before it is signed.");
        }
        return List.of();
    }

    private static void action(JobSheet sheet, int action) {
        StandingFact<ActionPlanned> planned = sheet.at(action, ActionPlanned.class, "action");
        if (planned.round() != sheet.round()) {
            throw new Invalid("action", "That action belongs to an earlier round: plan it anew.");
        }
    }

    private static void functions(JobSheet sheet, FunctionChecked checked) {
        int last = sheet.opened().category().functions().size() - 1;
        checked.items().keySet().stream()
                .filter(item -> item < 0 || item > last)
                .findFirst()
                .ifPresent(item -> {
                    throw new Invalid(
                            "items",
                            "The checklist of this category has the items 0 to " + last + ": there is no item " + item
                                    + ".");
                });
    }

    /** A check is made once, in its round, and an invasive one only behind its guard. */
    private static List<Missing> result(Situation s, ResultRecorded result) {
        StandingFact<CheckPlanned> check = s.sheet().at(result.check(), CheckPlanned.class, "check");
        if (check.round() != s.sheet().round()
                || s.sheet().result(check.entry()).isPresent()) {
            throw new Invalid("check", "That check has been made, or belongs to an earlier round: plan another one.");
        }
        if (result.reading() != null) {
            s.sheet().at(result.reading(), ReadingRecorded.class, "reading");
        }
        if (s.sheet().workStopped()) {
            return List.of(Requirement.HAZARDS_SCREENED.status(s).missing());
        }
        String lacking = TestGaps.guard(s.sheet(), result.check(), s);
        return lacking.isEmpty() ? List.of() : Desk.refusal("invasive-guarded", lacking, "invasive-guarded");
    }

    /** An action is settled once, and carried out only when all else that the plan asks for is there. */
    private static List<Missing> settled(Situation s, ActionSettled settled) {
        action(s.sheet(), settled.action());
        if (s.sheet().settlement(settled.action()).isPresent()) {
            throw new Invalid("action", "That action has been settled: plan another one.");
        }
        if (settled.settlement() != Settlement.CARRIED_OUT) {
            return List.of();
        }
        return Gate.missing(s).stream()
                .filter(m -> !m.code().equals(Requirement.ACTIONS_SETTLED.code()))
                .toList();
    }

    /** No fault can have stayed away for longer than the time since the last action. */
    private static void soak(JobSheet sheet, SoakRun run, Instant now) {
        Instant since = sheet.latest(ActionSettled.class, a -> a.entry() == sheet.lastWork())
                .map(a -> a.stamp().at())
                .orElse(now);
        long told = sheet.all(SoakRun.class, r -> r.entry() > sheet.lastWork()).stream()
                .mapToLong(r -> r.fact().minutes())
                .sum();
        long passed = Duration.between(since, now).toMinutes();
        if (told + run.minutes() > passed) {
            throw new Invalid(
                    "minutes",
                    "Only " + passed + " min have passed since the last action, " + told
                            + " of them recorded: a run cannot be longer.");
        }
    }
}
