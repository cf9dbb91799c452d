package org.benchtrail.knowledge;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.method.Category;
import org.benchtrail.platform.NotFound;
import org.jspecify.annotations.Nullable;

/** The rows of known causes, each change of which is written down beside it. */
@ApplicationScoped
class CauseRows implements PanacheRepositoryBase<KnownCause, Long> {
    private static final String INDEX = "update known_cause set search = setweight(to_tsvector('simple', ?1), 'A')"
            + " || setweight(to_tsvector('simple', ?2), 'B') || setweight(to_tsvector('simple', ?3), 'C')"
            + " || setweight(to_tsvector('simple', ?4), 'D') where id = ?5";

    private final ObjectMapper mapper;
    private final WordList words;

    CauseRows(ObjectMapper mapper, WordList words) {
        this.mapper = mapper;
        this.words = words;
    }

    /** Why a known cause changes: who, when, and on what ground. */
    record Ground(
            String who,
            Instant at,
            CauseChange.What what,
            String reason,
            @Nullable Integer ticket) {}

    KnownCause present(long id) {
        return findByIdOptional(id).orElseThrow(() -> new NotFound("known cause " + id));
    }

    /** The row, locked until the transaction ends. */
    KnownCause locked(long id) {
        KnownCause cause = findById(id, LockModeType.PESSIMISTIC_WRITE);
        if (cause == null) {
            throw new NotFound("known cause " + id);
        }
        return cause;
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

    /** Stores a new one and begins its history. */
    KnownCause add(KnownCause cause, Ground ground) {
        cause.version = 1;
        cause.changed = ground.at();
        persistAndFlush(cause);
        index(cause);
        write(cause, null, ground);
        return cause;
    }

    /** Writes down what was changed since {@code before}. */
    void changed(KnownCause cause, CauseImage before, Ground ground) {
        cause.version++;
        cause.changed = ground.at();
        flush();
        if (!before.equals(cause.image())) {
            index(cause);
        }
        write(cause, before, ground);
    }

    private void index(KnownCause cause) {
        getEntityManager()
                .createNativeQuery(INDEX)
                .setParameter(1, SearchText.index(cause.title))
                .setParameter(2, SearchText.index(cause.shows))
                .setParameter(3, SearchText.index(cause.apart))
                .setParameter(4, SearchText.index(cause.cure))
                .setParameter(5, cause.number())
                .executeUpdate();
        words.learn(String.join(" ", cause.title, cause.shows, cause.apart, cause.cure));
    }

    private void write(KnownCause cause, @Nullable CauseImage before, Ground ground) {
        CauseChange change = new CauseChange();
        change.cause = cause.number();
        change.version = cause.version;
        change.at = ground.at();
        change.who = ground.who();
        change.what = ground.what();
        change.reason = ground.reason();
        change.ticket = ground.ticket();
        change.before = before == null ? null : json(before);
        change.after = json(cause.image());
        getEntityManager().persist(change);
        flush();
    }

    private String json(CauseImage image) {
        try {
            return mapper.writeValueAsString(image);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    CauseImage read(String json) {
        try {
            return mapper.readValue(json, CauseImage.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Newest first. */
    List<CauseChange> history(long id) {
        return getEntityManager()
                .createQuery("from CauseChange c where c.cause = :cause order by c.version desc", CauseChange.class)
                .setParameter("cause", id)
                .getResultList();
    }
}
