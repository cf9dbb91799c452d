package org.benchtrail.core.method;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.benchtrail.core.method.theorize.ObviousQuestioned;
import org.benchtrail.core.method.theorize.RankedCause;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.benchtrail.core.method.theorize.TheoryStated;

/** What theorize lacks. */
final class TheorizeGaps {
    private TheorizeGaps() {}

    static String obvious(Situation s) {
        return s.sheet().latest(ObviousQuestioned.class).isPresent()
                ? ""
                : "Question the obvious first: power, cables and seating, settings, the last change.";
    }

    /** A theory that no earlier round ruled out still stands in this one and need not be written again. */
    static String stated(Situation s) {
        boolean any =
                !s.sheet().openTheories().isEmpty() || s.sheet().activeTheory().isPresent();
        return any ? "" : "State at least one theory of probable cause.";
    }

    static String chosen(Situation s) {
        var active = s.sheet().activeTheory();
        if (active.isEmpty()) {
            return "Choose the one theory that is tested next.";
        }
        boolean another = isOvertaken(s.sheet(), active.get());
        return another && s.sheet().choice().orElseThrow().fact().reason().isEmpty()
                ? "This is not the best ranked theory: say why it is tested first."
                : "";
    }

    static String notRefuted(Situation s) {
        var active = s.sheet().activeTheory();
        if (active.isEmpty()) {
            return "";
        }
        TheoryStated theory = active.get().fact();
        boolean before = s.sheet().ruledOut().stream().anyMatch(t -> t.fact().sameCause(theory));
        return before && s.sheet().choice().orElseThrow().fact().newEvidence().isEmpty()
                ? "This theory was ruled out in an earlier round: name the new evidence, or choose another."
                : "";
    }

    /** Whether the latest ranking puts another open theory before this one. */
    private static boolean isOvertaken(JobSheet sheet, StandingFact<TheoryStated> active) {
        Optional<TheoriesRanked> ranked = sheet.latest(TheoriesRanked.class).map(StandingFact::fact);
        List<Integer> open =
                sheet.openTheories().stream().map(StandingFact::entry).toList();
        Optional<Integer> best =
                ranked.flatMap(r -> r.order().stream().filter(open::contains).findFirst());
        return best.map(entry -> entry != active.entry())
                .orElseGet(() -> ranked.flatMap(r -> bestCause(sheet, r))
                        .map(cause -> !cause.equals(active.fact().causeId()))
                        .orElse(false));
    }

    /** The first cause of the catalogue's ranking that no round ruled out. */
    private static Optional<String> bestCause(JobSheet sheet, TheoriesRanked ranked) {
        List<RankedCause> causes = Objects.requireNonNullElse(ranked.causes(), List.of());
        return causes.stream()
                .map(RankedCause::causeId)
                .filter(id -> sheet.ruledOut().stream()
                        .noneMatch(t -> id.equals(t.fact().causeId())))
                .findFirst();
    }
}
