package org.benchtrail.core.advice;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Phrase;
import org.benchtrail.core.diagnosis.Phrases;
import org.benchtrail.core.diagnosis.Said;
import org.benchtrail.core.method.JobSheet;

/** The phrases of every kind of trouble by their first word: made once for a catalogue, since every sheet is held against all of them. */
public final class KindWords {
    /** So many findings more have to be suggested of another kind. */
    private static final int CLEARLY = 2;

    private final Map<String, List<Telling>> byFirst = new HashMap<>();

    /** Those whose first word has an open end. */
    private final List<Telling> others = new ArrayList<>();

    private record Telling(String kind, String finding, Phrase phrase) {}

    public KindWords(Collection<CauseCategory> kinds) {
        kinds.forEach(kind -> kind.hints().phrases().stream()
                .filter(row -> !row.value().equals(Phrases.ASK))
                .forEach(row -> row.words().forEach(phrase -> add(new Telling(kind.id(), row.finding(), phrase)))));
    }

    private void add(Telling telling) {
        telling.phrase()
                .first()
                .map(first -> byFirst.computeIfAbsent(first, k -> new ArrayList<>()))
                .orElse(others)
                .add(telling);
    }

    /**
     * Id of the kind of trouble that the words of a sheet fit clearly better than its own: at least two findings more of it are
     * suggested. Empty if there is none; it is a hint, and changes nothing.
     */
    public Optional<String> betterKind(JobSheet sheet) {
        Map<String, Set<String>> suggested = suggested(Suggestions.said(sheet));
        String own = sheet.opened().category().catalogue();
        int here = suggested.getOrDefault(own, Set.of()).size();
        return suggested.entrySet().stream()
                .filter(kind -> kind.getValue().size() >= here + CLEARLY)
                .max(Map.Entry.comparingByValue((one, other) -> Integer.compare(one.size(), other.size())))
                .map(Map.Entry::getKey);
    }

    /** Findings by their kind. */
    private Map<String, Set<String>> suggested(Stream<Said> texts) {
        Map<String, Set<String>> found = new TreeMap<>();
        texts.forEach(said -> Stream.concat(
                        said.beginnings().stream().flatMap(word -> byFirst.getOrDefault(word, List.of()).stream()),
                        others.stream())
                .filter(telling -> telling.phrase().isIn(said))
                .forEach(telling -> found.computeIfAbsent(telling.kind(), k -> new HashSet<>())
                        .add(telling.finding())));
        return found;
    }
}
