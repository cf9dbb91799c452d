package org.benchtrail.knowledge;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What happened to known causes: appended and read; the database refuses anything else. */
@ApplicationScoped
class CauseHistory implements PanacheRepositoryBase<CauseChange, Long> {
    private final ObjectMapper mapper;

    CauseHistory(ObjectMapper mapper) {
        this.mapper = mapper;
    }

    /**
     * Why a known cause changes: who, when, and on what ground.
     *
     * @param ticket serial of the ticket that it came with
     */
    record Ground(
            String who,
            Instant at,
            CauseEvent what,
            String reason,
            @Nullable Integer ticket) {}

    /** @param before how it stood; null for a new one */
    void write(KnownCause cause, @Nullable CauseImage before, Ground ground) {
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
        persistAndFlush(change);
    }

    private String json(CauseImage image) {
        try {
            return mapper.writeValueAsString(image);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }

    CauseImage read(String json) {
        try {
            return mapper.readValue(json, CauseImage.class);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Newest first. */
    List<CauseChange> of(long cause) {
        return list("cause = ?1 order by version desc", cause);
    }
}
