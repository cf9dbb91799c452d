package org.benchtrail.ticket;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.Escalated;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Held;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.Resumed;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.desk.Returned;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.EvidenceImpossible;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.LikenessChecked;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.core.method.identify.StopWorkCleared;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.MakerConsulted;
import org.benchtrail.core.method.plan.PartFitChecked;
import org.benchtrail.core.method.plan.PartOverrideApproved;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.plan.PlanDeclined;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.ObviousQuestioned;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.core.method.verify.FunctionChecked;
import org.benchtrail.core.method.verify.PreventionConsidered;
import org.benchtrail.core.method.verify.RequesterAnswered;
import org.benchtrail.core.method.verify.SoakRun;
import org.benchtrail.core.method.verify.SymptomRechecked;
import org.jspecify.annotations.Nullable;

/** The forms of the job sheet: what each one's fields become. One form holds a step's questions and has one save. */
final class SheetForms {
    private SheetForms() {}

    /** Before the id of a cause among the theories to choose from. */
    private static final String CAUSE = "cause:";

    /** What a form asks for: acts, and the move that its button names. */
    record Request(List<Act> acts, @Nullable MoveFact move) {}

    private interface Reader {
        void read(SheetForm form, JobSheet sheet, List<Act> acts);
    }

    private static final Map<String, Reader> READERS = Map.ofEntries(
            Map.entry("identify", SheetForms::identify),
            Map.entry("evidence", SheetForms::evidence),
            Map.entry("findings", SheetForms::findings),
            Map.entry("theorize", SheetForms::theorize),
            Map.entry("check", SheetForms::check),
            Map.entry("result", SheetForms::result),
            Map.entry("plan", SheetForms::plan),
            Map.entry("approve", SheetForms::approve),
            Map.entry("carry-out", SheetForms::carryOut),
            Map.entry("verify", SheetForms::verify),
            Map.entry("document", SheetForms::document),
            Map.entry("mentor", (form, sheet, acts) -> acts.add(s -> new Signed(Signatory.MENTOR))),
            Map.entry("clear", SheetForms::clear),
            Map.entry("waive", (form, sheet, acts) -> required(form, acts, "waive", Waived.class)),
            Map.entry("strike", SheetForms::strike),
            Map.entry("correct", SheetForms::correct),
            Map.entry("hand-over", (form, sheet, acts) -> required(form, acts, "hand", HandedOver.class)),
            Map.entry("resume", (form, sheet, acts) -> acts.add(s -> new Resumed())),
            Map.entry("escalate", (form, sheet, acts) -> required(form, acts, "escalate", Escalated.class)),
            Map.entry("return", (form, sheet, acts) -> required(form, acts, "return", Returned.class)),
            Map.entry("cancel", (form, sheet, acts) -> required(form, acts, "cancel", Cancelled.class)),
            Map.entry("reopen", (form, sheet, acts) -> required(form, acts, "reopen", Reopened.class)),
            Map.entry("rethink", (form, sheet, acts) -> required(form, acts, "rethink", Rethought.class)),
            Map.entry("persists", (form, sheet, acts) -> required(form, acts, "persists", VerifyFailed.class)));

    static boolean known(String name) {
        return READERS.containsKey(name) || name.equals("hold");
    }

    /**
     * Reads a form.
     *
     * @throws org.benchtrail.core.Invalid naming every field that has to be put right
     */
    static Request read(String name, SheetForm form, JobSheet sheet, ZoneId zone) {
        List<Act> acts = new ArrayList<>();
        if (name.equals("hold")) {
            hold(form, acts, zone);
        } else {
            Objects.requireNonNull(READERS.get(name), name).read(form, sheet, acts);
        }
        form.done();
        return new Request(acts, form.text("then").equals("move") ? move(name, form, sheet) : null);
    }

    /** The move of the button: on from the step; after a result, what the result calls for. */
    private static @Nullable MoveFact move(String name, SheetForm form, JobSheet sheet) {
        if (sheet.step() == Step.DOCUMENT) {
            return new Closed();
        }
        boolean refuted = form.text("result.outcome").equals(CheckOutcome.REFUTES.name())
                || (name.equals("check") && form.has("refute"));
        return refuted ? new RuledOut() : new Advanced();
    }

