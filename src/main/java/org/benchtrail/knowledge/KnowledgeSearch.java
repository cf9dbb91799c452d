package org.benchtrail.knowledge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.jspecify.annotations.Nullable;

/** Search by words over known causes and cases: ranked, by word beginnings, forgiving of typing errors. */
@ApplicationScoped
public class KnowledgeSearch {
    static final int PER_PAGE = 10;
    private static final int PAGES = Shelf.SHOWN / PER_PAGE;

    private final DataSource database;

    KnowledgeSearch(DataSource database) {
        this.database = database;
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
    public Found find(String typed, @Nullable Category category, int page, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        new Invalid.Collector()
                .require(page >= 0 && page < PAGES, "page", "Pages go from 1 to " + PAGES + ": use more words.")
                .require(Plain.isText(typed), "q", "Remove the control characters: only text can be searched for.")
                .throwIfAny();
        try (Connection connection = database.getConnection()) {
            return find(connection, typed, category, page);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    static Found find(Connection connection, String typed, @Nullable Category category, int page) throws SQLException {
        Ranker ranker = new Ranker(connection);
        Terms terms = ranker.terms(typed);
        if (terms.isEmpty()) {
            return new Found(List.of(), List.of(), "", false, 0, 0, true, page, false);
        }
        Both best = Both.of(ranker, terms.all(), category, true, "");
        if (Ranker.isLittle(best.total())) {
            Map<String, List<String>> better = ranker.mistyped(terms);
            if (!better.isEmpty()) {
                terms = terms.corrected(better);
                best = best.or(Both.of(ranker, terms.all(), category, true, spelling(better.values())));
            }
        }
        boolean loose = best.total() == 0 && terms.terms().size() > 1;
        if (loose) {
            best = Both.of(ranker, terms.any(), category, false, best.spelling());
        }
        return best.read(new Hits(connection), loose, page);
    }

    private static String spelling(Collection<List<String>> words) {
        return words.stream().map(w -> String.join(" or ", w)).collect(Collectors.joining(", "));
    }

    /** What both shelves have. */
    private record Both(Ranked causes, Ranked cases, String query, String spelling) {
        static Both of(Ranker ranker, String query, @Nullable Category category, boolean covered, String spelling)
                throws SQLException {
            return new Both(
                    ranker.rank(Shelf.CAUSES, query, category, covered),
                    ranker.rank(Shelf.CASES, query, category, covered),
                    query,
                    spelling);
        }

        int total() {
            return causes.total() + cases.total();
        }

        /** The one that found more; of two that found nothing, the corrected one, so that its words are tried further. */
        Both or(Both corrected) {
            return corrected.total() > total() || total() == 0 ? corrected : this;
        }

        Found read(Hits hits, boolean loose, int page) throws SQLException {
            return new Found(
                    hits.causes(causes.page(page, PER_PAGE), query),
                    hits.cases(cases.page(page, PER_PAGE), query),
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
