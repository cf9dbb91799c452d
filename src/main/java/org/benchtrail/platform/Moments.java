package org.benchtrail.platform;

import java.time.Instant;
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
}
