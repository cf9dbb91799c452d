package org.benchtrail.people;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;

/** Secrets of 32 random bytes, and the hash under which a token is found again. */
final class Secrets {
    /** So that whoever finds one, by eye or by program, knows it for a secret (RFC 8959). */
    static final String SECRET_PREFIX = "secret-token:";

    static final String TOKEN_PREFIX = "bt_";

    private static final SecureRandom RANDOM = new SecureRandom();
    private static final int BYTES = 32;

    private Secrets() {}

    static byte[] random(int bytes) {
        byte[] secret = new byte[bytes];
        RANDOM.nextBytes(secret);
        return secret;
    }

    static String random() {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(random(BYTES));
    }

    static String newToken() {
        return SECRET_PREFIX + TOKEN_PREFIX + random();
    }

    /** The hash of a token, which programs send with or without the prefix that every secret token has. */
    static byte[] hashOfToken(String token) {
        return hash(token.startsWith(SECRET_PREFIX) ? token.substring(SECRET_PREFIX.length()) : token);
    }

    /** SHA-256 of the token's characters. A plain hash suffices: 256 random bits cannot be guessed from it. */
    static byte[] hash(String token) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(token.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
