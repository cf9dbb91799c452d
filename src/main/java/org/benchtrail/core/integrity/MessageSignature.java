package org.benchtrail.core.integrity;

import java.util.Base64;

/**
 * What shows a receiver that a message comes from whoever shares its secret and was not changed: HMAC-SHA256 in the form of
 * Standard Webhooks, which any of its libraries checks.
 */
public final class MessageSignature {
    /** How a secret is written: this, and then Base64. */
    public static final String PREFIX = "whsec_";

    private static final int LEAST_BYTES = 24;
    private static final int MOST_BYTES = 64;

    private MessageSignature() {}

    /**
     * Reads a secret as it is written.
     *
     * @throws IllegalArgumentException if it is not {@code whsec_} with the Base64 of 24 to 64 bytes; the message does not repeat it
     */
    public static byte[] secret(String written) {
        byte[] secret = {};
        if (written.startsWith(PREFIX)) {
            try {
                secret = Base64.getDecoder().decode(written.substring(PREFIX.length()));
            } catch (IllegalArgumentException e) {
                secret = new byte[0];
            }
        }
        if (secret.length < LEAST_BYTES || secret.length > MOST_BYTES) {
            throw new IllegalArgumentException("a secret is written as " + PREFIX + " and the Base64 of " + LEAST_BYTES
                    + " to " + MOST_BYTES + " random bytes");
        }
        return secret;
    }

    /**
     * The value of the header {@code webhook-signature}.
     *
     * @param id of the message, without a dot
     * @param seconds when it was sent, since 1970
     */
    public static String of(byte[] secret, String id, long seconds, String body) {
        byte[] code = KeyedHash.of(secret, id + "." + seconds + "." + body);
        return "v1," + Base64.getEncoder().encodeToString(code);
    }
}
