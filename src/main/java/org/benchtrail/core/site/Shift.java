package org.benchtrail.core.site;

import java.util.Locale;
import org.benchtrail.core.Invalid;

/**
 * A stretch of one day by the clock on the wall.
 *
 * @param from minutes after midnight, 0 to 1439
 * @param to minutes after midnight, more than {@code from}, at most 1440, which is the end of the day
 */
public record Shift(int from, int to) {
    public static final int DAY = 1440;

    private static final int HOUR = 60;

    public static final Shift WHOLE_DAY = new Shift(0, DAY);

    /** @throws Invalid on {@code hours} if it ends before it begins, or lies outside the day */
    public Shift {
        if (from < 0 || to > DAY || from >= to) {
            throw new Invalid(
                    "hours", "Hours begin at 00:00 or later, and end after they begin, at 24:00 at the latest.");
        }
    }

    /**
     * Reads what {@link #toString} writes, such as {@code 08:00-12:30}.
     *
     * @throws Invalid on {@code hours}
     */
    public static Shift parse(String text) {
        String[] ends = text.split("-", 3);
        if (ends.length != 2) {
            throw unread(text);
        }
        return new Shift(minutes(ends[0].strip(), text), minutes(ends[1].strip(), text));
    }

    private static int minutes(String clock, String text) {
        if (!clock.matches("\\d{1,2}:\\d{2}")) {
            throw unread(text);
        }
        int colon = clock.indexOf(':');
        int hour = Integer.parseInt(clock.substring(0, colon));
        int minute = Integer.parseInt(clock.substring(colon + 1));
        if (minute >= HOUR) {
            throw unread(text);
        }
        return hour * HOUR + minute;
    }

    private static Invalid unread(String text) {
        return new Invalid("hours", "'" + text.strip() + "' is no stretch of a day. Write 08:00-17:00.");
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%02d:%02d-%02d:%02d", from / HOUR, from % HOUR, to / HOUR, to % HOUR);
    }
}
