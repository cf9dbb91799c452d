package org.benchtrail.people;

import io.quarkus.hibernate.orm.panache.PanacheRepository;
import jakarta.inject.Singleton;
import java.util.List;
import java.util.Optional;

/** The rows of programs' tokens. */
@Singleton
class ApiTokens implements PanacheRepository<ApiToken> {
    /** The token with its owner. */
    Optional<ApiToken> byHash(byte[] hash) {
        return find("from ApiToken t join fetch t.account where t.hash = ?1", (Object) hash)
                .singleResultOptional();
    }

    Optional<ApiToken> own(long id, Account owner) {
        return findByIdOptional(id).filter(token -> token.account.equals(owner));
    }

    /** The newest first. */
    List<ApiToken> of(Account owner) {
        return list("account = ?1 order by id desc", owner);
    }
}
