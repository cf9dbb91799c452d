package org.benchtrail.people;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HexFormat;
import org.junit.jupiter.api.Test;

class SecretsTest {
    /** SHA-256 of "abc": FIPS 180-2, appendix B.1. */
    @Test
    void hash_isSha256() {
        assertEquals(
                "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
                HexFormat.of().formatHex(Secrets.hash("abc")));
    }

    @Test
    void token_is32RandomBytesInUrlSafeLetters() {
        String token = Secrets.newToken();
        assertTrue(token.matches("secret-token:bt_[A-Za-z0-9_-]{43}"), token);
        assertNotEquals(token, Secrets.newToken());
    }
}
