package org.benchtrail.people;

import java.time.Instant;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** A token as its owner sees it; the secret is not among it. */
public record TokenView(
        long id,
        String name,
        Set<TokenScope> scopes,
        Instant createdAt,
        Instant expiresAt,
        @Nullable Instant lastUsed,
        @Nullable Instant revokedAt) {}
