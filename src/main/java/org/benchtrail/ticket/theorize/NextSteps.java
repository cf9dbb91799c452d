package org.benchtrail.ticket.theorize;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.advice.Diagnosis;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Advice;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.Risk;
import org.benchtrail.core.diagnosis.Words;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.identify.HazardsScreened;

/** What a diagnosis advises to do next, in words. */
final class NextSteps {
    private final JobSheet sheet;
    private final Diagnosis diagnosis;

    NextSteps(JobSheet sheet, Diagnosis diagnosis) {
        this.sheet = sheet;
        this.diagnosis = diagnosis;
    }

    /** No test before it is known that the place is safe. */
    NextView view() {
        String unsafe = unsafe();
        if (!unsafe.isEmpty()) {
            return new NextView(
                    null, List.of(), "", unsafe, List.of(), usualRepair().orElse(null));
        }
        return new NextView(
                next().orElse(null),
                others(),
                whyNotAct(),
                act(),
                held(),
                usualRepair().orElse(null));
    }

    private String unsafe() {
        if (sheet.workStopped()) {
            return sheet.hazards().stream()
                    .map(h -> "Work is stopped by " + h.words() + ". " + h.whatToDo())
                    .collect(Collectors.joining(" "));
        }
        return sheet.inForce(HazardsScreened.class).isEmpty()
                ? "Answer the hazards first: no test is advised before."
                : "";
    }

    private Optional<NextView.Test> next() {
        return diagnosis
                .advice()
                .recommended()
                .filter(a -> a.type() == Action.Type.TEST)
                .map(this::test);
    }

    private List<NextView.Test> others() {
        Optional<Action> first = diagnosis.advice().recommended();
        return diagnosis.advice().bestThree().stream()
                .filter(a -> a.type() == Action.Type.TEST && !first.equals(Optional.of(a)))
                .map(this::test)
                .toList();
    }

    private NextView.Test test(Action action) {
        Finding finding = SheetEvidence.finding(diagnosis.model(), action.id()).orElseThrow();
        Advice advice = diagnosis.advice();
        Set<Caution> cautions = EnumCopies.union(
                Caution.class, Caution.against(finding.dangers()), Caution.raisedBy(finding.question()));
        return new NextView.Test(
                finding.id(),
                finding.question(),
                Math.round(finding.minutes()),
                advice.saves(action).isEmpty()
                        ? ""
                        : Long.toString(advice.saves(action).getAsLong()),
                finding.values(),
                finding.kind() == Finding.Kind.READING,
                finding.limits() == null ? "" : finding.limits().unit(),
                expectation(finding),
                finding.risk().compareTo(Risk.LOW) > 0,
                List.copyOf(cautions));
    }

    private String expectation(Finding finding) {
        String cause = sheet.activeTheory().map(t -> t.fact().causeId()).orElse(null);
        if (cause == null || diagnosis.cause(cause).isEmpty()) {
            return "";
        }
        Model model = diagnosis.model();
        String likeliest = finding.values().stream()
                .max(Comparator.comparingDouble(v -> model.likelihood(finding.id(), v, cause)))
                .orElseThrow();
        double p = model.likelihood(finding.id(), likeliest, cause);
        return finding.question() + ": " + likeliest + " (" + Words.chance(p) + " if the theory is right)";
    }

    private String act() {
        return diagnosis
                .advice()
                .recommended()
                .filter(a -> a.type() != Action.Type.TEST)
                .map(this::act)
                .orElse("");
    }

    private String act(Action action) {
        if (action.type() == Action.Type.ESCALATE) {
            return "Escalating or swapping the device is the shortest way now, about "
                    + Math.round(action.expectedMinutes()) + " min.";
        }
        String text = diagnosis
                .cause(action.id())
                .map(c -> c.repair().text())
                .orElseGet(() -> diagnosis.model().category().sharedRepairs().stream()
                        .filter(s -> s.id().equals(action.id()))
                        .map(s -> s.repair().text())
                        .findFirst()
                        .orElse(action.id()));
        if (action.type() == Action.Type.PREPARE) {
            return "Prepare the repair \u201c" + text + "\u201d: " + waitsFor(action) + ".";
        }
        return "No further test pays: confirm and plan the repair \u201c" + text + "\u201d, about "
                + Math.round(action.minutes()) + " min; " + Math.round(action.expectedMinutes())
                + " min are expected in all.";
    }

    private String waitsFor(Action action) {
        return diagnosis.advice().blocked().stream()
                .filter(b -> b.repair().equals(action.id()))
                .flatMap(b -> b.reasons().stream())
                .collect(Collectors.joining("; "));
    }

    private String whyNotAct() {
        Advice advice = diagnosis.advice();
        if (next().isEmpty() || advice.bestOther().isEmpty()) {
            return "";
        }
        Action other = advice.bestOther().get();
        Action best = advice.recommended().orElseThrow();
        return "With this test first, " + Math.round(best.expectedMinutes())
                + " min are expected to a verified fix; without it, " + Math.round(other.expectedMinutes()) + " min.";
    }

    private List<String> held() {
        return diagnosis.advice().blocked().stream()
                .filter(b -> diagnosis.ranking().probability(b.repair()) >= 0.1)
                .map(b -> RankedCauses.name(diagnosis, b.repair()) + ": " + String.join("; ", b.reasons()))
                .toList();
    }

    private Optional<NextView.UsualRepair> usualRepair() {
        return sheet.activeTheory()
                .flatMap(t -> Optional.ofNullable(t.fact().causeId()))
                .flatMap(diagnosis::cause)
                .map(c -> new NextView.UsualRepair(
                        c.repair().text(),
                        Math.round(c.repair().minutes()),
                        c.caution().equals("none") ? "" : c.caution(),
                        !c.repair().reversible()));
    }
}
