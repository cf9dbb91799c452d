package org.benchtrail.site;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.DayOfWeek;
import java.time.Duration;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.site.Holiday;
import org.benchtrail.core.site.Shift;
import org.benchtrail.core.site.SiteRules;
import org.benchtrail.core.site.WorkCalendar;
import org.benchtrail.core.site.WorkMinutes;
import org.benchtrail.core.text.PlainText;
import org.jspecify.annotations.Nullable;

/**
 * What the site decides, as it is typed, shown and stored: the fields of the page, the body of the API and the text of a version are this
 * one record.
 *
 * @param zone such as {@code Europe/Berlin}
 * @param week the hours by day, such as {@code 08:00-12:00, 13:00-17:00}; a day without any is left out
 * @param holidays a line for each: the date, hours if it is not the whole day, and a name
 * @param times by priority
 * @param stops for what a hold waits while the clock stands still
 * @param mains V; empty if it is not known
 * @param dataAnswerHours how old the answer about data may be when an action touches storage, h
 * @param soakHours how long an intermittent fault runs clean before it is believed gone, h
 * @param reopenDays how long after closing anyone who works tickets may reopen, d
 */
public record RulesText(
        String zone,
        @Nullable Map<String, String> week,
        String holidays,
        @Nullable Map<String, Times> times,
        List<String> stops,
        String mains,
        String repairOdds,
        String approvalCostLimit,
        String dataAnswerHours,
        String soakHours,
        String reopenDays,
        String guardBand) {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    public RulesText {
        zone = PlainText.line(zone);
        holidays = PlainText.paragraph(holidays);
        stops = stops == null ? List.of() : List.copyOf(stops);
        mains = PlainText.line(mains);
        repairOdds = PlainText.line(repairOdds);
        approvalCostLimit = PlainText.line(approvalCostLimit);
        dataAnswerHours = PlainText.line(dataAnswerHours);
        soakHours = PlainText.line(soakHours);
        reopenDays = PlainText.line(reopenDays);
        guardBand = PlainText.line(guardBand);
    }

    /** Working time, such as {@code 4 h} or {@code 30 min}. */
    public record Times(String response, String fix) {
        public Times {
            response = PlainText.line(response);
            fix = PlainText.line(fix);
        }

        static Times of(int response, int fix) {
            return new Times(WorkMinutes.text(response), WorkMinutes.text(fix));
        }
    }

    public static RulesText of(SiteRules rules) {
        WorkCalendar calendar = rules.calendar();
        Map<String, String> week = new LinkedHashMap<>();
        for (DayOfWeek day : DayOfWeek.values()) {
            if (calendar.week().containsKey(day)) {
                week.put(day.name(), hours(calendar.week().get(day)));
            }
        }
        Map<String, Times> times = new LinkedHashMap<>();
        for (Priority priority : Priority.values()) {
            times.put(
                    priority.name(),
                    Times.of(
                            rules.target(priority).response(),
                            rules.target(priority).fix()));
        }
        Policy policy = rules.policy();
        return new RulesText(
                calendar.zone().getId(),
                week,
                calendar.holidays().stream().map(RulesText::line).collect(Collectors.joining("\n")),
                times,
                Arrays.stream(WaitingFor.values())
                        .filter(rules.stops()::contains)
                        .map(WaitingFor::name)
                        .toList(),
                rules.mains() == null ? "" : rules.mains(),
                plain(rules.repairOdds()),
                plain(policy.approvalCostLimit()),
                number(policy.dataAnswerMaxAge(), Duration.ofHours(1)),
                number(policy.soakTime(), Duration.ofHours(1)),
                number(policy.reopenWindow(), Duration.ofDays(1)),
                plain(policy.guardBand()));
    }

    private static String hours(List<Shift> shifts) {
        return shifts.stream().map(Shift::toString).collect(Collectors.joining(", "));
    }

    private static String line(Holiday holiday) {
        return holiday.day() + (holiday.isWhole() ? " " : " " + holiday.off() + " ") + holiday.name();
    }

    private static String plain(BigDecimal number) {
        return number.stripTrailingZeros().toPlainString();
    }

    private static String number(Duration span, Duration unit) {
        return plain(BigDecimal.valueOf(span.toMinutes())
                .divide(BigDecimal.valueOf(unit.toMinutes()), 4, RoundingMode.HALF_UP));
    }

    /** @throws Invalid naming every field that cannot be taken as it is */
    public SiteRules rules() {
        return new RulesReading(this).rules();
    }

    String json() {
        try {
            return MAPPER.writeValueAsString(this);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    static RulesText read(String json) {
        try {
            return MAPPER.readValue(json, RulesText.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a decision of the site is not readable", e);
        }
    }

    /** The hours typed for a day; empty if nobody works then. */
    String week(DayOfWeek day) {
        return week == null ? "" : week.getOrDefault(day.name(), "");
    }

    /** The times typed for a priority. */
    Times times(Priority priority) {
        Times given = times == null ? null : times.get(priority.name());
        return given == null ? new Times("", "") : given;
    }
}
