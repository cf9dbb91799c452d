package org.benchtrail.ticket;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.advice.Diagnosis;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Advice;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.Explanation;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.PairCheck;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Risk;
import org.benchtrail.core.diagnosis.Surprise;
import org.benchtrail.core.diagnosis.Words;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.platform.Option;
import org.jspecify.annotations.Nullable;

/** The ranked causes of a ticket in plain words: why, why not, what would change it, and what to do next. */
public final class RankingView {
    private static final int SHOWN = 5;
    private static final double TELLING = 1;
    private static final String UNLISTED_NAME = "something not listed";

    private final JobSheet sheet;
    private final Diagnosis diagnosis;
    private final Diagnoses.Dated dated;
    private final Map<String, Report> answers;

    RankingView(JobSheet sheet, Diagnoses.Dated dated) {
        this.sheet = sheet;
        this.dated = dated;
        this.diagnosis = dated.diagnosis();
        this.answers = SheetEvidence.answers(diagnosis.evidence());
    }

    /** Where the percentages come from. */
    public String label() {
        return dated.label() + "; catalogue version " + dated.version();
    }

    public boolean rested() {
        return diagnosis.hasEvidence();
    }

    /**
     * A cause with its place.
     *
     * @param percent of a bar's length, 1 to 99
     * @param why what speaks for it, strongest first
     * @param whyNot what speaks against it, strongest first
     * @param out whether an earlier round ruled it out
     */
    public record Line(
            String id, String name, String chance, long percent, List<String> why, List<String> whyNot, boolean out) {}

    /** The first five, and what is not listed. */
    public List<Line> causes() {
        List<Ranking.Ranked> all = diagnosis.ranking().all();
        List<Line> lines = new ArrayList<>(all.stream()
                .filter(r -> !r.cause().equals(Model.UNLISTED))
                .limit(SHOWN)
                .map(this::line)
                .toList());
        all.stream()
                .filter(r -> r.cause().equals(Model.UNLISTED))
                .map(this::line)
                .forEach(lines::add);
        return lines;
    }

    /** Every listed cause, the likeliest first, to choose a theory from. */
    public List<Line> choices() {
        return diagnosis.ranking().all().stream()
                .filter(r -> !r.cause().equals(Model.UNLISTED))
                .map(this::line)
                .toList();
    }

    private Line line(Ranking.Ranked ranked) {
        List<Explanation.Term> terms =
                diagnosis.explanation().waterfall(ranked.cause()).terms();
        boolean out = sheet.ruledOut().stream()
                .map(StandingFact::fact)
                .map(TheoryStated::causeId)
                .anyMatch(ranked.cause()::equals);
        return new Line(
                ranked.cause(),
                name(ranked.cause()),
                Words.chance(ranked.probability()),
                Math.max(1, Math.min(99, Math.round(100 * ranked.probability()))),
                reasons(terms, 1),
                reasons(terms, -1),
                out);
    }

    private List<String> reasons(List<Explanation.Term> terms, int sign) {
        return terms.stream()
                .filter(t -> t.origin() != Explanation.Origin.PRIOR && sign * t.decibans() >= TELLING)
                .sorted(Comparator.comparingDouble(t -> -sign * t.decibans()))
                .map(t -> reason(t) + " " + t.words())
                .toList();
    }

    private String reason(Explanation.Term term) {
        if (term.origin() == Explanation.Origin.FAILED_REPAIR) {
            return "That '" + name(term.id()) + "' was tried or ruled out";
        }
        Report answer = answers.get(term.id());
        return "\u201c" + question(term.id()) + "\u201d: " + (answer == null ? "" : answer.value());
    }

    private String name(String cause) {
        return diagnosis.cause(cause).map(Cause::name).orElse(UNLISTED_NAME);
    }

    /** How the leader stands, in one sentence. */
    public String leading() {
        Ranking.Ranked first = diagnosis.ranking().all().get(0);
        return rested()
                ? "Most likely: " + name(first.cause()) + ", " + Words.chance(first.probability()) + "."
                : "Nothing recorded bears on the causes yet: the order is only how frequent they are.";
    }

    /** What would change the order. */
    public String flips() {
        List<String> flips = diagnosis.explanation().flips();
        if (!rested()) {
            return "";
        }
        return flips.isEmpty()
                ? "No single answer, if it were wrong, would put another cause first."
                : "If this answer were wrong, another cause would come first: "
                        + String.join("; ", flips.stream().map(this::question).toList()) + ".";
    }

