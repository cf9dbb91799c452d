package org.benchtrail.core.site;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Minutes of work as they are typed and shown: {@code 45 min}, {@code 4 h}, {@code 2 h 30 min}. */
public final class WorkMinutes {
    private static final int HOUR = 60;
    private static final Pattern TYPED =
            Pattern.compile("(?:(\\d{1,5}) ?h)? ?(?:(\\d{1,6}) ?min)?", Pattern.CASE_INSENSITIVE);

    private WorkMinutes() {}

    /** Empty if it is no such length of time. */
    public static OptionalInt parse(String typed) {
        Matcher parts = TYPED.matcher(typed.strip());
        if (typed.isBlank() || !parts.matches()) {
            return OptionalInt.empty();
        }
        return OptionalInt.of(HOUR * number(parts.group(1)) + number(parts.group(2)));
    }

    private static int number(@Nullable String digits) {
        return digits == null ? 0 : Integer.parseInt(digits);
    }

    public static String text(long minutes) {
        List<String> parts = new ArrayList<>();
        if (minutes >= HOUR) {
            parts.add(minutes / HOUR + " h");
        }
        if (minutes % HOUR != 0 || minutes < HOUR) {
            parts.add(minutes % HOUR + " min");
        }
        return String.join(" ", parts);
    }
}
