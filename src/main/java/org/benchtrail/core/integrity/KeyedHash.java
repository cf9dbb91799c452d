package org.benchtrail.core.integrity;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** HMAC-SHA256 (RFC 2104): what a text comes to under a secret; nobody who lacks the secret tells it from chance. */
public final class KeyedHash {
    private static final String NAME = "HmacSHA256";

    private KeyedHash() {}

    /**
     * The 32 bytes of a text.
     *
     * @param key at least one byte
     * @param text taken in UTF-8
     */
    public static byte[] of(byte[] key, String text) {
        try {
            Mac mac = Mac.getInstance(NAME);
            mac.init(new SecretKeySpec(key, NAME));
            return mac.doFinal(text.getBytes(StandardCharsets.UTF_8));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java platform has " + NAME, e);
        }
    }
}