    private static void identify(SheetForm form, JobSheet sheet, List<Act> acts) {
        if (form.has("symptom.observable") || !form.text("symptom.words").equals(Fill.firstWords(sheet))) {
            form.add(acts, "symptom", SymptomRecorded.class);
        }
        changed(form, sheet, acts, "onset", OnsetRecorded.class);
        changed(form, sheet, acts, "changes", ChangesAsked.class);
        changed(form, sheet, acts, "scope", ScopeRecorded.class);
        changed(form, sheet, acts, "reproduction", ReproductionTried.class);
        changed(form, sheet, acts, "hazards", HazardsScreened.class);
        changed(form, sheet, acts, "data", DataAnswered.class);
        changed(form, sheet, acts, "logs", LogsReviewed.class);
        evidence(form, sheet, acts);
        changed(form, sheet, acts, "noevidence", EvidenceImpossible.class);
        if (form.has("likeness.looked") && sheet.latest(LikenessChecked.class).isEmpty()) {
            List<String> shown = List.of(form.text("shown").split(" ")).stream()
                    .filter(s -> !s.isEmpty())
                    .toList();
            acts.add(s -> new LikenessChecked(shown));
        }
    }

    private static void evidence(SheetForm form, JobSheet sheet, List<Act> acts) {
        if (form.has("reading.value") || form.has("reading.quantity")) {
            form.add(acts, "reading", ReadingRecorded.class, ReadingDefaults.of(form));
        }
        form.add(acts, "extract", ExtractRecorded.class);
        form.add(acts, "finding", FindingRecorded.class);
        form.add(acts, "moresymptom", SymptomRecorded.class);
    }

    /** Questions of the catalogue, answered: recorded where the answer is another than the one that stands. */
    private static void findings(SheetForm form, JobSheet sheet, List<Act> acts) {
        Map<String, String> standing = new java.util.HashMap<>();
        sheet.all(FindingAnswered.class)
                .forEach(n -> standing.put(n.fact().finding(), n.fact().value()));
        for (String finding : form.filled("answer.")) {
            String value = form.text("answer." + finding);
            var asked = form.known().model().flatMap(m -> SheetEvidence.finding(m, finding));
            if (asked.isEmpty()) {
                form.refuse("answer." + finding, "The catalogue has no such question for this category.");
            } else if (!value.equals(standing.get(finding))) {
                FindingAnswered answered = form.read(
                        "known",
                        FindingAnswered.class,
                        Map.of("finding", finding, "question", asked.get().question(), "value", value));
                if (answered != null) {
                    acts.add(s -> answered);
                }
            }
        }
        evidence(form, sheet, acts);
    }

    private static void theorize(SheetForm form, JobSheet sheet, List<Act> acts) {
        changed(form, sheet, acts, "obvious", ObviousQuestioned.class);
        String picked = form.text("choice.theory");
        String chosen = picked.isEmpty() && form.given("theory") ? "new" : picked;
        if (form.given("theory")) {
            form.add(acts, "theory", TheoryStated.class);
            if (chosen.equals("new")) {
                acts.add(s ->
                        new TheoryChosen(s.entries(), form.text("choice.reason"), form.text("choice.newEvidence")));
            }
        } else if (chosen.equals("new")) {
            form.refuse("theory.text", "Say what the cause could be, or choose one of the theories above.");
        }
        form.add(acts, "othertheory", TheoryStated.class);
        if (chosen.startsWith(CAUSE)) {
            chooseCause(form, sheet, acts, chosen.substring(CAUSE.length()));
        }
        if (chosen.matches("\\d+")) {
            changed(form, sheet, acts, "choice", TheoryChosen.class);
        }
    }

    /** A cause of the catalogue becomes a theory when it is chosen; one that was stated before is not stated again. */
    private static void chooseCause(SheetForm form, JobSheet sheet, List<Act> acts, String id) {
        var stated = sheet.latest(TheoryStated.class, t -> id.equals(t.fact().causeId()));
        String reason = form.text("choice.reason");
        String newEvidence = form.text("choice.newEvidence");
        if (stated.isPresent()) {
            int entry = stated.get().entry();
            boolean active =
                    sheet.activeTheory().filter(t -> t.entry() == entry).isPresent();
            if (!active || !reason.isEmpty() || !newEvidence.isEmpty()) {
                acts.add(s -> new TheoryChosen(entry, reason, newEvidence));
            }
            return;
        }
        var cause = form.known().model().stream()
                .flatMap(m -> m.category().causes().stream())
                .filter(c -> c.id().equals(id))
                .findFirst();
        if (cause.isEmpty()) {
            form.refuse("choice.theory", "The catalogue has no such cause: choose another one.");
            return;
        }
        acts.add(s -> new TheoryStated(cause.get().name(), id));
        acts.add(s -> new TheoryChosen(s.entries(), reason, newEvidence));
    }

