package org.benchtrail.core.readin;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.storage.Sector;

/** What arrived, before anything is read from it: its size and its characters. A problem's field is {@code text} or an offset. */
public final class Received {
    /** More than a device says about itself, or 50 000 rows of a series. */
    public static final int MOST_BYTES = 1_000_000;

    private Received() {}

    /** @throws Invalid if there is nothing, or too much */
    public static void requireSize(long bytes) {
        new Invalid.Collector()
                .require(bytes > 0, "text", "There is nothing here: paste what the device says, or choose its file.")
                .require(
                        bytes <= MOST_BYTES,
                        "text",
                        String.format(
                                java.util.Locale.ROOT,
                                "This has %,d bytes; at most %,d are read in. Give the one page or resource alone, or thin the series out.",
                                bytes,
                                MOST_BYTES))
                .throwIfAny();
    }

    /**
     * The text in UTF-8 with one line feed at each line's end.
     *
     * @throws Invalid if it is empty, too large, or no UTF-8
     */
    public static String text(byte[] raw) {
        requireSize(raw.length);
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer in = ByteBuffer.wrap(raw);
        CharBuffer out = CharBuffer.allocate(raw.length);
        CoderResult result = decoder.decode(in, out, true);
        if (result.isError()) {
            throw new Invalid("offset " + in.position(), notText(raw));
        }
        return plain(out.flip().toString());
    }

    private static String notText(byte[] raw) {
        boolean sixteen = raw.length > 1 && (raw[0] & 0xFF) + (raw[1] & 0xFF) == 0xFF + 0xFE;
        return sixteen
                ? "This text is in UTF-16: save it as UTF-8."
                : "These bytes are no UTF-8 text: save it as UTF-8, or choose a kind that is bytes.";
    }

    /** One line feed at each line's end, no byte order mark. */
    public static String plain(String text) {
        String bare = text.startsWith("\uFEFF") ? text.substring(1) : text;
        int zero = bare.indexOf('\0');
        if (zero >= 0) {
            throw new Invalid(
                    "offset " + zero, "A zero byte stands here: this is no text; choose a kind that is bytes.");
        }
        return bare.replace("\r\n", "\n").replace('\r', '\n');
    }

    /**
     * Bytes written as pairs of hexadecimal digits.
     *
     * @throws Invalid if it is empty, too large, or something else stands there; the field is the offset in bytes
     */
    public static byte[] hex(String text) {
        requireSize(text.strip().length());
        return Sector.fromHex(text);
    }
}
