package org.benchtrail.knowledge;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.method.Category;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;

/** The rows of known causes, each change of which is written down beside it. */
@ApplicationScoped
class CauseRows implements PanacheRepositoryBase<KnownCause, Long> {
    private final CauseHistory history;
    private final WordList words;
    private final SqlText sql = SqlText.of(CauseRows.class);

    CauseRows(CauseHistory history, WordList words) {
        this.history = history;
        this.words = words;
    }

    KnownCause present(long id) {
        return findByIdOptional(id).orElseThrow(() -> new NotFound("known cause " + id));
    }

    /** The row, locked until the transaction ends. */
    KnownCause locked(long id) {
        return findByIdOptional(id, LockModeType.PESSIMISTIC_WRITE)
                .orElseThrow(() -> new NotFound("known cause " + id));
    }

    /** Where it went if it was merged; itself if not. Locked. */
    KnownCause standing(long id) {
        KnownCause cause = locked(id);
        while (cause.mergedInto != null) {
            cause = locked(cause.mergedInto);
        }
        return cause;
    }

    /** One of the same name and kind that was not retired. */
    Optional<KnownCause> named(String title, Category category) {
        return find(
                        "lower(title) = lower(?1) and category = ?2 and state <> ?3 order by id",
                        title,
                        category,
                        CauseState.RETIRED)
                .firstResultOptional();
    }

    /**
     * Those of an entry of the catalogue that are shown, the most confirmed first.
     *
     * @param causeIds its id, and those that it had before
     */
    List<KnownCause> ofCatalogue(Collection<String> causeIds) {
        return list("causeId in ?1 and state <> ?2 order by confirmations desc, id", causeIds, CauseState.RETIRED);
    }

    /** Drafts that a ticket left, locked. */
    List<KnownCause> draftsOf(int ticket) {
        return list("ticket = ?1 and state = ?2", ticket, CauseState.DRAFT).stream()
                .map(draft -> locked(draft.number()))
                .toList();
    }

    /** The latest changed first; null stands for any, but for retired ones. */
    List<KnownCause> latest(@Nullable Category category, @Nullable CauseState state, int page, int size) {
        String where = state == null ? "state <> :state" : "state = :state";
        Map<String, Object> values = new HashMap<>();
        values.put("state", state == null ? CauseState.RETIRED : state);
        if (category != null) {
            where += " and category = :category";
            values.put("category", category);
        }
        return find(where + " order by changed desc, id desc", values)
                .range(page * size, page * size + size - 1)
                .list();
    }

    /** Stores a new one and begins its history. */
    KnownCause add(KnownCause cause, CauseHistory.Ground ground) {
        cause.version = 1;
        cause.changed = ground.at();
        persistAndFlush(cause);
        index(cause);
        history.write(cause, null, ground);
        return cause;
    }

    /** Writes down what was changed since {@code before}. */
    void changed(KnownCause cause, CauseImage before, CauseHistory.Ground ground) {
        cause.version++;
        cause.changed = ground.at();
        flush();
        if (!before.equals(cause.image())) {
            index(cause);
        }
        history.write(cause, before, ground);
    }

    private void index(KnownCause cause) {
        Sql.of(getEntityManager(), sql.statement("index"))
                .with("title", SearchText.index(cause.title))
                .with("shows", SearchText.index(cause.shows))
                .with("apart", SearchText.index(cause.apart))
                .with("cure", SearchText.index(cause.cure))
                .with("id", cause.number())
                .run();
        words.learn(String.join(" ", cause.title, cause.shows, cause.apart, cause.cure));
    }
}
