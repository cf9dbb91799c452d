package org.benchtrail.platform;

import java.time.Instant;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Moments as people read them: in the viewer's zone, with the zone shown. */
public final class Moments {
    private static final DateTimeFormatter FORM = DateTimeFormatter.ofPattern("d MMM uuuu HH:mm z", Locale.ENGLISH);

    private Moments() {}

    public static String text(Instant at, ZoneId zone) {
        return FORM.format(at.atZone(zone));
    }

    /**
     * A month as it stands in an address, such as 2026-11.
     *
     * @throws NotFound if it is none
     */
    public static YearMonth month(String asked) {
        if (!asked.matches("20[0-9]{2}-(0[1-9]|1[0-2])")) {
            throw new NotFound("month " + asked);
        }
        return YearMonth.parse(asked);
    }
}
