package org.benchtrail.trail;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.erdtman.jcs.JsonCanonicalizer;

/** JSON in the one form that is hashed: RFC 8785 (JCS). */
final class CanonicalJson {
    private CanonicalJson() {}

    /**
     * The canonical form.
     *
     * @param json an object or array; strings without lone surrogates
     * @throws IllegalArgumentException if it is no JSON, has a duplicate key, or a number that is no finite double
     */
    static byte[] of(String json) {
        try {
            return new JsonCanonicalizer(json).getEncodedString().getBytes(StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalArgumentException("not canonicalizable: " + e.getMessage(), e);
        }
    }
}
