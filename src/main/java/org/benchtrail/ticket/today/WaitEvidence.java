package org.benchtrail.ticket.today;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Method;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.Asked;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.Hold;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.verify.RequesterAnswered;
import org.benchtrail.core.method.verify.SoakTime;
import org.benchtrail.core.method.verify.SymptomRechecked;
import org.benchtrail.ticket.EntryLine;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.ticket.desk.LesseningView;
import org.benchtrail.ticket.identify.EvidenceView;

/**
 * What whoever decides on something that waits has to see of the ticket first.
 *
 * @param readings each with its verdict
 */
public record WaitEvidence(List<Pair> pairs, List<EvidenceView.Reading> readings) {

    /** What is told of one matter, one sentence to a line; at least one. */
    public record Pair(String term, List<String> lines) {}

    static WaitEvidence of(WaitingLine line, Viewing viewing) {
        return new Telling(line, viewing).told();
    }

    /** The telling of one wait. */
    private static final class Telling {
        private final WaitingLine line;
        private final Viewing viewing;
        private final JobSheet sheet;
        private final List<Pair> pairs = new ArrayList<>();

        Telling(WaitingLine line, Viewing viewing) {
            this.line = line;
            this.viewing = viewing;
            sheet = viewing.sheet();
        }

        WaitEvidence told() {
            switch (line.kind()) {
                case APPROVAL -> plan();
                case WAIVER -> waiver();
                case LESSENING -> lessening();
                case SIGNATURE -> record();
                case MENTOR -> {
                    asked();
                    sofar();
                }
                case SOAK -> soak();
                case FOLLOW_UP -> hold();
                case OFFER -> {
                    entry("Note");
                    sofar();
                }
                case ADDENDUM, SENT_BACK, REMARK -> entry("Said");
                case PRESENCE -> entry("Present");
            }
            return new WaitEvidence(List.copyOf(pairs), readings());
        }

        private void plan() {
            pair("Why it needs you", Method.approvalReasons(sheet, viewing.policy()).stream());
            asked();
            for (StandingFact<ActionPlanned> action : sheet.actions()) {
                pair("Action " + action.entry(), action(action.fact()));
            }
            theory();
        }

        private Stream<String> action(ActionPlanned plan) {
            String cautions = CautionsAcknowledged.titles(plan.cautions());
            return Stream.of(
                    plan.what(),
                    "Who cannot work, and how long: " + plan.impact(),
                    plan.wayBack().isEmpty() ? "Cannot be undone" : "Way back: " + plan.wayBack(),
                    plan.cost() == null ? "" : "Costs " + plan.cost(),
                    plan.part() == null ? "" : "Part: " + plan.part(),
                    cautions.isEmpty() ? "" : "Cautions: " + cautions);
        }

        private void theory() {
            sheet.activeTheory()
                    .ifPresent(theory -> pair("Theory", Stream.of(theory.fact().text())));
            pair(
                    "What the checks showed",
                    sheet.ofRound(ResultRecorded.class).stream()
                            .map(r -> r.fact().observation() + ": "
                                    + r.fact().outcome().words()));
        }

        private void waiver() {
            StandingFact<Asked> asked = sheet.at(line.entry(), Asked.class, "entry");
            String code = String.valueOf(asked.fact().requirement());
            pair(
                    "Waive",
                    Stream.of(Requirements.of(code).map(Requirement::title).orElse(code)));
            pair(
                    "What is missing",
                    Method.gate(sheet, viewing.policy(), viewing.now()).stream()
                            .filter(status -> status.requirement().code().equals(code))
                            .map(Requirement.Status::sentence));
            asked();
            sofar();
        }

        private void lessening() {
            LesseningView.all(viewing).stream()
                    .filter(l -> l.change() == line.entry())
                    .forEach(l -> {
                        pair("As first recorded", Stream.of(l.owed()));
                        pair("Now", Stream.of(l.now()));
                        pair("Reason given", Stream.of(l.reason()));
                    });
        }

        private void record() {
            texts("Cause", CauseNamed.class, c -> c.round() == sheet.round());
            texts("Done", ActionSettled.class, a -> a.round() == sheet.round());
            texts("Symptoms", SymptomRechecked.class, s -> s.isAfter(sheet.lastWork()));
            texts("Requester", RequesterAnswered.class, r -> r.isAfter(sheet.lastWork()));
            texts("Waived", Waived.class, w -> true);
            texts("Corrected", Corrected.class, c -> true);
        }

        private void soak() {
            SoakTime.running(sheet).ifPresent(started -> {
                long ran = SoakTime.passed(started, viewing.now());
                pair(
                        "While it ran",
                        Stream.of(SoakTime.words(ran) + " since " + viewing.stamp(started) + "; asked for "
                                + SoakTime.words(Method.soakMinutes(sheet, viewing.policy()))));
                pair("Recorded since", entries(started.entry()));
            });
        }

        private Stream<String> entries(int after) {
            List<String> since = viewing
                    .lines(sheet.facts().stream().filter(f -> f.isAfter(after)).toList())
                    .stream()
                    .map(e -> e.kind() + ": " + e.text())
                    .toList();
            return since.isEmpty() ? Stream.of("Nothing.") : since.stream();
        }

        private void hold() {
            Hold hold = sheet.course().hold();
            if (hold != null) {
                pair("Waits for", Stream.of(hold.waitingFor().words()));
                pair("Note", Stream.of(hold.note()));
            }
        }

        private void asked() {
            pair(
                    "Note",
                    Stream.of(
                            sheet.at(line.entry(), Asked.class, "entry").fact().note()));
        }

        /** The words of the entry that made it wait. */
        private void entry(String term) {
            EntryLine made = viewing.line(sheet.at(line.entry(), Fact.class, "entry"));
            pair(term, Stream.of(made.text()));
        }

        private void sofar() {
            pair("Step", Stream.of(sheet.step().title()));
            pair(
                    "Symptoms",
                    sheet.all(SymptomRecorded.class).stream().map(s -> s.fact().observable()));
            theory();
        }

        private <F extends Fact> void texts(String term, Class<F> kind, Predicate<StandingFact<F>> which) {
            pair(
                    term,
                    sheet.all(kind, which).stream()
                            .map(fact -> viewing.line(fact).text()));
        }

        private void pair(String term, Stream<String> lines) {
            List<String> told = lines.filter(words -> !words.isBlank()).toList();
            if (!told.isEmpty()) {
                pairs.add(new Pair(term, told));
            }
        }

        private List<EvidenceView.Reading> readings() {
            return switch (line.kind()) {
                case APPROVAL, WAIVER, SIGNATURE, MENTOR -> readingsAfter(0);
                case SOAK ->
                    readingsAfter(
                            SoakTime.running(sheet).map(StandingFact::entry).orElse(0));
                case LESSENING, PRESENCE, ADDENDUM, SENT_BACK, REMARK, OFFER, FOLLOW_UP -> List.of();
            };
        }

        private List<EvidenceView.Reading> readingsAfter(int entry) {
            return sheet.all(ReadingRecorded.class, r -> r.isAfter(entry)).stream()
                    .map(EvidenceView.Reading::of)
                    .toList();
        }
    }
}
