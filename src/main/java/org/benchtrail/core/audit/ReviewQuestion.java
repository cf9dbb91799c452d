package org.benchtrail.core.audit;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.EvidenceFact;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.LikenessChecked;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.LossAccepted;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.core.method.identify.SoakTimeReckoned;
import org.benchtrail.core.method.identify.StopWorkCleared;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.MakerConsulted;
import org.benchtrail.core.method.plan.PartFitChecked;
import org.benchtrail.core.method.plan.PartOverrideApproved;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.plan.PlanDeclined;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.ObviousQuestioned;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.core.method.verify.FunctionChecked;
import org.benchtrail.core.method.verify.PreventionConsidered;
import org.benchtrail.core.method.verify.RequesterAnswered;
import org.benchtrail.core.method.verify.SoakRun;
import org.benchtrail.core.method.verify.SoakStarted;
import org.benchtrail.core.method.verify.SymptomRechecked;

/**
 * What a reviewer asks of one requirement: the gate says that something was recorded, the reviewer whether it is true of the job.
 *
 * @param question as it is put to the reviewer
 * @param usual class of a defect here
 * @param restsOn kinds of entry that the answer usually rests on
 */
public record ReviewQuestion(String question, DefectClass usual, List<Class<? extends Fact>> restsOn) {
    private static final Map<String, ReviewQuestion> ALL = new LinkedHashMap<>();

    public static ReviewQuestion of(Requirement requirement) {
        return Objects.requireNonNull(
                ALL.get(requirement.code()), () -> "reviewers are asked nothing about " + requirement.code());
    }

    /** Whether what is lacking there is usually a defect by which a ticket is judged; of what nobody asks about any more it is. */
    static boolean counts(String code) {
        ReviewQuestion question = ALL.get(code);
        return question == null || question.usual.counts();
    }

    /** The codes that have a question. */
    public static List<String> codes() {
        return List.copyOf(ALL.keySet());
    }

    @SafeVarargs
    private static void ask(String code, DefectClass usual, String question, Class<? extends Fact>... restsOn) {
        ALL.put(code, new ReviewQuestion(question, usual, List.of(restsOn)));
    }

    static {
        identify();
        data();
        theorizeAndTest();
        plan();
        verify();
        document();
    }

    private static void identify() {
        ask(
                "symptom-observed",
                DefectClass.MAJOR,
                "Could somebody who was not there see from these words whether the trouble is gone?",
                SymptomRecorded.class);
        ask(
                "onset-known",
                DefectClass.MINOR,
                "Is the time named that matters, or rightly not known?",
                OnsetRecorded.class);
        ask("changes-asked", DefectClass.MINOR, "Was each kind of change really asked about?", ChangesAsked.class);
        ask(
                "scope-known",
                DefectClass.MINOR,
                "Does the answer fit what else is known of the site?",
                ScopeRecorded.class);
        ask(
                "reproduced",
                DefectClass.MINOR,
                "Could another person bring it about in that way?",
                ReproductionTried.class);
    }

    private static void data() {
        ask(
                "hazards-screened",
                DefectClass.CRITICAL,
                "Do the answers fit the pictures and words of the ticket, and was a hazard cleared before work went on?",
                HazardsScreened.class,
                StopWorkCleared.class);
        ask(
                "data-protected",
                DefectClass.CRITICAL,
                "Were the data safe before anything was done that could lose them?",
                DataAnswered.class,
                LossAccepted.class);
        ask(
                "evidence-attached",
                DefectClass.MAJOR,
                "Does the evidence show this trouble on this device?",
                EvidenceFact.class);
        ask("logs-reviewed", DefectClass.MINOR, "Were the logs read that could speak of it?", LogsReviewed.class);
        ask(
                "likeness-checked",
                DefectClass.MINOR,
                "Was what had been seen before taken into account?",
                LikenessChecked.class);
    }

