package org.benchtrail.knowledge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.PersistenceException;
import jakarta.transaction.Transactional;
import java.sql.SQLException;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.ticket.Sights;
import org.jspecify.annotations.Nullable;

/** Search by words over known causes and cases: ranked, by word beginnings, forgiving of typing errors. */
@ApplicationScoped
public class KnowledgeSearch {
    static final int PER_PAGE = 10;
    /** What the database says when a statement was ended by its time limit. */
    private static final String TOO_LONG = "57014";

    private static final int PAGES = SearchIndex.SHOWN / PER_PAGE;

    private final WordSearch words;
    private final ResultRows rows;
    private final Sights sights;

    KnowledgeSearch(WordSearch words, ResultRows rows, Sights sights) {
        this.sights = sights;
        this.words = words;
        this.rows = rows;
    }

    /**
     * Looks for words. All of them first; if that finds little, with the spelling of mistyped ones put right; if nothing has
     * all of them, for any.
     *
     * @param category null for any
     * @param page from 0
     * @throws Invalid if the page is beyond the last one that is ever shown, or the text cannot be searched for
     */
    @Transactional
    public SearchResults find(String typed, @Nullable Category category, int page, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        sights.pass(category, actor);
        new Invalid.Collector()
                .require(page >= 0 && page < PAGES, "page", "Pages go from 1 to " + PAGES + ": use more words.")
                .require(PlainText.isText(typed), "q", "Remove the control characters: only text can be searched for.")
                .throwIfAny();
        try {
            return find(typed, category, page);
        } catch (PersistenceException e) {
            if (Stream.iterate((Throwable) e, Objects::nonNull, Throwable::getCause)
                    .anyMatch(cause -> cause instanceof SQLException sql && TOO_LONG.equals(sql.getSQLState()))) {
                throw new Invalid("q", "That took too long: use rarer words, or choose the kind of trouble.");
            }
            throw e;
        }
    }

    /** Within the caller's transaction. */
    SearchResults find(String typed, @Nullable Category category, int page) {
        QueryTerms terms = words.begin(typed);
        if (terms.isEmpty()) {
            return new SearchResults(List.of(), List.of(), "", false, 0, 0, true, page, false);
        }
        Both best = all(terms, category, "");
        if (WordSearch.isLittle(best.total())) {
            Map<String, List<String>> better = words.mistyped(terms);
            if (!better.isEmpty()) {
                terms = terms.corrected(better);
                best = best.or(all(terms, category, spelling(better.values())));
            }
        }
        boolean loose = best.total() == 0 && terms.terms().size() > 1;
        if (loose) {
            best = any(terms, category, best.spelling());
        }
        return best.read(rows, loose, page);
    }

    private Both all(QueryTerms terms, @Nullable Category category, String spelling) {
        return new Both(
                words.all(SearchIndex.CAUSES, terms, category),
                words.all(SearchIndex.CASES, terms, category),
                terms.all(),
                spelling);
    }

    private Both any(QueryTerms terms, @Nullable Category category, String spelling) {
        return new Both(
                words.any(SearchIndex.CAUSES, terms, category),
                words.any(SearchIndex.CASES, terms, category),
                terms.any(),
                spelling);
    }

    private static String spelling(Collection<List<String>> words) {
        return words.stream().map(w -> String.join(" or ", w)).collect(Collectors.joining(", "));
    }

    /** What both indexes have. */
    private record Both(RankedKeys causes, RankedKeys cases, String query, String spelling) {
        int total() {
            return causes.total() + cases.total();
        }

        /** The one that found more; of two that found nothing, the corrected one, so that its words are tried further. */
        Both or(Both corrected) {
            return corrected.total() > total() || total() == 0 ? corrected : this;
        }

        SearchResults read(ResultRows rows, boolean loose, int page) {
            return new SearchResults(
                    rows.causes(causes.page(page, PER_PAGE), query),
                    rows.cases(cases.page(page, PER_PAGE), query),
                    spelling,
                    loose && total() > 0,
                    causes.total(),
                    cases.total(),
                    cases.whole(),
                    page,
                    causes.continues(page, PER_PAGE) || cases.continues(page, PER_PAGE));
        }
    }
}
