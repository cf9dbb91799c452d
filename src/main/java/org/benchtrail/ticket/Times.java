package org.benchtrail.ticket;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.benchtrail.core.site.WorkMinutes;
import org.benchtrail.core.site.WorkingTime;

/** Moments and spans as people read them: in the viewer's zone, with the zone shown. */
public final class Times {
    private static final DateTimeFormatter FORM = DateTimeFormatter.ofPattern("d MMM uuuu HH:mm z", Locale.ENGLISH);

    private Times() {}

    public static String text(Instant at, ZoneId zone) {
        return FORM.format(at.atZone(zone));
    }

    /** How far off a moment is: "in 3 h 10 min", "2 days over". */
    public static String distance(Instant at, Instant now) {
        Duration gap = Duration.between(now, at);
        return gap.isNegative() ? span(gap.negated()) + " over" : "in " + span(gap);
    }

    /**
     * How far off a due time is, counted as the site counts it: "in 40 min", "in 12 h 30 min of work", "3 h of work over". Where every
     * minute until then is worked, as {@link #distance}.
     */
    static String due(Instant at, Instant now, WorkingTime time) {
        boolean over = at.isBefore(now);
        Duration work = over ? time.between(at, now) : time.between(now, at);
        if (work.equals(Duration.between(now, at).abs())) {
            return distance(at, now);
        }
        return over ? work(work) + " over" : "in " + work(work);
    }

    /** A span of working time: "12 h 30 min of work". */
    static String work(Duration span) {
        return WorkMinutes.text(span.toMinutes()) + " of work";
    }

    /** How long something has waited: "waits 40 min", "waits 2 days". */
    public static String waits(Instant since, Instant now) {
        Duration gap = Duration.between(since, now);
        return gap.toMinutes() < 1 ? "just now" : "waits " + span(gap);
    }

    private static String span(Duration gap) {
        long minutes = gap.toMinutes();
        if (minutes < 60) {
            return minutes + " min";
        }
        if (minutes < 48 * 60) {
            return minutes / 60 + " h " + minutes % 60 + " min";
        }
        return minutes / 1440 + " days";
    }
}
