package org.benchtrail.core.method;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.benchtrail.core.method.desk.Waived;

/**
 * The table of requirements: what must be true before each step is left. The same table drives the refusal, the list on the
 * page, the coach's explanations and the reviewer's checklist. Codes are stable: they appear in the API, the trail and reports.
 */
public enum Requirement {
    SYMPTOM_OBSERVED(
            Step.IDENTIFY,
            false,
            "A symptom, in the requester's words and as something observable",
            IdentifyGaps::symptom),
    ONSET_KNOWN(Step.IDENTIFY, false, "When it began or last worked", IdentifyGaps::onset),
    CHANGES_ASKED(Step.IDENTIFY, true, "What changed before it began", IdentifyGaps::changes),
    SCOPE_KNOWN(Step.IDENTIFY, false, "Whom it touches: one, several or a site", IdentifyGaps::scope),
    REPRODUCED(Step.IDENTIFY, true, "Whether it can be reproduced, and how", IdentifyGaps::reproduction),
    HAZARDS_SCREENED(Step.IDENTIFY, false, "Hazards looked for; any found is cleared", IdentifyGaps::hazards),
    DATA_PROTECTED(Step.IDENTIFY, true, "Data at risk: how they are protected", IdentifyGaps::data),
    EVIDENCE_ATTACHED(Step.IDENTIFY, true, "A reading, a log extract or a picture", IdentifyGaps::evidence),
    LOGS_REVIEWED(Step.IDENTIFY, true, "System and application logs looked at", IdentifyGaps::logs),
    LIKENESS_CHECKED(Step.IDENTIFY, false, "Similar tickets and known causes looked at", IdentifyGaps::likeness),

    OBVIOUS_QUESTIONED(Step.THEORIZE, true, "The obvious questioned first", TheorizeGaps::obvious),
    THEORY_STATED(Step.THEORIZE, false, "At least one theory", TheorizeGaps::stated),
    THEORY_CHOSEN(Step.THEORIZE, false, "One active theory; why, if it is not the best ranked", TheorizeGaps::chosen),
    NOT_ALREADY_REFUTED(
            Step.THEORIZE,
            true,
            "Not a theory that was ruled out before, unless something is new",
            TheorizeGaps::notRefuted),

    EXPECTATION_FIRST(
            Step.TEST, false, "A check whose expectation was written before its result", TestGaps::expectation),
    RESULT_RECORDED(Step.TEST, false, "Its result, and what that says about the theory", TestGaps::result),
    THEORY_SUPPORTED(Step.TEST, false, "The latest conclusive check bears the move out", TestGaps::supported),
    INVASIVE_GUARDED(
            Step.TEST,
            false,
            "Invasive checks only with data protected, hazards cleared, cautions taken",
            TestGaps::invasive),

    ACTION_PLANNED(Step.PLAN, false, "An action with effect, impact and way back", PlanGaps::planned),
    MAKER_CONSULTED(Step.PLAN, true, "The maker's instructions consulted", PlanGaps::maker),
    PARTS_FIT(Step.PLAN, true, "Every replacement part fits", PlanGaps::parts),
    PLAN_APPROVED(Step.PLAN, false, "Approved by somebody else where policy asks", PlanGaps::approved),
    CAUTIONS_TAKEN(Step.PLAN, false, "Cautions acknowledged before the first action", PlanGaps::cautions),
    DATA_STILL_PROTECTED(Step.PLAN, true, "The answer about data is fresh enough", PlanGaps::dataFresh),
    ACTIONS_SETTLED(Step.PLAN, false, "Every action carried out or not needed, none failed", PlanGaps::settled),

    SYMPTOMS_GONE(Step.VERIFY, false, "Every symptom looked for again and gone", VerifyGaps::symptoms),
    READINGS_BACK(Step.VERIFY, true, "What was outside its limit is measured again and within", VerifyGaps::readings),
    FUNCTION_CHECKED(Step.VERIFY, true, "The full-function checklist complete", VerifyGaps::function),
    REQUESTER_AGREES(Step.VERIFY, true, "The requester agrees", VerifyGaps::requester),
    PREVENTION_CONSIDERED(Step.VERIFY, false, "A preventive measure, or why none applies", VerifyGaps::prevention),
    SOAK_TIME_PASSED(Step.VERIFY, true, "An intermittent fault has run clean for the soak time", VerifyGaps::soak),

    CAUSE_NAMED(Step.DOCUMENT, false, "The cause, and how it is known", DocumentGaps::cause),
    SUMMARY_WRITTEN(Step.DOCUMENT, false, "Findings, actions and outcome, signed", DocumentGaps::summary),
    KNOWLEDGE_LINKED(Step.DOCUMENT, true, "What the next technician gains", DocumentGaps::knowledge),
    EFFORT_RECORDED(Step.DOCUMENT, true, "Time spent and parts used", DocumentGaps::effort),
    MENTOR_SIGNED(Step.DOCUMENT, false, "A trainee's ticket signed by a mentor", DocumentGaps::mentor);

    /** Says what is lacking, as a sentence with what to do; empty if the requirement is met. */
    interface Gap extends Function<Situation, String> {}

    private final Step step;
    private final boolean waivable;
    private final String title;
    private final Gap gap;

    Requirement(Step step, boolean waivable, String title, Gap gap) {
        this.step = step;
        this.waivable = waivable;
        this.title = title;
        this.gap = gap;
    }

    /** The stable code, also its anchor on the job sheet. */
    public String code() {
        return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }

    /** The step that cannot be left without it. */
    public Step step() {
        return step;
    }

    public boolean waivable() {
        return waivable;
    }

    public String title() {
        return title;
    }

    public static Optional<Requirement> of(String code) {
        return Arrays.stream(values()).filter(r -> r.code().equals(code)).findFirst();
    }

    public static List<Requirement> of(Step step) {
        return Arrays.stream(values()).filter(r -> r.step == step).toList();
    }

    /** How a requirement stands. */
    public enum State {
        MET,
        WAIVED,
        MISSING
    }

    /** A requirement held against a sheet; the sentence is empty unless it is missing. */
    public record Status(Requirement requirement, State state, String sentence) {
        Missing missing() {
            return new Missing(requirement.code(), sentence, requirement.code(), requirement.waivable());
        }
    }

    public Status status(Situation situation) {
        String lacking = gap.apply(situation);
        if (lacking.isEmpty()) {
            return new Status(this, State.MET, "");
        }
        return waivedOn(situation.sheet())
                ? new Status(this, State.WAIVED, "")
                : new Status(this, State.MISSING, lacking);
    }

    /**
     * Whether a waiver is in force. One for identify lasts until the ticket is reopened, any other for its round; one for
     * data counts only if it was given in knowledge of the drive failure.
     */
    private boolean waivedOn(JobSheet sheet) {
        int since = this == DATA_PROTECTED
                ? sheet.driveFailure().map(StandingFact::settledSince).orElse(0)
                : 0;
        return waivable
                && sheet.latest(Waived.class, w -> w.fact().requirement().equals(code()))
                        .filter(w -> w.entry() > since)
                        .filter(w -> step == Step.IDENTIFY
                                ? w.entry() > sheet.course().openedAt()
                                : w.round() == sheet.round())
                        .isPresent();
    }
}