    private static void check(SheetForm form, JobSheet sheet, List<Act> acts) {
        sheet.activeTheory()
                .ifPresent(theory -> form.add(acts, "check", CheckPlanned.class, Map.of("theory", theory.entry())));
    }

    private static void result(SheetForm form, JobSheet sheet, List<Act> acts) {
        acknowledge(form, acts, form.text("result.check"));
        evidence(form, sheet, acts);
        required(form, acts, "result", ResultRecorded.class);
    }

    private static void plan(SheetForm form, JobSheet sheet, List<Act> acts) {
        form.add(acts, "action", ActionPlanned.class);
        changed(form, sheet, acts, "maker", MakerConsulted.class);
        for (StandingFact<ActionPlanned> action : sheet.actions()) {
            form.add(acts, "fit-" + action.entry(), PartFitChecked.class, Map.of("action", action.entry()));
        }
        if (form.has("fit.fit") && form.given("action") && form.has("action.part")) {
            PartFitChecked fit = form.read("fit", PartFitChecked.class, Map.of("action", 0));
            if (fit != null) {
                acts.add(s -> new PartFitChecked(
                        s.actions().get(s.actions().size() - 1).entry(), fit.fit(), fit.basis()));
            }
        }
        changed(form, sheet, acts, "data", DataAnswered.class);
    }

    private static void approve(SheetForm form, JobSheet sheet, List<Act> acts) {
        if (form.text("answer").equals("approve")) {
            List<Integer> actions =
                    sheet.actions().stream().map(StandingFact::entry).toList();
            required(form, acts, "approval", PlanApproved.class, Map.of("actions", actions));
        } else if (form.text("answer").equals("decline")) {
            required(form, acts, "decline", PlanDeclined.class);
        } else if (form.text("answer").equals("override")) {
            required(form, acts, "override", PartOverrideApproved.class);
        } else {
            form.refuse("answer", "Choose whether you approve the plan.");
        }
    }

    private static void carryOut(SheetForm form, JobSheet sheet, List<Act> acts) {
        for (StandingFact<ActionPlanned> action : sheet.actions()) {
            String group = "settle-" + action.entry();
            acknowledge(form, acts, Integer.toString(action.entry()));
            if (form.has(group + ".settlement")) {
                form.add(acts, group, ActionSettled.class, Map.of("action", action.entry()));
            }
        }
        evidence(form, sheet, acts);
    }

    /** The box 'I have done this' under the cautions of a check or an action. */
    private static void acknowledge(SheetForm form, List<Act> acts, String about) {
        if (form.has("caution-" + about) && about.matches("\\d{1,9}")) {
            Set<Caution> taken = EnumSet.noneOf(Caution.class);
            for (String name : form.text("caution-" + about).split(",")) {
                taken.add(Caution.valueOf(name));
            }
            acts.add(s -> new CautionsAcknowledged(Integer.parseInt(about), taken));
        }
    }

    private static void verify(SheetForm form, JobSheet sheet, List<Act> acts) {
        for (StandingFact<SymptomRecorded> symptom : sheet.all(SymptomRecorded.class)) {
            String group = "recheck-" + symptom.entry();
            if (form.has(group + ".gone")) {
                form.add(acts, group, SymptomRechecked.class, Map.of("symptom", symptom.entry()));
            }
        }
        for (StandingFact<ReadingRecorded> again : sheet.all(ReadingRecorded.class)) {
            String group = "again-" + again.entry();
            if (form.has(group + ".value")) {
                form.add(acts, group, ReadingRecorded.class, sameLimit(again.fact()));
            }
        }
        changed(form, sheet, acts, "function", FunctionChecked.class);
        if (form.has("requester.state")) {
            changed(form, sheet, acts, "requester", RequesterAnswered.class);
        }
        changed(form, sheet, acts, "prevention", PreventionConsidered.class);
        form.add(acts, "soak", SoakRun.class);
        evidence(form, sheet, acts);
    }

