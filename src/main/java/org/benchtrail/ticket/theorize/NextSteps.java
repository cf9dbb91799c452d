package org.benchtrail.ticket.theorize;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.advice.Diagnosis;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.SharedRepair;
import org.benchtrail.core.diagnosis.Words;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.test.CheckPlanned;
import org.jspecify.annotations.Nullable;

/** What a diagnosis advises to do next, in words. */
final class NextSteps {
    private static final int SHOWN = 3;
    private static final double WORTH_NAMING = 0.1;
    private static final String GONE =
            "The fault is gone, so nothing shows it to another test: leave it as it is now, watch whether it stays away";

    private final JobSheet sheet;
    private final Diagnosis diagnosis;
    private final AdvisedTest tests;

    NextSteps(JobSheet sheet, Diagnosis diagnosis) {
        this.sheet = sheet;
        this.diagnosis = diagnosis;
        this.tests = new AdvisedTest(sheet, diagnosis);
    }

    /** No test before it is known that the place is safe. */
    NextView view() {
        NextView.UsualRepair repair = usualRepair().orElse(null);
        String unsafe = unsafe();
        if (!unsafe.isEmpty()) {
            return new NextView(List.of(), "", unsafe, List.of(), repair);
        }
        return testing() ? againstRivals(repair) : new NextView(best(), lead(), act(), waits(), repair);
    }

