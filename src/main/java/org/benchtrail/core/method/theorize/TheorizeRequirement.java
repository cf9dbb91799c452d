package org.benchtrail.core.method.theorize;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.ReviewQuestion;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.jspecify.annotations.Nullable;

/** What theorize asks for. */
public enum TheorizeRequirement implements Requirement {
    SIMPLE_THINGS_FIRST(
            true,
            "Simple things",
            "The simple things looked at first",
            s -> s.unlessRecorded(
                    ObviousQuestioned.class,
                    "Look at the simple things first: power, cables and seating, settings, the last change; or say why not."),
            ReviewQuestion.minor("Were the simple things looked at and not only ticked?", ObviousQuestioned.class)) {
        /** It was called so in entries from earlier times. */
        @Override
        public boolean isNamed(String code) {
            return super.isNamed(code) || code.equals("obvious-questioned");
        }
    },
    THEORY_STATED(
            false,
            "Theories",
            "At least one theory",
            TheorizeRequirement::stated,
            ReviewQuestion.minor("Would each theory explain the symptom?", TheoryStated.class)),
    THEORY_CHOSEN(
            false,
            "Choice",
            "One active theory; why, if it is not the best ranked",
            TheorizeRequirement::chosen,
            ReviewQuestion.major(
                    "Did the evidence at that time speak for this theory?", TheoryChosen.class, TheoryStated.class)),
    NOT_ALREADY_REFUTED(
            true,
            "Not ruled out",
            "Not a theory that was ruled out before, unless something is new",
            TheorizeRequirement::notRefuted,
            ReviewQuestion.major(
                    "If it had been ruled out before: is there really something new?", TheoryChosen.class)) {
        /** Who waives it knows which one is chosen. */
        @Override
        public int waivableSince(JobSheet sheet) {
            return sheet.choice().map(StandingFact::settledSince).orElse(0);
        }

        @Override
        public String unasked(Situation s) {
            return s.sheet()
                            .activeTheory()
                            .filter(t -> isRuledOut(s.sheet(), t.fact()))
                            .isPresent()
                    ? ""
                    : "No earlier round ruled this theory out.";
        }
    };

    private final Row row;

    TheorizeRequirement(
            boolean waivable, String word, String title, Function<Situation, String> gap, ReviewQuestion review) {
        row = new Row(waivable, word, title, gap, review);
    }

    @Override
    public Step step() {
        return Step.THEORIZE;
    }

    @Override
    public Row row() {
        return row;
    }

    /** A theory that no earlier round ruled out still stands in this one and need not be written again. */
    private static String stated(Situation s) {
        boolean any =
                !s.sheet().openTheories().isEmpty() || s.sheet().activeTheory().isPresent();
        return any ? "" : "State at least one theory of probable cause.";
    }

    private static String chosen(Situation s) {
        var active = s.sheet().activeTheory();
        if (active.isEmpty()) {
            return "Choose the one theory that is tested next.";
        }
        boolean another = isOvertaken(s.sheet(), active.get());
        return another && s.sheet().choice().orElseThrow().fact().reason().isEmpty()
                ? "This is not the best ranked theory: say why it is tested first."
                : "";
    }

    private static String notRefuted(Situation s) {
        var active = s.sheet().activeTheory();
        if (active.isEmpty()) {
            return "";
        }
        TheoryStated theory = active.get().fact();
        return isRuledOut(s.sheet(), theory)
                        && s.sheet().choice().orElseThrow().fact().newEvidence().isEmpty()
                ? "This theory was ruled out in an earlier round: name the new evidence, or choose another."
                : "";
    }

    private static boolean isRuledOut(JobSheet sheet, TheoryStated theory) {
        return sheet.ruledOut().stream().anyMatch(t -> t.fact().sameCause(theory));
    }

    /** A theory is as good as the best if it is less than this behind it, dB. */
    private static final double AS_GOOD = 3;

    /** Whether the latest ranking puts another open theory clearly before this one, and advised no test that speaks for it. */
    private static boolean isOvertaken(JobSheet sheet, StandingFact<TheoryStated> active) {
        Optional<TheoriesRanked> ranked = sheet.latest(TheoriesRanked.class).map(StandingFact::fact);
        List<Integer> open =
                sheet.openTheories().stream().map(StandingFact::entry).toList();
        Optional<Integer> best =
                ranked.flatMap(r -> r.order().stream().filter(open::contains).findFirst());
        return best.map(entry -> entry != active.entry())
                .orElseGet(() -> ranked.flatMap(r -> bestCause(sheet, r)
                                .map(cause -> !cause.equals(active.fact().causeId())
                                        && !isNear(r, cause, active.fact().causeId())))
                        .orElse(false));
    }

    private static boolean isNear(TheoriesRanked ranked, String best, @Nullable String cause) {
        double behind = 10 * Math.log10(shown(ranked, best) / shown(ranked, cause));
        return behind < AS_GOOD || (cause != null && cause.equals(ranked.favoured()));
    }

    /** 0 where it was not shown. A theory of one's own is among what the catalogue does not list. */
    private static double shown(TheoriesRanked ranked, @Nullable String cause) {
        return Objects.requireNonNullElse(ranked.causes(), List.<RankedCause>of()).stream()
                .filter(c -> cause == null ? c.unlisted() : c.causeId().equals(cause))
                .mapToDouble(c -> Double.parseDouble(c.probability()))
                .sum();
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