    /** A repeated reading keeps quantity, point, unit and limit of the first one, so that the two can be compared. */
    private static Map<String, String> sameLimit(ReadingRecorded first) {
        Map<String, String> known = new java.util.HashMap<>();
        known.put("quantity", first.quantity());
        known.put("unit", first.unit());
        known.put("point", first.point());
        known.put("lower", first.lower());
        known.put("upper", first.upper());
        known.put("limitSource", first.limitSource());
        if (first.accuracy() != null) {
            known.put("accuracy", first.accuracy());
        }
        if (first.finding() != null) {
            known.put("finding", first.finding());
        }
        return known;
    }

    private static void document(SheetForm form, JobSheet sheet, List<Act> acts) {
        if (!isOnlyOffered(form, sheet)) {
            changed(form, sheet, acts, "cause", CauseNamed.class);
        }
        changed(form, sheet, acts, "summary", SummaryWritten.class);
        changed(form, sheet, acts, "knowledge", KnowledgeLinked.class);
        if (form.has("effort.minutes")) {
            changed(form, sheet, acts, "effort", EffortRecorded.class);
        }
        if (form.has("sign")) {
            acts.add(s -> new Signed(Signatory.ASSIGNEE));
        }
    }

    /** Whether the cause is still the one that the form offers by itself: it is named when the technician says how it is known. */
    private static boolean isOnlyOffered(SheetForm form, JobSheet sheet) {
        return !form.text("then").equals("move")
                && !form.has("cause.sureness")
                && sheet.activeTheory()
                        .filter(t -> t.fact().text().equals(form.text("cause.cause")))
                        .isPresent();
    }

    private static void clear(SheetForm form, JobSheet sheet, List<Act> acts) {
        required(form, acts, "clear", StopWorkCleared.class);
    }

    private static void strike(SheetForm form, JobSheet sheet, List<Act> acts) {
        required(form, acts, "strike", Corrected.class);
    }

    /** Puts a recorded fact right: its own fields again, in the group {@code new}. */
    private static void correct(SheetForm form, JobSheet sheet, List<Act> acts) {
        if (!form.text("correct.entry").matches("\\d{1,9}")) {
            form.refuse("correct.entry", "Say which entry is corrected.");
            return;
        }
        int entry = Integer.parseInt(form.text("correct.entry"));
        Fact old = sheet.at(entry, Fact.class, "correct.entry").fact();
        Fact replacement = form.read("new", old.getClass(), Map.of());
        if (replacement != null) {
            Corrected corrected = form.read("correct", Corrected.class, Map.of("entry", entry));
            if (corrected != null) {
                acts.add(s -> new Corrected(entry, corrected.reason(), replacement));
            }
        }
    }

    /** The follow-up is typed in the viewer's own zone. */
    private static void hold(SheetForm form, List<Act> acts, ZoneId zone) {
        try {
            String followUp = form.has("hold.followUp")
                    ? LocalDateTime.parse(form.text("hold.followUp"))
                            .atZone(zone)
                            .toInstant()
                            .toString()
                    : "";
            Map<String, String> known = followUp.isEmpty() ? Map.of() : Map.of("followUp", followUp);
            required(form, acts, "hold", Held.class, known);
        } catch (DateTimeParseException e) {
            form.refuse("hold.followUp", "Write the day and time of the follow-up as 2026-05-31T16:30.");
        }
    }

    /** A fact of which the latest counts: recorded only if it says something else than the one in force. */
    private static <F extends Fact> void changed(
            SheetForm form, JobSheet sheet, List<Act> acts, String group, Class<F> kind) {
        if (!form.given(group)) {
            return;
        }
        F fact = form.read(group, kind, Map.of());
        boolean same = sheet.latest(kind)
                .filter(n -> n.fact().equals(fact))
                .filter(n -> n.fact().step() == Step.IDENTIFY
                        || n.fact() instanceof ObviousQuestioned
                        || n.entry() > sheet.lastWork())
                .isPresent();
        if (fact != null && !same) {
            acts.add(s -> fact);
        }
    }

    private static <F extends Fact> void required(SheetForm form, List<Act> acts, String group, Class<F> kind) {
        required(form, acts, group, kind, Map.of());
    }

    private static <F extends Fact> void required(
            SheetForm form, List<Act> acts, String group, Class<F> kind, Map<String, ?> known) {
        F fact = form.read(group, kind, known);
        if (fact != null) {
            acts.add(s -> fact);
        }
    }
}