    private boolean testing() {
        return sheet.course().step() == Step.TEST && sheet.activeTheory().isPresent();
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

    private List<NextView.Test> best() {
        return diagnosis.tests().stream().map(tests::of).toList();
    }

    private Optional<Action> next() {
        return diagnosis.next().filter(a -> a.type() == Action.Type.TEST);
    }

    /** What tells the theory under test from its rivals; the best test of all beside, where it is another one. */
    private NextView againstRivals(NextView.@Nullable UsualRepair repair) {
        List<NextView.Test> shown = new ArrayList<>();
        diagnosis.checks(sheet).stream().map(tests::of).forEach(shown::add);
        String lead = shown.isEmpty()
                ? "No listed test tells this theory from its rivals: plan a check of your own."
                : "What tells this theory from its rivals best:";
        if (shown.removeIf(this::isPlanned) && shown.isEmpty()) {
            lead = "What tells this theory from its rivals best is planned: make it.";
        }
        Optional<NextView.Test> other = next().map(tests::of)
                .filter(t -> !isPlanned(t))
                .filter(t -> shown.stream().noneMatch(s -> s.finding().equals(t.finding())));
        if (other.isPresent()) {
            while (shown.size() >= SHOWN) {
                shown.remove(shown.size() - 1);
            }
            shown.add(other.get().because("Over all causes this one is the shortest way, whatever the theory."));
        }
        return new NextView(shown, lead, shown.isEmpty() ? act() : "", waits(), repair);
    }

    /** Whether it is a check already whose result is not there yet. */
    private boolean isPlanned(NextView.Test test) {
        return sheet.ofRound(CheckPlanned.class).stream()
                .anyMatch(c -> test.finding().equals(c.fact().finding())
                        && sheet.result(c.entry()).isEmpty());
    }

    private String act() {
        Optional<Action> next = diagnosis.next();
        if (next.isEmpty() && !diagnosis.where().mended().isEmpty()) {
            return GONE + ".";
        }
        return next.filter(a -> a.type() != Action.Type.TEST).map(this::act).orElse("");
    }

    private String act(Action action) {
        return switch (action.type()) {
            case ESCALATE ->
                "No listed test or repair is worth its time: escalating or swapping the device is the shortest way now, about "
                        + Math.round(action.expectedMinutes()) + " min.";
            case PREPARE -> "Most likely " + covered(action) + "; its repair waits. " + prepared(action);
            case REPAIR -> repaired(action);
            case TEST -> "";
        };
    }

    private String repaired(Action action) {
        String text = "\u201c" + repair(action.id()) + "\u201d, about " + Math.round(action.minutes()) + " min";
        if (!diagnosis.where().mended().isEmpty()) {
            return GONE + ", and plan what is left to do, " + text + ".";
        }
        if (diagnosis.where().proven().isPresent()) {
            return "What proves it was seen: confirm and plan the repair " + text + ".";
        }
        return diagnosis.isTrial(action)
                ? "Trying it costs less than any test: plan the repair " + text + "."
                : "No other test is worth its time: confirm and plan the repair " + text + "; "
                        + Math.round(action.expectedMinutes()) + " min are expected in all.";
    }

    /** What opens the repair that comes next. */
    private String prepared(Action action) {
        List<String> first = new ArrayList<>();
        if (diagnosis.advice().preparation().isEmpty()) {
            diagnosis.advice().blocked().stream()
                    .filter(b -> b.repair().equals(action.id()))
                    .map(b -> "What it waits for: " + String.join("; ", b.reasons()) + ".")
                    .forEach(first::add);
        }
        diagnosis.advice().preparation().ifPresent(p -> {
            if (!p.needs().isEmpty()) {
                String needs = p.needs().stream().map(NextSteps::need).collect(Collectors.joining(", then "));
                first.add("First: " + needs + ", about " + Math.round(p.needMinutes()) + " min.");
            }
            p.test().ifPresent(t -> first.add("Confirm it: " + label(t.id()) + "."));
        });
        return String.join(" ", first);
    }

    /** A need of a repair or a test as an act. */
    static String need(String need) {
        return switch (need) {
            case "backup-done" -> "copy the data first";
            case "loss-accepted" -> "let the owner say that the data may be lost";
            case "change-approved" -> "get the change approved";
            case "hazard-cleared" -> "clear the hazard";
            case "outage-announced" -> "announce the outage";
            case "owner-asked" -> "ask the owner";
            case "key-at-hand" -> "get the recovery key to hand";
            case "device-isolated" -> "disconnect the device from the network";
            case "change-noted" -> "note how it is set now";
            default -> need.replace('-', ' ');
        };
    }

    private String label(String test) {
        return SheetEvidence.finding(diagnosis.model(), test)
                .map(Finding::label)
                .orElse(test);
    }

    /** What a repair covers, with its chance. */
    private String covered(Action action) {
        double p = diagnosis.covered(action);
        String name = diagnosis.cause(action.id()).map(Cause::name).orElseGet(() -> repair(action.id()));
        return name + ", " + Words.chance(p);
    }

    private String repair(String id) {
        return diagnosis
                .cause(id)
                .map(c -> c.repair().text())
                .or(() -> diagnosis.model().category().sharedRepairs().stream()
                        .filter(s -> s.id().equals(id))
                        .map(SharedRepair::repair)
                        .map(r -> r.text())
                        .findFirst())
                .orElse(id);
    }

    private String lead() {
        if (next().isEmpty()) {
            return "";
        }
        if (diagnosis.goesByWords()) {
            return "This takes what is heard in the words for granted. It weighs only once it is answered.";
        }
        Optional<Action> other = diagnosis.advice().bestOther();
        boolean saves = diagnosis.saves(next().get()).isPresent();
        if (other.isEmpty() || !saves) {
            return "";
        }
        return "With the first of them, " + Math.round(next().get().expectedMinutes())
                + " min are expected to a verified fix; without it, "
                + Math.round(other.get().expectedMinutes())
                + " min.";
    }

    private List<String> waits() {
        Stream<String> repairs = diagnosis.advice().blocked().stream()
                .filter(b ->
                        diagnosis.isCause(b.repair()) && diagnosis.ranking().probability(b.repair()) >= WORTH_NAMING)
                .map(b -> RankedCauses.name(diagnosis, b.repair()) + ": " + String.join("; ", b.reasons()));
        Stream<String> waitingTests = diagnosis.waiting().entrySet().stream()
                .map(w -> label(w.getKey()) + ": "
                        + w.getValue().stream().map(NextSteps::need).collect(Collectors.joining(", then ")));
        return Stream.concat(repairs, waitingTests).toList();
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
