package org.benchtrail.people;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The token of one program; only the hash of its secret is kept. */
@Entity
@Table(name = "api_token")
class ApiToken {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    @ManyToOne(fetch = FetchType.LAZY, optional = false)
    @JoinColumn(name = "account_id", updatable = false)
    Account account = new Account();

    @Column(updatable = false)
    String name = "";

    @Column(updatable = false)
    byte[] hash = {};

    @Column(updatable = false)
    String[] scopes = {};

    @Column(name = "created_at", updatable = false)
    Instant createdAt = Instant.EPOCH;

    @Column(name = "expires_at", updatable = false)
    Instant expiresAt = Instant.EPOCH;

    @Column(name = "last_used")
    @Nullable
    Instant lastUsed;

    @Column(name = "revoked_at")
    @Nullable
    Instant revokedAt;

    boolean isGood(Instant now) {
        return revokedAt == null && now.isBefore(expiresAt) && account.active;
    }

    Set<TokenScope> scopes() {
        return Arrays.stream(scopes)
                .map(TokenScope::valueOf)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(TokenScope.class)));
    }

    TokenView view() {
        return new TokenView(id == null ? 0 : id, name, scopes(), createdAt, expiresAt, lastUsed, revokedAt);
    }
}
