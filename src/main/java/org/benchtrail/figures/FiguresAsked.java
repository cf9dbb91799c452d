package org.benchtrail.figures;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Step;
import org.benchtrail.platform.form.AskedFor;

/**
 * What figures are asked for, as it was typed.
 *
 * @param from first day; empty for 90 days back
 * @param until last day; empty for today
 * @param category empty for all
 * @param place empty for all
 * @param team id; empty for all
 * @param cause key of a cause that tickets were closed with; empty for all
 * @param step whose curve is drawn; empty for the whole way
 * @param beside which second group's curve is drawn; empty for none
 */
public record FiguresAsked(
        String from,
        String until,
        String category,
        String place,
        String team,
        String cause,
        String step,
        String beside) {
    private static final int USUAL_DAYS = 89;
    static final int LONGEST_YEARS = 2;

    /** Of all teams and causes, without a second curve. */
    static FiguresAsked of(String from, String until, String category, String place, String step) {
        return new FiguresAsked(from, until, category, place, "", "", step, "");
    }

    /** The same of other days. */
    FiguresAsked between(LocalDate first, LocalDate last) {
        return new FiguresAsked(first.toString(), last.toString(), category, place, team, cause, step, beside);
    }

    /** The same of the usual days. */
    FiguresAsked besidesDays() {
        return new FiguresAsked("", "", category, place, team, cause, step, beside);
    }

    /** @throws Invalid naming the field */
    FigurePeriod period(LocalDate today, ZoneId zone, FigureGroups groups) {
        LocalDate last = day("until", until, today);
        LocalDate first = day("from", from, last.minusDays(USUAL_DAYS));
        new Invalid.Collector()
                .require(!first.isAfter(last), "from", "The first day is not later than the last.")
                .require(
                        !first.plusYears(LONGEST_YEARS).isBefore(last.plusDays(1)),
                        "from",
                        "Ask for two years at most.")
                .throwIfAny();
        return new FigurePeriod(
                first,
                last,
                zone,
                AskedFor.choice(Category.class, category),
                place.strip(),
                groups.team(team),
                groups.cause(cause),
                AskedFor.choice(Step.class, step));
    }

    /** @throws Invalid under that field */
    static LocalDate day(String field, String typed, LocalDate usual) {
        if (typed.isBlank()) {
            return usual;
        }
        try {
            LocalDate day = LocalDate.parse(typed.strip());
            if (day.getYear() >= 1970 && day.getYear() < 10_000) {
                return day;
            }
        } catch (DateTimeParseException none) {
            // told below
        }
        throw new Invalid(field, "Give the day as 2026-11-27.");
    }

    /** As the part of an address behind the question mark. */
    public String query() {
        Map<String, String> parts = new LinkedHashMap<>();
        parts.put("from", from);
        parts.put("until", until);
        parts.put("category", category);
        parts.put("place", place);
        parts.put("team", team);
        parts.put("cause", cause);
        parts.put("step", step);
        parts.put("beside", beside);
        return AskedFor.query(parts);
    }
}
