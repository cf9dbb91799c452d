package org.benchtrail.core.method;

import org.jspecify.annotations.Nullable;

/**
 * How an entry came to be made; known since format 2 of the trail.
 *
 * @param request entries that were made in answer to one request share it; no two requests have the same
 * @param policy fingerprint of the site's policy by which it was decided
 * @param behalf account at whose act the server spoke; null if a person speaks, or nobody's act was the occasion
 */
public record Origin(
        Channel channel,
        String request,
        String policy,
        @Nullable String behalf) {
    public Origin {
        if (request.isEmpty() || policy.isEmpty()) {
            throw new IllegalArgumentException("an entry belongs to a request and was decided by a policy");
        }
        if (behalf != null && channel != Channel.SERVER) {
            throw new IllegalArgumentException("only the server speaks on somebody's behalf");
        }
    }

    /** Of what the server says when that account acts in the same request. */
    public Origin ofServerFor(String account) {
        return new Origin(Channel.SERVER, request, policy, account);
    }
}