    /** What is odd about the evidence; empty if nothing is. */
    public List<String> warnings() {
        List<String> warnings = new ArrayList<>();
        Surprise surprise = diagnosis.surprise();
        if (surprise.level() != Surprise.Level.NONE) {
            warnings.add(surprise.level().sentence());
        }
        surprise.contradictions().stream()
                .filter(Surprise.Contradiction::offered)
                .map(c -> "You have two different answers to \u201c" + question(c.finding())
                        + "\u201d: please look again.")
                .forEach(warnings::add);
        PairCheck.of(diagnosis.ranking(), surprise)
                .map(pair -> pair.sentence(diagnosis.model()))
                .ifPresent(warnings::add);
        return warnings;
    }

    // ---- what to do next

    /**
     * The next test, ready to be made a check.
     *
     * @param minutes of the test itself
     * @param saves whole minutes it saves on average; empty if the saving is not worth naming
     * @param values what can come out, for a question that is answered at once
     * @param reading whether it is measured
     * @param expectation what is seen if the active theory is right; empty while there is none
     */
    public record Test(
            String finding,
            String question,
            long minutes,
            String saves,
            List<String> values,
            boolean reading,
            String unit,
            String expectation,
            boolean invasive,
            List<Caution> cautions) {}

    /** The test that is advised; null if to act is better than to test. */
    public @Nullable Test next() {
        return diagnosis
                .advice()
                .recommended()
                .filter(a -> a.type() == Action.Type.TEST)
                .map(this::test)
                .orElse(null);
    }

    /** The tests after the advised one. */
    public List<Test> others() {
        Optional<Action> first = diagnosis.advice().recommended();
        return diagnosis.advice().bestThree().stream()
                .filter(a -> a.type() == Action.Type.TEST && !first.equals(Optional.of(a)))
                .map(this::test)
                .toList();
    }

    private Test test(Action action) {
        Finding finding = SheetEvidence.finding(diagnosis.model(), action.id()).orElseThrow();
        Advice advice = diagnosis.advice();
        Set<Caution> cautions = finding.risk() == Risk.NONE ? Set.of() : Caution.raisedBy(finding.question());
        return new Test(
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

    /** What the active theory lets expect of a finding. */
    String expectation(Finding finding) {
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

    /** What is advised where no test is. */
    public String act() {
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
        return "No further test pays: confirm and plan the repair \u201c" + text + "\u201d, about "
                + Math.round(action.minutes()) + " min; " + Math.round(action.expectedMinutes())
                + " min are expected in all.";
    }

    /** Why acting at once is not advised, where a test is. */
    public String whyNotAct() {
        Advice advice = diagnosis.advice();
        if (next() == null || advice.bestOther().isEmpty()) {
            return "";
        }
        Action other = advice.bestOther().get();
        Action best = advice.recommended().orElseThrow();
        return "With this test first, " + Math.round(best.expectedMinutes())
                + " min are expected to a verified fix; without it, " + Math.round(other.expectedMinutes()) + " min.";
    }

    /** Repairs that wait for something, with what they wait for. */
    public List<String> held() {
        return diagnosis.advice().blocked().stream()
                .filter(b -> diagnosis.ranking().probability(b.repair()) >= 0.1)
                .map(b -> name(b.repair()) + ": " + String.join("; ", b.reasons()))
                .toList();
    }

    /** The catalogue's repair for a cause. */
    public record UsualRepair(String text, long minutes, String caution, boolean irreversible) {}

    /** For the active theory; null if it is not in the catalogue. */
    public @Nullable UsualRepair usualRepair() {
        return sheet.activeTheory()
                .flatMap(t -> Optional.ofNullable(t.fact().causeId()))
                .flatMap(diagnosis::cause)
                .map(c -> new UsualRepair(
                        c.repair().text(),
                        Math.round(c.repair().minutes()),
                        c.caution().equals("none") ? "" : c.caution(),
                        !c.repair().reversible()))
                .orElse(null);
    }

    // ---- what is known

    /** A question of the catalogue with the answer that stands; empty answer if none does. */
    public record Question(String id, String text, List<Option> values, String answer, boolean reading) {}

    public List<Question> questions() {
        return diagnosis.model().category().findings().stream().map(this::asked).toList();
    }

    /** Those that are answered by looking or asking. */
    public List<Question> answerable() {
        return questions().stream().filter(q -> !q.reading()).toList();
    }

    private Question asked(Finding f) {
        List<Option> values =
                new ArrayList<>(f.values().stream().map(v -> new Option(v, v)).toList());
        values.add(new Option(Report.UNKNOWN, "not known"));
        Report answer = answers.get(f.id());
        return new Question(
                f.id(), f.question(), values, answer == null ? "" : answer.value(), f.kind() == Finding.Kind.READING);
    }

    /** The readings that the category's causes are told apart by. */
    public List<Option> measurable() {
        return questions().stream()
                .filter(Question::reading)
                .map(q -> new Option(q.id(), q.text()))
                .toList();
    }

    private String question(String finding) {
        return SheetEvidence.finding(diagnosis.model(), finding)
                .map(Finding::question)
                .orElse(finding);
    }
}
