package org.benchtrail.knowledge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.benchtrail.catalogue.CatalogueVersion;
import org.benchtrail.core.diagnosis.Likeness;
import org.benchtrail.core.diagnosis.path.Localiser;
import org.benchtrail.core.diagnosis.path.Pinned;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.ticket.KnownCauses;
import org.jspecify.annotations.Nullable;

/** What the knowledge base has for a ticket: by its cause, by what its device had before, by its findings and where it is, by its words, in this order. */
@ApplicationScoped
class MatchingCauses implements KnownCauses {
    private static final int MOST = 5;

    private final CauseRows causes;
    private final AlikeCases alikeCases;
    private final WordSearch search;
    private final ResultRows results;
    private final FindingWords findingWords;

    MatchingCauses(
            CauseRows causes, AlikeCases alikeCases, WordSearch search, ResultRows results, FindingWords findingWords) {
        this.causes = causes;
        this.alikeCases = alikeCases;
        this.search = search;
        this.results = results;
        this.findingWords = findingWords;
    }

    @Override
    @Transactional
    public List<Line> like(String words, @Nullable Category category, Collection<String> findings, int most) {
        Likeness.Traits found = new Likeness.Traits(Set.copyOf(findings), Set.of(), "");
        return first(most, Stream.of(byTraits(found, category, Optional.empty()), byWords(words, category)));
    }

    @Override
    @Transactional
    public List<Line> ofCause(String causeId) {
        return causes.ofCatalogue(findingWords.names(causeId)).stream()
                .map(c -> line(c, "the same cause of the catalogue"))
                .toList();
    }

    @Override
    @Transactional
    public List<Line> of(JobSheet sheet) {
        Category category = sheet.opened().category();
        CatalogueVersion version = findingWords.inForce();
        Optional<Localiser> places = version.localiser(category.catalogue());
        List<Line> likeIt = first(
                MOST,
                Stream.of(
                        byDevice(sheet.opened()),
                        byTraits(traits(sheet, version, places), category, places),
                        byWords(words(sheet), category)));
        return sheet.latestOfRound(CauseNamed.class)
                .map(named -> {
                    String id = SheetDigest.causeId(sheet, named.fact());
                    List<Line> same = id == null ? List.of() : ofCause(id);
                    return first(MOST, Stream.of(same, byWords(named.fact().cause(), category), likeIt));
                })
                .orElse(likeIt);
    }

    /** Where it is on its path is what the sheet says, never what a ranking of it would tell. */
    private static Likeness.Traits traits(JobSheet sheet, CatalogueVersion version, Optional<Localiser> places) {
        List<String> findings = SheetDigest.findings(sheet, FindingWords.heard(sheet, version));
        String cause = sheet.activeTheory().map(t -> t.fact().causeId()).orElse(null);
        return new Likeness.Traits(
                Set.copyOf(findings),
                places.map(p -> Pinned.segments(p, cause, findings)).orElse(Set.of()),
                sheet.opened().place());
    }

    private static String words(JobSheet sheet) {
        StringBuilder words = new StringBuilder(sheet.opened().title());
        sheet.all(SymptomRecorded.class)
                .forEach(s -> words.append(' ').append(s.fact().observable()));
        return words.toString();
    }

    /** The known causes behind the cases that are most like it. */
    private List<Line> byTraits(Likeness.Traits ticket, @Nullable Category category, Optional<Localiser> places) {
        Map<Long, AlikeCases.AlikeCase> best = new LinkedHashMap<>();
        for (AlikeCases.AlikeCase like : alikeCases.like(ticket, category, places)) {
            if (like.known() != null && best.size() < MOST) {
                best.putIfAbsent(like.known(), like);
            }
        }
        return shown(best, like -> why(like, places));
    }

    private String why(AlikeCases.AlikeCase like, Optional<Localiser> places) {
        List<String> why = new ArrayList<>();
        if (!like.shared().isEmpty()) {
            why.add("same findings: " + findingWords.all(like.shared()));
        }
        places.map(Localiser::paths).stream()
                .flatMap(p -> p.segments().stream())
                .filter(s -> like.segments().contains(s.id()))
                .forEach(s -> why.add("in the same part: " + s.name()));
        if (like.here()) {
            why.add("in the same place");
        }
        return String.join("; ", why);
    }

    /** Those that are not retired, in their order, each with why it is shown. */
    private <C> List<Line> shown(Map<Long, C> found, Function<C, String> why) {
        List<Line> lines = new ArrayList<>();
        found.forEach((id, by) -> causes.findByIdOptional(id)
                .filter(c -> c.state != CauseState.RETIRED)
                .ifPresent(c -> lines.add(line(c, why.apply(by)))));
        return lines;
    }

    /** The same trouble comes back to the same device: what cured it there is looked at first. */
    private List<Line> byDevice(Opened opened) {
        Map<Long, Integer> latest = new LinkedHashMap<>();
        alikeCases
                .ofDevice(opened.device(), opened.place(), opened.ticket(), MOST)
                .forEach(c -> latest.putIfAbsent(c.known(), c.serial()));
        return shown(latest, serial -> "on this device before, ticket " + new TicketNumber(serial));
    }

    private List<Line> byWords(String words, @Nullable Category category) {
        return ranked(SearchIndex.CAUSES, words, category).stream()
                .map(causes::present)
                .map(c -> line(c, "like words"))
                .toList();
    }

    @Override
    @Transactional
    public List<Solved> solved(String words, int most) {
        List<Long> serials = ranked(SearchIndex.CASES, words, null);
        return results.cases(serials.subList(0, Math.min(most, serials.size())), "").stream()
                .map(c -> new Solved(
                        c.number(), c.title().toString(), c.device(), c.cause().toString()))
                .toList();
    }

    /** First what has every word, then what has any; short words tell too little to go by. */
    private List<Long> ranked(SearchIndex index, String typed, @Nullable Category category) {
        List<String> telling =
                SearchText.words(typed).stream().filter(w -> w.length() >= 4).toList();
        QueryTerms terms = search.begin(String.join(" ", telling));
        if (terms.isEmpty()) {
            return List.of();
        }
        List<Long> all = search.all(index, terms, category).keys();
        List<Long> any = all.size() >= MOST || terms.terms().size() == 1
                ? List.of()
                : search.any(index, terms, category).keys();
        return Stream.concat(all.stream(), any.stream()).distinct().limit(MOST).toList();
    }

    private static List<Line> first(int most, Stream<List<Line>> lists) {
        Map<Long, Line> lines = new LinkedHashMap<>();
        lists.flatMap(List::stream).forEach(line -> lines.putIfAbsent(line.id(), line));
        return lines.values().stream().limit(most).toList();
    }

    private static Line line(KnownCause cause, String shared) {
        String often = cause.confirmations == 0
                ? cause.state.words()
                : cause.state.words() + ", found true " + HowOften.times(cause.confirmations);
        return new Line(cause.number(), cause.title, shared + "; " + often);
    }
}
