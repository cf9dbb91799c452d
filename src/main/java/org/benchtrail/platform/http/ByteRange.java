package org.benchtrail.platform.http;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A part of some bytes (RFC 9110, section 14). Several parts at once are not given: the whole is.
 *
 * @param from the first byte
 * @param to after the last; not greater than {@code from} if there is no such part
 */
record ByteRange(int from, int to) {
    /** More digits than these name no place in any file that is kept. */
    private static final Pattern ONE = Pattern.compile("bytes=(\\d{0,18})-(\\d{0,18})");

    boolean isThere() {
        return from < to;
    }

    /**
     * What the header asks for; empty for the whole.
     *
     * @param length of the whole, bytes
     */
    static Optional<ByteRange> of(@Nullable String header, int length) {
        Matcher asked = ONE.matcher(header == null ? "" : header.strip());
        if (!asked.matches() || (asked.group(1).isEmpty() && asked.group(2).isEmpty())) {
            return Optional.empty();
        }
        if (asked.group(1).isEmpty()) {
            long last = Math.min(length, Long.parseLong(asked.group(2)));
            return Optional.of(new ByteRange((int) (length - last), length));
        }
        long from = Long.parseLong(asked.group(1));
        long last = asked.group(2).isEmpty() ? Long.MAX_VALUE - 1 : Long.parseLong(asked.group(2));
        if (last < from) {
            return Optional.empty();
        }
        return Optional.of(new ByteRange((int) Math.min(from, length), (int) Math.min(last + 1, length)));
    }
}
