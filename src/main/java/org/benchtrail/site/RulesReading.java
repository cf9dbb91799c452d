package org.benchtrail.site;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.site.Holiday;
import org.benchtrail.core.site.Shift;
import org.benchtrail.core.site.SiteRules;
import org.benchtrail.core.site.Target;
import org.benchtrail.core.site.WorkCalendar;
import org.benchtrail.core.site.WorkMinutes;

/** Reads what was typed about the site, and keeps every problem until all was read. */
final class RulesReading {
    private static final int HOURS_OF_A_YEAR = 8760;

    private final RulesText typed;
    private final List<Invalid.Problem> problems = new ArrayList<>();

    RulesReading(RulesText typed) {
        this.typed = typed;
    }

    SiteRules rules() {
        Optional<ZoneId> zone = zone();
        Map<DayOfWeek, List<Shift>> week = week();
        List<Holiday> holidays = holidays();
        Map<Priority, Target> targets = targets();
        Set<WaitingFor> stops = stops();
        BigDecimal odds = number("repairOdds", typed.repairOdds(), 1, 99);
        Policy policy = new Policy(
                number("approvalCostLimit", typed.approvalCostLimit(), 0, 1_000_000_000),
                span("dataAnswerHours", typed.dataAnswerHours(), Duration.ofHours(1), HOURS_OF_A_YEAR, true),
                span("soakHours", typed.soakHours(), Duration.ofHours(1), HOURS_OF_A_YEAR, true),
                span("reopenDays", typed.reopenDays(), Duration.ofDays(1), 3650, false),
                number("guardBand", typed.guardBand(), 0, 10));
        String mains = typed.mains().isBlank() ? null : typed.mains().strip();
        Optional<WorkCalendar> calendar = problems.isEmpty()
                ? attempt(() -> new WorkCalendar(zone.orElseThrow(), week, holidays))
                : Optional.empty();
        Optional<SiteRules> rules =
                calendar.flatMap(c -> attempt(() -> new SiteRules(c, targets, stops, mains, odds, policy)));
        return rules.orElseThrow(() -> new Invalid(problems));
    }

    private <T> Optional<T> attempt(Supplier<T> making) {
        try {
            return Optional.of(making.get());
        } catch (Invalid e) {
            problems.addAll(e.problems());
            return Optional.empty();
        }
    }

    /** As {@link #attempt}, with each problem at that field, whatever its own was. */
    private <T> Optional<T> at(String field, Supplier<T> making) {
        try {
            return Optional.of(making.get());
        } catch (Invalid e) {
            e.problems().forEach(p -> problems.add(new Invalid.Problem(field, p.sentence())));
            return Optional.empty();
        }
    }

    private Optional<ZoneId> zone() {
        try {
            return Optional.of(ZoneId.of(typed.zone().strip()));
        } catch (DateTimeException e) {
            problems.add(
                    new Invalid.Problem("zone", "Give the zone as the tz database names it, such as Europe/Berlin."));
            return Optional.empty();
        }
    }

    private Map<DayOfWeek, List<Shift>> week() {
        Map<DayOfWeek, List<Shift>> week = new EnumMap<>(DayOfWeek.class);
        for (DayOfWeek day : DayOfWeek.values()) {
            List<Shift> shifts = new ArrayList<>();
            Stream.of(typed.week(day).split(","))
                    .filter(part -> !part.isBlank())
                    .forEach(part ->
                            at("week." + day.name(), () -> Shift.parse(part)).ifPresent(shifts::add));
            at("week." + day.name(), () -> new WorkCalendar(ZoneId.of("UTC"), Map.of(day, sole(shifts)), List.of()));
            week.put(day, shifts);
        }
        return week;
    }

    /** A day without hours is no fault of that day. */
    private static List<Shift> sole(List<Shift> shifts) {
        return shifts.isEmpty() ? List.of(Shift.WHOLE_DAY) : shifts;
    }

    private List<Holiday> holidays() {
        List<Holiday> holidays = new ArrayList<>();
        typed.holidays()
                .lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .forEach(line -> at("holidays", () -> holiday(line)).ifPresent(holidays::add));
        return holidays;
    }

    private static Holiday holiday(String line) {
        String[] words = line.split("\\s+", 3);
        LocalDate day;
        try {
            day = LocalDate.parse(words[0]);
        } catch (DateTimeException e) {
            throw new Invalid(
                    "holidays",
                    "'" + (line.length() > 40 ? line.substring(0, 40) : line)
                            + "' begins with no date. Write 2027-01-01 New year, or 2026-12-24 12:00-24:00 Afternoon off.");
        }
        boolean part = words.length > 1 && words[1].matches("\\d{1,2}:.*");
        String name = line.substring(words[0].length()).strip();
        return part
                ? new Holiday(day, Shift.parse(words[1]), words.length > 2 ? words[2] : "")
                : new Holiday(day, Shift.WHOLE_DAY, name);
    }

    private Map<Priority, Target> targets() {
        Map<Priority, Target> targets = new EnumMap<>(Priority.class);
        for (Priority priority : Priority.values()) {
            String field = "times." + priority.name();
            OptionalInt response =
                    minutes(field + ".response", typed.times(priority).response());
            OptionalInt fix = minutes(field + ".fix", typed.times(priority).fix());
            if (response.isPresent() && fix.isPresent()) {
                try {
                    targets.put(priority, new Target(response.getAsInt(), fix.getAsInt()));
                } catch (Invalid e) {
                    e.problems().forEach(p -> problems.add(new Invalid.Problem(field + "." + p.field(), p.sentence())));
                }
            }
        }
        return targets;
    }

    private OptionalInt minutes(String field, String text) {
        OptionalInt minutes = WorkMinutes.parse(text);
        if (minutes.isEmpty()) {
            problems.add(new Invalid.Problem(field, "Write the working time as 4 h, 30 min or 2 h 30 min."));
        }
        return minutes;
    }

    private Set<WaitingFor> stops() {
        Set<WaitingFor> stops = EnumSet.noneOf(WaitingFor.class);
        for (String name : typed.stops()) {
            Arrays.stream(WaitingFor.values())
                    .filter(w -> w.name().equals(name))
                    .findFirst()
                    .ifPresentOrElse(
                            stops::add,
                            () -> problems.add(new Invalid.Problem("stops", "Choose from what a hold can wait for.")));
        }
        return stops;
    }

    private Duration span(String field, String text, Duration unit, int most, boolean positive) {
        BigDecimal least = positive ? new BigDecimal("0.02") : BigDecimal.ZERO;
        BigDecimal number = number(field, text, least, BigDecimal.valueOf(most));
        return Duration.ofMinutes(
                number.multiply(BigDecimal.valueOf(unit.toMinutes())).longValue());
    }

    private BigDecimal number(String field, String text, int least, int most) {
        return number(field, text, BigDecimal.valueOf(least), BigDecimal.valueOf(most));
    }

    private BigDecimal number(String field, String text, BigDecimal least, BigDecimal most) {
        String digits = text.strip();
        if (digits.matches("\\d{1,10}(\\.\\d{1,4})?")) {
            BigDecimal number = new BigDecimal(digits);
            if (number.compareTo(least) >= 0 && number.compareTo(most) <= 0) {
                return number;
            }
        }
        problems.add(new Invalid.Problem(
                field, "Give a number from " + least.toPlainString() + " to " + most.toPlainString() + "."));
        return least;
    }
}
