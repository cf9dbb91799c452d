package org.benchtrail.core.integrity;

import java.util.Base64;

/** Base64 of RFC 4648 section 4 with padding, where one sequence of bytes has one text only. */
final class CanonicalBase64 {
    private CanonicalBase64() {}

    /** @throws IllegalArgumentException if the text is not what writing its bytes would give */
    static byte[] read(String text) {
        byte[] bytes = Base64.getDecoder().decode(text);
        if (!Base64.getEncoder().encodeToString(bytes).equals(text)) {
            throw new IllegalArgumentException("not base64 in its one form");
        }
        return bytes;
    }
}
