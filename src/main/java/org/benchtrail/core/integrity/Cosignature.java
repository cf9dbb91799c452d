package org.benchtrail.core.integrity;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/**
 * A witness's signature with its time (C2SP tlog-cosignature): at that time this was the largest consistent tree that the witness had
 * seen of this origin.
 */
public final class Cosignature {
    /** Eight bytes of time, and the signature. */
    static final int BYTES = 8 + SigningKey.SIGNATURE_BYTES;

    private Cosignature() {}

    /** Seconds since 1970-01-01T00:00:00Z. */
    static long time(byte[] signature) {
        return ByteBuffer.wrap(signature).getLong();
    }

    /** When the witness signed, in seconds since 1970-01-01T00:00:00Z, of a line that its key verifies. */
    public static long time(SignedNote.Line line) {
        return time(line.signature());
    }

    static byte[] message(long time, String text) {
        return ("cosignature/v1\ntime " + Long.toUnsignedString(time) + "\n" + text).getBytes(StandardCharsets.UTF_8);
    }
}
