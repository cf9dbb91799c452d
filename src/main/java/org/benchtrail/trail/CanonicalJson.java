package org.benchtrail.trail;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import org.erdtman.jcs.JsonCanonicalizer;

/** JSON in the one form that is hashed: RFC 8785 (JCS). */
final class CanonicalJson {
    private static final JsonFactory STRICT = new JsonFactory();

    private CanonicalJson() {}

    /**
     * The canonical form.
     *
     * @param json an object or array
     * @throws IllegalArgumentException if it is no JSON, has a duplicate key, a lone surrogate, or a number that is no finite
     *     double
     */
    static byte[] of(String json) {
        try {
            checkGrammar(json);
            return utf8(new JsonCanonicalizer(json).getEncodedString());
        } catch (IOException e) {
            throw new IllegalArgumentException("not canonicalizable: " + e.getMessage(), e);
        }
    }

    /** The canonicalizer takes a few spellings that JSON does not have, such as {@code 01}. */
    private static void checkGrammar(String json) throws IOException {
        try (JsonParser parser = STRICT.createParser(json)) {
            while (parser.nextToken() != null) {
                parser.finishToken();
            }
        }
    }

    /** Unlike {@code String.getBytes}, which would write a question mark for a lone surrogate. */
    private static byte[] utf8(String text) throws CharacterCodingException {
        ByteBuffer encoded = StandardCharsets.UTF_8.newEncoder().encode(CharBuffer.wrap(text));
        byte[] bytes = new byte[encoded.remaining()];
        encoded.get(bytes);
        return bytes;
    }
}
