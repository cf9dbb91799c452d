package org.benchtrail.ticket.theorize;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.core.advice.Diagnosis;
import org.benchtrail.core.advice.OwnChecks;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.advice.Suggestions;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.Explanation;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.PairCheck;
import org.benchtrail.core.diagnosis.Phrases;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Surprise;
import org.benchtrail.core.diagnosis.Words;
import org.benchtrail.core.diagnosis.path.PlaceWords;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.platform.Option;

/** What a diagnosis says about the causes, in words. */
final class RankedCauses {
    private static final int SHOWN = 5;
    private static final double TELLING = 1;
    private static final String UNLISTED_NAME = "something outside all of these places";
    private static final Pattern DERIVED = Pattern.compile("entry-(\\d{1,9})/.*");

    private final JobSheet sheet;
    private final Diagnosis diagnosis;
    private final Map<String, Report> answers;

    RankedCauses(JobSheet sheet, Diagnosis diagnosis) {
        this.sheet = sheet;
        this.diagnosis = diagnosis;
        this.answers = SheetEvidence.answers(diagnosis.evidence());
    }

    List<RankingView.Line> causes() {
        List<RankingView.Line> lines =
                new ArrayList<>(choices().stream().limit(SHOWN).toList());
        diagnosis.ranking().all().stream()
                .filter(r -> r.cause().equals(Model.UNLISTED))
                .map(this::line)
                .forEach(lines::add);
        return lines;
    }

    List<RankingView.Line> choices() {
        return diagnosis.ranking().all().stream()
                .filter(r -> !r.cause().equals(Model.UNLISTED))
                .map(this::line)
                .toList();
    }

    private RankingView.Line line(Ranking.Ranked ranked) {
        List<Explanation.Term> terms =
                diagnosis.explanation().waterfall(ranked.cause()).terms();
        boolean out = diagnosis.cause(ranked.cause()).stream()
                .anyMatch(cause -> sheet.ruledOut().stream()
                        .map(StandingFact::fact)
                        .map(TheoryStated::causeId)
                        .anyMatch(cause::isKnownAs));
        return new RankingView.Line(
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
        return name(diagnosis, cause);
    }

    static String name(Diagnosis diagnosis, String cause) {
        return diagnosis.cause(cause).map(Cause::name).orElse(UNLISTED_NAME);
    }

    String leading() {
        Ranking.Ranked first = diagnosis.ranking().all().get(0);
        return diagnosis.hasEvidence()
                ? "Most likely: " + name(first.cause()) + ", " + Words.chance(first.probability()) + "."
                : "No answer separates the causes yet: the order is only how frequent they are.";
    }

    String flips() {
        List<String> flips = diagnosis.explanation().flips();
        if (!diagnosis.hasEvidence()) {
            return "";
        }
        return flips.isEmpty()
                ? "No single answer, if it were wrong, would put another cause first."
                : "If this answer were wrong, another cause would come first: "
                        + String.join("; ", flips.stream().map(this::question).toList()) + ".";
    }

    List<String> warnings() {
        List<String> warnings = new ArrayList<>();
        Surprise surprise = diagnosis.surprise();
        String unlisted = new PlaceWords(diagnosis.where()).sentence();
        if (!unlisted.isEmpty()) {
            warnings.add(unlisted);
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

    /** The listed questions that make sense here, and whatever was answered. */
    List<RankingView.Question> questions() {
        Set<String> withheld = diagnosis.where().withheld().keySet();
        return diagnosis.model().category().findings().stream()
                .filter(f -> answers.containsKey(f.id()) || (isListed(f) && !withheld.contains(f.id())))
                .filter(f -> !OwnChecks.isOwn(f.id()))
                .map(this::asked)
                .toList();
    }

    private boolean isListed(Finding f) {
        return diagnosis.where().test(f.id()).isEmpty();
    }

    private RankingView.Question asked(Finding f) {
        List<Option> values = new ArrayList<>(f.values().stream()
                .map(v -> new Option(v, diagnosis.where().words(f.id(), v)))
                .toList());
        values.add(new Option(Report.UNKNOWN, "not known"));
        values.add(new Option(Report.NOT_APPLICABLE, "cannot be done here"));
        Report answer = answers.get(f.id());
        return new RankingView.Question(
                f.id(),
                f.label(),
                f.question(),
                values,
                answer == null ? "" : answer.value(),
                answer == null ? 0 : derivedFrom(answer),
                f.kind() == Finding.Kind.READING,
                answer != null && SheetEvidence.isNotNamed(answer));
    }

    /** The entry that it follows from; 0 where it was answered itself. */
    private static int derivedFrom(Report answer) {
        Matcher derived = DERIVED.matcher(answer.id());
        return derived.matches() ? Integer.parseInt(derived.group(1)) : 0;
    }

    /** What the words of the sheet suggest, the most telling first. */
    List<RankingView.SuggestedAnswer> suggestions() {
        return Suggestions.of(sheet, diagnosis).stream()
                .flatMap(s -> SheetEvidence.finding(diagnosis.model(), s.finding())
                        .map(f -> new RankingView.SuggestedAnswer(
                                s.entry(),
                                s.words(),
                                f.id(),
                                f.question(),
                                s.value().equals(Phrases.ASK) ? "" : s.value(),
                                f.values().stream()
                                        .filter(v -> !v.equals(s.value()))
                                        .map(v -> new Option(v, v))
                                        .toList(),
                                s.source()))
                        .stream())
                .toList();
    }

    private String question(String finding) {
        return SheetEvidence.finding(diagnosis.model(), finding)
                .map(Finding::label)
                .orElse(finding);
    }
}
