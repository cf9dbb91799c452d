package org.benchtrail.people;

import io.quarkus.hibernate.orm.panache.PanacheRepository;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** The rows of programs' tokens. */
@ApplicationScoped
class ApiTokens implements PanacheRepository<ApiToken> {

    /** With the account it stands for. */
    Optional<ApiToken> byHash(byte[] hash) {
        return find("from ApiToken t join fetch t.account where t.hash = ?1", hash)
                .firstResultOptional();
    }

    Optional<ApiToken> of(Account owner, long id) {
        return find("id = ?1 and account = ?2", id, owner).firstResultOptional();
    }

    /** The newest first. */
    List<ApiToken> of(Account owner) {
        return list("account = ?1 order by id desc", owner);
    }

    /** For good. */
    void endAll(Account owner, Instant now) {
        update("revokedAt = ?1 where account = ?2 and revokedAt is null", now, owner);
    }

    /** Writes at once, so that its number is known. */
    void add(ApiToken token) {
        persistAndFlush(token);
    }
}
