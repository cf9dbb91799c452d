package org.benchtrail.core.advice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Phrases;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Wording;

/**
 * Answers that the words of a job sheet suggest. They weigh nothing until somebody gives the answer.
 *
 * <p>A phrase is a run of whole words within a clause; the last may have s or es behind it, or a star stands for the rest of
 * it. It does not count where one of the three words before it denies, unless it begins with such a word itself.
 */
public final class Suggestions {
    /** Most that are shown beside one entry. */
    public static final int MOST = 5;

    private static final int DENIED_WITHIN = 3;
    private static final int CLEARLY = 2;
    private static final Set<String> DENYING = Set.of("no", "not", "never", "without", "nor");

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

    /** The most telling first, at most five beside one entry; none for a finding that was answered. */
    public static List<Suggestion> of(JobSheet sheet, Diagnosis diagnosis) {
        Set<String> answered = new HashSet<>();
        diagnosis.evidence().reports().stream()
                .filter(r -> !r.id().contains("/"))
                .map(Report::finding)
                .forEach(answered::add);
        List<Suggestion> all = new ArrayList<>();
        for (StandingFact<?> noted : sheet.facts()) {
            all.addAll(beside(noted, diagnosis, answered));
        }
        return all;
    }

    /**
     * Id of the kind of trouble that the words of a sheet fit clearly better than its own: at least two findings more of it are
     * suggested. Empty if there is none; it is a hint, and changes nothing.
     */
    public static Optional<String> betterKind(JobSheet sheet, Collection<CauseCategory> all) {
        String own = sheet.opened().category().catalogue();
        Map<String, Long> fits = new TreeMap<>();
        all.forEach(c -> fits.put(c.id(), fits(sheet, c)));
        long here = fits.getOrDefault(own, 0L);
        return fits.entrySet().stream()
                .filter(e -> e.getValue() >= here + CLEARLY)
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey);
    }

    /** How many findings of a kind the words suggest. */
    private static long fits(JobSheet sheet, CauseCategory category) {
        Stream<String> texts = Stream.concat(
                Stream.of(sheet.opened().title()),
                sheet.facts().stream()
                        .flatMap(f -> f.fact().wordings().stream())
                        .map(Wording::text));
        return texts.flatMap(text -> matches(category.hints().phrases(), text).stream())
                .filter(match -> !match.value().equals(Phrases.ASK))
                .map(Match::finding)
                .distinct()
                .count();
    }

    private static List<Suggestion> beside(StandingFact<?> noted, Diagnosis diagnosis, Set<String> answered) {
        List<Suggestion> found = new ArrayList<>();
        Set<String> seen = new HashSet<>(answered);
        for (Wording wording : noted.fact().wordings()) {
            for (Match match : matches(diagnosis.model().category().hints().phrases(), wording.text())) {
                if (seen.add(match.finding())) {
                    found.add(new Suggestion(
                            noted.entry(), match.words(), match.finding(), match.value(), wording.source()));
                }
            }
        }
        found.sort(Comparator.comparingDouble((Suggestion s) -> -tells(s, diagnosis))
                .thenComparing(Suggestion::finding));
        return found.subList(0, Math.min(MOST, found.size()));
    }

    private static double tells(Suggestion s, Diagnosis diagnosis) {
        return s.value().equals(Phrases.ASK) ? 0 : Math.abs(diagnosis.tells(s.finding(), s.value()));
    }

    /** A phrase that was found. */
    record Match(String finding, String value, String words) {}

    /** One for each finding that the text suggests. */
    static List<Match> matches(List<Phrases> phrases, String text) {
        List<List<String>> clauses = clauses(text);
        List<Match> found = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (Phrases row : phrases) {
            for (String phrase : row.words()) {
                List<String> words = words(phrase);
                if (clauses.stream().anyMatch(clause -> holds(clause, words))
                        && seen.add(row.finding() + " " + row.value())) {
                    found.add(new Match(row.finding(), row.value(), phrase));
                }
            }
        }
        return found;
    }

    private static List<List<String>> clauses(String text) {
        return Arrays.stream(
                        text.toLowerCase(Locale.ROOT).replace('\u2019', '\'').split("[,;:\\n\\r]|\\.(?=\\s|$)"))
                .map(Suggestions::words)
                .filter(words -> !words.isEmpty())
                .toList();
    }

    private static List<String> words(String text) {
        return Arrays.stream(text.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}.+'*-]+"))
                .filter(word -> !word.isEmpty())
                .toList();
    }

    private static boolean holds(List<String> clause, List<String> phrase) {
        for (int at = 0; at + phrase.size() <= clause.size(); at++) {
            if (isAt(clause, at, phrase) && (denies(phrase.get(0)) || !isDenied(clause, at))) {
                return true;
            }
        }
        return false;
    }

    private static boolean isAt(List<String> clause, int at, List<String> phrase) {
        int last = phrase.size() - 1;
        for (int k = 0; k < last; k++) {
            if (!clause.get(at + k).equals(phrase.get(k))) {
                return false;
            }
        }
        String asked = phrase.get(last);
        String said = clause.get(at + last);
        return asked.endsWith("*")
                ? said.startsWith(asked.substring(0, asked.length() - 1))
                : said.equals(asked) || said.equals(asked + "s") || said.equals(asked + "es");
    }

    private static boolean isDenied(List<String> clause, int at) {
        return clause.subList(Math.max(0, at - DENIED_WITHIN), at).stream().anyMatch(Suggestions::denies);
    }

    private static boolean denies(String word) {
        return DENYING.contains(word) || word.endsWith("n't");
    }
}
