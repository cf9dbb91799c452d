package org.benchtrail.core.method.plan;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.ReviewQuestion;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.LossAccepted;

/** What plan asks for. */
public enum PlanRequirement implements Requirement {
    ACTION_PLANNED(
            false,
            "Action",
            "An action with effect, impact and way back",
            PlanRequirement::planned,
            ReviewQuestion.major("Would the action cure the cause, and would its way back work?", ActionPlanned.class)),
    MAKER_CONSULTED(
            true,
            "Maker",
            "The maker's instructions consulted",
            s -> s.unlessInRound(
                    MakerConsulted.class, "Read the maker's instructions and name them, or say why none apply."),
            ReviewQuestion.minor("Were the right instructions read?", MakerConsulted.class)),
    PARTS_FIT(
            true,
            "Parts fit",
            "Every replacement part fits",
            PartsFit::lacking,
            ReviewQuestion.major(
                    "Was the part held against the device, and not against its name?",
                    PartFitChecked.class,
                    PartOverrideApproved.class)) {
        @Override
        public int waivableSince(JobSheet sheet) {
            return PartsFit.lastQuestion(sheet);
        }

        @Override
        public String unasked(Situation s) {
            return unless(s, a -> a.fact().part() != null, "No action of the plan replaces a part.");
        }
    },
    PLAN_APPROVED(
            false,
            "Approval",
            "Approved by somebody else where policy asks",
            Approval::lacking,
            ReviewQuestion.critical(
                    "Did somebody else agree who had seen the evidence?", PlanApproved.class, PlanDeclined.class)) {
        @Override
        public String unasked(Situation s) {
            return Approval.reasons(s.sheet(), s.policy()).isEmpty() ? "Policy asks for no approval of this plan." : "";
        }
    },
    CAUTIONS_TAKEN(
            false,
            "Precautions",
            "Cautions acknowledged before the first action",
            PlanRequirement::cautions,
            ReviewQuestion.critical(
                    "Were the precautions those that the work needed, and taken before it?",
                    CautionsAcknowledged.class)) {
        @Override
        public String unasked(Situation s) {
            return unless(s, a -> !a.fact().cautions().isEmpty(), "No action of the plan calls for a precaution.");
        }
    },
    DATA_STILL_PROTECTED(
            true,
            "Data",
            "The answer about data is fresh enough",
            PlanRequirement::dataFresh,
            ReviewQuestion.critical("Was the backup still good when the work began?", DataAnswered.class)) {
        @Override
        public int waivableSince(JobSheet sheet) {
            return sheet.actions().stream()
                    .filter(a -> a.fact().touchesStorage())
                    .mapToInt(StandingFact::settledSince)
                    .max()
                    .orElse(0);
        }

        @Override
        public String unasked(Situation s) {
            return unless(s, a -> a.fact().touchesStorage(), "No action of the plan touches storage.");
        }
    },
    ACTIONS_SETTLED(
            false,
            "Carried out",
            "Every action carried out or not needed, none failed",
            PlanRequirement::settled,
            ReviewQuestion.major("Does each note say what was really done?", ActionSettled.class));

    private final Row row;

    PlanRequirement(
            boolean waivable, String word, String title, Function<Situation, String> gap, ReviewQuestion review) {
        row = new Row(waivable, word, title, gap, review);
    }

    @Override
    public Step step() {
        return Step.PLAN;
    }

    @Override
    public Row row() {
        return row;
    }

    /** The sentence, unless an action that is needed is such a one. */
    private static String unless(Situation s, Predicate<StandingFact<ActionPlanned>> such, String sentence) {
        return s.sheet().actions().stream().anyMatch(a -> such.test(a) && !needless(s.sheet(), a)) ? "" : sentence;
    }

    private static String planned(Situation s) {
        return s.sheet().actions().isEmpty()
                ? "Plan at least one action: what it does, who is down meanwhile, and the way back."
                : "";
    }

    private static String cautions(Situation s) {
        for (StandingFact<ActionPlanned> action : s.sheet().actions()) {
            Set<Caution> open = s.sheet()
                    .settlement(action.entry())
                    .map(done -> CautionsAcknowledged.missed(
                            s.sheet(), action, action.fact().cautions(), done))
                    .orElseGet(() ->
                            CautionsAcknowledged.open(s, action, action.fact().cautions()));
            if (!open.isEmpty() && !needless(s.sheet(), action)) {
                return "Read and acknowledge the cautions before the action, as an act of its own: "
                        + CautionsAcknowledged.titles(open) + ".";
            }
        }
        return "";
    }

    private static String dataFresh(Situation s) {
        boolean fresh = s.sheet().actions().stream()
                .filter(a -> a.fact().touchesStorage() && !needless(s.sheet(), a))
                .map(a ->
                        s.sheet().settlement(a.entry()).map(n -> n.stamp().at()).orElse(s.now()))
                .allMatch(when -> dataFresh(s, when));
        if (fresh && lossUnaccepted(s.sheet())) {
            return "No backup is possible: before anything that can destroy data, record who owns them and accepts the loss.";
        }
        return fresh
                ? ""
                : "An action touches storage and the answer about data is older than "
                        + s.policy().dataAnswerMaxAge().toHours() + " h: verify or take the backup again.";
    }

    /** Whether the data cannot be backed up, an action can destroy them, and their owner has not accepted that. */
    private static boolean lossUnaccepted(JobSheet sheet) {
        boolean impossible = sheet.latest(DataAnswered.class)
                .filter(d -> d.fact().state() == DataState.IMPOSSIBLE)
                .isPresent();
        boolean endangered = sheet.actions().stream().anyMatch(a -> a.fact().touchesStorage() && !needless(sheet, a));
        return impossible
                && endangered
                && sheet.latest(LossAccepted.class)
                        .filter(l -> l.isAfter(sheet.course().openedAt()))
                        .isEmpty();
    }

    private static boolean dataFresh(Situation s, Instant when) {
        return s.sheet()
                .latest(DataAnswered.class, d -> !d.stamp().at().isAfter(when))
                .filter(d -> Duration.between(d.stamp().at(), when)
                                .compareTo(s.policy().dataAnswerMaxAge())
                        <= 0)
                .isPresent();
    }

    private static String settled(Situation s) {
        List<StandingFact<ActionPlanned>> actions = s.sheet().actions();
        boolean failed = actions.stream().anyMatch(a -> is(s.sheet(), a, Settlement.FAILED));
        if (failed) {
            return "An action failed: rethink, and go round again with what it showed.";
        }
        long open = actions.stream()
                .filter(a -> s.sheet().settlement(a.entry()).isEmpty())
                .count();
        if (open > 0) {
            return "Carry out every action, or mark it not needed: " + open + " still open.";
        }
        boolean none = actions.stream().noneMatch(a -> is(s.sheet(), a, Settlement.CARRIED_OUT));
        return none && !actions.isEmpty() ? "No action was carried out: nothing has changed yet." : "";
    }

    static boolean needless(JobSheet sheet, StandingFact<ActionPlanned> action) {
        return is(sheet, action, Settlement.NOT_NEEDED);
    }

    private static boolean is(JobSheet sheet, StandingFact<ActionPlanned> action, Settlement settlement) {
        return sheet.settlement(action.entry())
                .map(StandingFact::fact)
                .map(ActionSettled::settlement)
                .filter(settlement::equals)
                .isPresent();
    }
}
