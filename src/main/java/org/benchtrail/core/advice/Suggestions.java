package org.benchtrail.core.advice;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Phrase;
import org.benchtrail.core.diagnosis.Phrases;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Said;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.diagnosis.path.CategoryPaths;
import org.benchtrail.core.diagnosis.path.Cues;
import org.benchtrail.core.diagnosis.path.GenericTest;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Wording;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.test.ResultRecorded;

/**
 * What the words of a job sheet suggest: answers that weigh nothing until somebody gives them, and what is looked at first.
 * How phrases are found: {@link Phrase}.
 */
public final class Suggestions {
    /** Most that are shown beside one entry. */
    public static final int MOST = 5;

    private static final String SUPPOSED = "words/";

    private Suggestions() {}

    /**
     * An answer worth giving.
     *
     * @param entry whose words suggest it
     * @param words the phrase that was found
     * @param value one of the finding's values, or {@link Phrases#ASK}
     * @param source how the answer would be known
     */
    public record Suggestion(int entry, String words, String finding, String value, Source source) {}

    /** The most telling first, at most five beside one entry, each finding once; none that was answered. */
    public static List<Suggestion> of(JobSheet sheet, Diagnosis diagnosis) {
        Set<String> answered = answered(diagnosis.evidence());
        List<Suggestion> all = new ArrayList<>();
        for (StandingFact<?> noted : sheet.facts()) {
            all.addAll(beside(noted, diagnosis, answered));
        }
        Map<String, Suggestion> best = new HashMap<>();
        all.forEach(s -> best.merge(s.finding(), s, Suggestions::better));
        return all.stream().filter(best::containsValue).toList();
    }

    /** The evidence of a diagnosis and what the words suggest beside it; unchanged once somebody has answered or checked something. */
    static Evidence supposed(JobSheet sheet, Diagnosis diagnosis) {
        Evidence evidence = diagnosis.evidence();
        if (!sheet.all(FindingAnswered.class).isEmpty()
                || !sheet.all(ResultRecorded.class).isEmpty()) {
            return evidence;
        }
        for (Suggestion s : of(sheet, diagnosis)) {
            if (!s.value().equals(Phrases.ASK)) {
                evidence = evidence.with(
                        Report.of(SUPPOSED + s.finding(), s.finding(), s.value(), s.source(), Instant.EPOCH));
            }
        }
        return evidence;
    }

    /** Whether a report only supposes that the words are meant so. */
    static boolean isSupposed(Report report) {
        return report.id().startsWith(SUPPOSED);
    }

    /**
     * What the words point to: questions that they raise and nobody has answered, and the segments that they name. An answer that
     * they suggest stands beside for one tap; it is no test.
     */
    static Cues cues(JobSheet sheet, CauseCategory category, CategoryPaths paths, Evidence evidence) {
        Set<String> answered = answered(evidence);
        Set<String> findings = new HashSet<>();
        Set<String> segments = new HashSet<>();
        said(sheet).forEach(said -> {
            category.hints().phrases().stream()
                    .filter(p -> p.value().equals(Phrases.ASK) && !answered.contains(p.finding()))
                    .filter(p -> isAnyIn(p.words(), said))
                    .forEach(p -> findings.add(p.finding()));
            paths.words().forEach((segment, words) -> {
                if (isAnyIn(words, said)) {
                    segments.add(segment);
                }
            });
        });
        return new Cues(findings, segments, isFleeting(sheet));
    }

    private static boolean isFleeting(JobSheet sheet) {
        return sheet.inForce(SymptomRecorded.class).stream()
                        .anyMatch(s -> s.fact().intermittent())
                || sheet.latest(ReproductionTried.class)
                        .filter(r -> r.fact().outcome() == Reproduction.INTERMITTENT)
                        .isPresent();
    }

    private static boolean isAnyIn(List<Phrase> phrases, Said said) {
        return phrases.stream().anyMatch(p -> p.isIn(said));
    }

    /** Findings that somebody answered. */
    private static Set<String> answered(Evidence evidence) {
        return evidence.reports().stream()
                .filter(r -> !r.id().contains("/"))
                .map(Report::finding)
                .collect(Collectors.toSet());
    }

    /** Findings that the words of a sheet suggest or raise, whether answered or not. */
    static Set<String> suggested(JobSheet sheet, CauseCategory category) {
        return said(sheet)
                .flatMap(text -> matches(category.hints().phrases(), text).stream())
                .map(Match::finding)
                .collect(Collectors.toSet());
    }

    /** Every wording of the sheet. */
    static Stream<Said> said(JobSheet sheet) {
        return sheet.facts().stream()
                .flatMap(f -> f.fact().wordings().stream())
                .map(Wording::text)
                .map(Said::of);
    }

    private static List<Suggestion> beside(StandingFact<?> noted, Diagnosis diagnosis, Set<String> answered) {
        List<Suggestion> found = new ArrayList<>();
        Set<String> seen = new HashSet<>(answered);
        for (Wording wording : noted.fact().wordings()) {
            for (Match match : matches(diagnosis.model().category().hints().phrases(), Said.of(wording.text()))) {
                if (seen.add(match.finding())) {
                    found.add(new Suggestion(
                            noted.entry(), match.words(), match.finding(), match.value(), wording.source()));
                }
            }
        }
        if (seen.add(GenericTest.LOG)) {
            named(noted, diagnosis).ifPresent(found::add);
        }
        found.sort(Comparator.comparingDouble((Suggestion s) -> -tells(s, diagnosis))
                .thenComparing(Suggestion::finding));
        return found.subList(0, Math.min(MOST, found.size()));
    }

    /** The one place that a stretch of a log names; empty if it names none, or several. */
    private static Optional<Suggestion> named(StandingFact<?> noted, Diagnosis diagnosis) {
        if (!(noted.fact() instanceof ExtractRecorded extract)) {
            return Optional.empty();
        }
        Said said = Said.of(extract.text());
        List<Suggestion> named = diagnosis.where().nameable().entrySet().stream()
                .flatMap(place -> place.getValue().stream()
                        .filter(words -> words.isIn(said))
                        .limit(1)
                        .map(words -> new Suggestion(
                                noted.entry(), words.text(), GenericTest.LOG, place.getKey(), Source.SEEN)))
                .toList();
        return named.size() == 1 ? Optional.of(named.get(0)) : Optional.empty();
    }

    /** An answer before a question, then what is known better, then what was said first. */
    private static Suggestion better(Suggestion one, Suggestion other) {
        boolean ask = one.value().equals(Phrases.ASK);
        boolean otherAsk = other.value().equals(Phrases.ASK);
        boolean known = other.source().reliability() > one.source().reliability();
        return ask == otherAsk ? (known ? other : one) : ask ? other : one;
    }

    private static double tells(Suggestion s, Diagnosis diagnosis) {
        return s.value().equals(Phrases.ASK) ? 0 : diagnosis.moves(s.finding(), s.value());
    }

    /** A phrase that was found. */
    record Match(String finding, String value, String words) {}

    /** One for each finding that the text suggests. */
    static List<Match> matches(List<Phrases> phrases, Said said) {
        List<Match> found = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (Phrases row : phrases) {
            for (Phrase phrase : row.words()) {
                if (phrase.isIn(said) && seen.add(row.finding() + " " + row.value())) {
                    found.add(new Match(row.finding(), row.value(), phrase.text()));
                }
            }
        }
        found.sort(Comparator.comparing(match -> match.value().equals(Phrases.ASK)));
        return found;
    }
}
