package org.benchtrail.figures;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Step;
import org.benchtrail.platform.Option;
import org.benchtrail.site.TeamBook;
import org.jspecify.annotations.Nullable;

/**
 * What figures are made of.
 *
 * @param from first day, in the zone of the site's calendar
 * @param until last day
 * @param category null for all
 * @param place empty for all
 * @param team of who has a ticket; null for all
 * @param cause that a ticket was closed with; null for all, closed or not
 * @param step whose curve is drawn; null for the whole way from opening to closing
 */
record FigurePeriod(
        LocalDate from,
        LocalDate until,
        ZoneId zone,
        @Nullable Category category,
        String place,
        TeamBook.@Nullable Members team,
        @Nullable FigureCause cause,
        @Nullable Step step) {

    /** Of all teams and causes, and for no curve. */
    static FigurePeriod of(LocalDate from, LocalDate until, ZoneId zone, @Nullable Category category, String place) {
        return new FigurePeriod(from, until, zone, category, place, null, null, null);
    }

    FigurePeriod of(@Nullable Category kind, TeamBook.@Nullable Members people, @Nullable FigureCause named) {
        return new FigurePeriod(from, until, zone, kind, place, people, named, step);
    }

    FigurePeriod unfiltered() {
        return new FigurePeriod(from, until, zone, null, "", null, null, step);
    }

    Instant begins() {
        return from.atStartOfDay(zone).toInstant();
    }

    /** The end of the last day. */
    Instant ends() {
        return until.plusDays(1).atStartOfDay(zone).toInstant();
    }

    boolean isFiltered() {
        return category != null || !place.isEmpty() || isOfSome();
    }

    /** Whether it is of a team or a cause: who is in a team, and what a ticket is closed with, may be otherwise tomorrow. */
    boolean isOfSome() {
        return team != null || cause != null;
    }

    /** What it is filtered by, in a few words. */
    String group() {
        List<String> parts = new ArrayList<>();
        if (category != null) {
            parts.add(Option.words(category));
        }
        if (!place.isEmpty()) {
            parts.add(place);
        }
        if (team != null) {
            parts.add("team " + team.name());
        }
        if (cause != null) {
            parts.add("cause: " + cause.words());
        }
        return parts.isEmpty() ? "all tickets" : String.join(", ", parts);
    }
}
