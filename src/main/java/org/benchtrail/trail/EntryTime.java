package org.benchtrail.trail;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;

/** The time in an entry: {@code 2026-11-28T09:05:00.000123Z}. */
final class EntryTime {
    private static final String FORM = "dddd-dd-ddTdd:dd:dd.ddddddZ";
    private static final int NANOS = 1000;

    /** An hour and a second that a time may have in words, and no clock shows. */
    private static final int MIDNIGHT = 24;

    private static final int LEAP = 60;

    /** Always six digits of fraction: the column keeps microseconds, and one instant has one form. */
    private static final DateTimeFormatter MICROSECONDS =
            DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSSSSS'Z'").withZone(ZoneOffset.UTC);

    private EntryTime() {}

    static String write(Instant at) {
        return MICROSECONDS.format(at);
    }

    /**
     * What {@link Instant#parse} makes of a text. A text of the form that {@link #write} gives is read in a tenth of the time, which
     * would be a quarter of all that reading an entry takes.
     *
     * @throws DateTimeException if it is no time
     */
    static Instant read(String text) {
        return isWritten(text) && number(text, 11, 13) < MIDNIGHT && number(text, 17, 19) < LEAP
                ? LocalDateTime.of(
                                number(text, 0, 4),
                                number(text, 5, 7),
                                number(text, 8, 10),
                                number(text, 11, 13),
                                number(text, 14, 16),
                                number(text, 17, 19),
                                number(text, 20, 26) * NANOS)
                        .toInstant(ZoneOffset.UTC)
                : Instant.parse(text);
    }

    private static boolean isWritten(String text) {
        if (text.length() != FORM.length()) {
            return false;
        }
        for (int i = 0; i < FORM.length(); i++) {
            char asked = FORM.charAt(i);
            char is = text.charAt(i);
            if (asked == 'd' ? is < '0' || is > '9' : is != asked) {
                return false;
            }
        }
        return true;
    }

    private static int number(String digits, int from, int to) {
        return Integer.parseInt(digits, from, to, 10);
    }
}
