package org.benchtrail.core.integrity;

import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.random.RandomGenerator;

/** What stands for a value that may have to be erased: it binds to the value, and tells nothing of it without the salt. */
public final class Commitment {
    /** Random bytes that belong to one value only. */
    public static final int SALT_BYTES = 32;

    private static final byte[] KIND = {2};
    private static final byte[] END_OF_NAME = {0};

    private Commitment() {}

    /** As many bytes as a salt has, which nobody can foresee: the salt of a value that is new, or a seed that others bind to. */
    public static byte[] secret(RandomGenerator chance) {
        byte[] secret = new byte[SALT_BYTES];
        chance.nextBytes(secret);
        return secret;
    }

    /**
     * {@code SHA-256(0x02 || salt || name || 0x00 || value)}, the value in UTF-8 and Unicode NFC.
     *
     * @param salt 32 bytes
     * @param name in ASCII, such as {@code requester.name}
     */
    public static Hash of(byte[] salt, String name, String value) {
        if (salt.length != SALT_BYTES) {
            throw new IllegalArgumentException("a salt has 32 bytes, not " + salt.length);
        }
        return Hash.sha256(
                KIND,
                salt,
                name.getBytes(StandardCharsets.US_ASCII),
                END_OF_NAME,
                Normalizer.normalize(value, Normalizer.Form.NFC).getBytes(StandardCharsets.UTF_8));
    }
}
