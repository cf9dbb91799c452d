package org.benchtrail.trail;

import java.util.Base64;

/**
 * Words that somebody wrote into an entry, which holds a commitment to them.
 *
 * @param salt of the commitment, base64url without padding
 */
public record SaltedWords(String salt, String value) {
    /** A salt has one spelling only, so that no byte of it can be changed unseen. */
    public SaltedWords {
        if (!spelling(Base64.getUrlDecoder().decode(salt)).equals(salt)) {
            throw new IllegalArgumentException("another spelling of a salt");
        }
    }

    static String spelling(byte[] salt) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(salt);
    }
}
