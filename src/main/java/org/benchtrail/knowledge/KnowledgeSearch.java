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
import org.benchtrail.core.text.PlainText;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.jspecify.annotations.Nullable;

/** Search by words over known causes and cases: ranked, by word beginnings, forgiving of typing errors. */
@ApplicationScoped
public class KnowledgeSearch {
    static final int PER_PAGE = 10;
    /** What the database says when a statement was ended by its time limit. */
    private static final String TOO_LONG = "57014";

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
                .require(PlainText.isText(typed), "q", "Remove the control characters: only text can be searched for.")
                .throwIfAny();
        try (Connection connection = database.getConnection()) {
            return find(connection, typed, category, page);
        } catch (SQLException e) {
            if (TOO_LONG.equals(e.getSQLState())) {
                throw new Invalid("q", "That took too long: use rarer words, or choose the kind of trouble.");
            }
            throw new IllegalStateException(e);
        }
    }

    static Found find(Connection connection, String typed, @Nullable Category category, int page) throws SQLException {
        Ranker ranker = new Ranker(connection);
        Terms terms = ranker.terms(typed);
        if (terms.isEmpty()) {
            return new Found(List.of(), List.of(), "", false, 0, 0, true, page, false);
        }
        Both best = Both.all(ranker, terms, category, "");
        if (Ranker.isLittle(best.total())) {
            Map<String, List<String>> better = ranker.mistyped(terms);
            if (!better.isEmpty()) {
                terms = terms.corrected(better);
                best = best.or(Both.all(ranker, terms, category, spelling(better.values())));
            }
        }
        boolean loose = best.total() == 0 && terms.terms().size() > 1;
        if (loose) {
            best = Both.any(ranker, terms, category, best.spelling());
        }
        return best.read(new Hits(connection), loose, page);
    }

    private static String spelling(Collection<List<String>> words) {
        return words.stream().map(w -> String.join(" or ", w)).collect(Collectors.joining(", "));
    }

    /** What both shelves have. */
    private record Both(Ranked causes, Ranked cases, String query, String spelling) {
        static Both all(Ranker ranker, Terms terms, @Nullable Category category, String spelling) throws SQLException {
            return new Both(
                    ranker.all(Shelf.CAUSES, terms, category),
                    ranker.all(Shelf.CASES, terms, category),
                    terms.all(),
                    spelling);
        }

        static Both any(Ranker ranker, Terms terms, @Nullable Category category, String spelling) throws SQLException {
            return new Both(
                    ranker.any(Shelf.CAUSES, terms, category),
                    ranker.any(Shelf.CASES, terms, category),
                    terms.any(),
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