    private static void theorizeAndTest() {
        ask(
                "simple-things-first",
                DefectClass.MINOR,
                "Were the simple things looked at and not only ticked?",
                ObviousQuestioned.class);
        ask("theory-stated", DefectClass.MINOR, "Would each theory explain the symptom?", TheoryStated.class);
        ask(
                "theory-chosen",
                DefectClass.MAJOR,
                "Did the evidence at that time speak for this theory?",
                TheoryChosen.class,
                TheoryStated.class);
        ask(
                "not-already-refuted",
                DefectClass.MAJOR,
                "If it had been ruled out before: is there really something new?",
                TheoryChosen.class);
        ask(
                "expectation-first",
                DefectClass.MAJOR,
                "Was the expectation a real one: could it have failed?",
                CheckPlanned.class);
        ask("result-recorded", DefectClass.MAJOR, "Does what was seen lead to that result?", ResultRecorded.class);
        ask(
                "theory-supported",
                DefectClass.MAJOR,
                "Does the last check tell this theory from the others?",
                CheckPlanned.class,
                ResultRecorded.class);
        ask(
                "invasive-guarded",
                DefectClass.CRITICAL,
                "Were the precautions taken before the device was opened or changed?",
                CheckPlanned.class,
                CautionsAcknowledged.class);
    }

    private static void plan() {
        ask(
                "action-planned",
                DefectClass.MAJOR,
                "Would the action cure the cause, and would its way back work?",
                ActionPlanned.class);
        ask("maker-consulted", DefectClass.MINOR, "Were the right instructions read?", MakerConsulted.class);
        ask(
                "parts-fit",
                DefectClass.MAJOR,
                "Was the part held against the device, and not against its name?",
                PartFitChecked.class,
                PartOverrideApproved.class);
        ask(
                "plan-approved",
                DefectClass.CRITICAL,
                "Did somebody else agree who had seen the evidence?",
                PlanApproved.class,
                PlanDeclined.class);
        ask(
                "cautions-taken",
                DefectClass.CRITICAL,
                "Were the precautions those that the work needed, and taken before it?",
                CautionsAcknowledged.class);
        ask(
                "data-still-protected",
                DefectClass.CRITICAL,
                "Was the backup still good when the work began?",
                DataAnswered.class);
        ask("actions-settled", DefectClass.MAJOR, "Does each note say what was really done?", ActionSettled.class);
    }

    private static void verify() {
        ask(
                "symptoms-gone",
                DefectClass.MAJOR,
                "Was the same symptom looked for in the same way?",
                SymptomRechecked.class);
        ask(
                "readings-back",
                DefectClass.MAJOR,
                "Is the second reading of the same point, taken after the work?",
                ReadingRecorded.class);
        ask("function-checked", DefectClass.MAJOR, "Was the device used as its owner uses it?", FunctionChecked.class);
        ask("requester-agrees", DefectClass.MINOR, "Was the requester really asked?", RequesterAnswered.class);
        ask(
                "prevention-considered",
                DefectClass.MINOR,
                "Would the measure prevent this cause, or is it rightly left?",
                PreventionConsidered.class);
        ask(
                "soak-time-passed",
                DefectClass.MAJOR,
                "Did it run long enough, and as it ran when it failed?",
                SoakStarted.class,
                SoakRun.class,
                SoakTimeReckoned.class,
                BenchResultAttached.class);
    }

    private static void document() {
        ask(
                "cause-named",
                DefectClass.MAJOR,
                "Is it a cause, and do the checks show it?",
                CauseNamed.class,
                FindingRecorded.class);
        ask(
                "summary-written",
                DefectClass.MINOR,
                "Does the summary say what the entries say?",
                SummaryWritten.class,
                Signed.class);
        ask("knowledge-linked", DefectClass.MINOR, "Would it help the next technician?", KnowledgeLinked.class);
        ask("effort-recorded", DefectClass.MINOR, "Do time and parts fit the work?", EffortRecorded.class);
        ask("mentor-signed", DefectClass.MAJOR, "Did the mentor look at the work before signing?", Signed.class);
    }
}
