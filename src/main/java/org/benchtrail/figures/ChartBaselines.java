package org.benchtrail.figures;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Function;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.figures.Baseline;
import org.benchtrail.core.figures.ClosingTimes.Closing;
import org.benchtrail.core.figures.Level;
import org.benchtrail.core.figures.ShareBaseline;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.core.statistics.ChartRules;
import org.benchtrail.core.text.FieldChecks;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.form.AskedFor;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.site.SiteBook;

/** Limits of the charts of closings and of weeks that supervisors froze. They are added to, and none is ever changed. */
@Startup
@ApplicationScoped
@Transactional
class ChartBaselines {
    private final EntityManager database;
    private final FigureRows rows;
    private final SiteBook site;
    private final Clock clock;
    private final SqlText text;

    ChartBaselines(EntityManager database, FigureRows rows, SiteBook site, Clock clock) {
        this.database = database;
        this.rows = rows;
        this.site = site;
        this.clock = clock;
        text = SqlText.of(ChartBaselines.class).having("frozen", "freeze");
    }

    /**
     * Limits with what is kept of them.
     *
     * @param <B> limits of one kind of chart
     */
    record Frozen<B>(B baseline, Row row) {}

    /**
     * As they are kept.
     *
     * @param centre middle of the limits, with every digit
     * @param spread how wide they are, with every digit
     * @param rules name of those by which points are read; empty where only the limits count
     * @param frozenBy account of who froze them
     */
    record Row(
            Instant begins,
            Instant ends,
            int points,
            int outside,
            String centre,
            String spread,
            String rules,
            String reason,
            String frozenBy,
            Instant frozenAt) {
        private Baseline closings() {
            Level level = new Level(Double.parseDouble(centre), Double.parseDouble(spread));
            return new Baseline(begins, ends, frozenAt, points, outside, level, ChartRules.valueOf(rules));
        }

        private ShareBaseline weeks() {
            return new ShareBaseline(
                    begins, ends, frozenAt, points, outside, Double.parseDouble(centre), Double.parseDouble(spread));
        }
    }

    /**
     * Those of what a period is filtered by, in the order in which they were frozen; each filter has its own, but teams and causes
     * have none: who is in a team changes, and limits would be held against others than those they were made of.
     */
    List<Frozen<Baseline>> of(FigurePeriod period) {
        return kept(ClosingFigure.ID, period, Row::closings);
    }

    /** As {@link #of}, of the share week by week. */
    List<Frozen<ShareBaseline>> ofWeeks(FigurePeriod period) {
        return kept(LateFigures.WEEKS, period, Row::weeks);
    }

    private <B> List<Frozen<B>> kept(String chart, FigurePeriod period, Function<Row, B> read) {
        if (period.isOfSome()) {
            return List.of();
        }
        return filtered("frozen", chart, period).rows(Row.class).stream()
                .map(row -> new Frozen<>(read.apply(row), row))
                .toList();
    }

    private Sql filtered(String statement, String chart, FigurePeriod period) {
        Category category = period.category();
        return Sql.of(database, text.statement(statement))
                .with("chart", chart)
                .with("category", category == null ? null : category.name())
                .with("place", period.place().toLowerCase(Locale.ROOT));
    }

    /**
     * What is to be frozen, as it was typed.
     *
     * @param first day of the closings that limits are made of
     * @param last day, which is over
     * @param rules name of those by which points are read
     */
    public record Asked(String first, String last, String rules, String reason) {}

    /** @throws Invalid naming the field */
    void freeze(FiguresAsked figures, Asked asked, Actor by) {
        Permissions.require(Permission.SEE_FIGURES, by);
        requireLasting(figures);
        ChartRules rules = AskedFor.choice(ChartRules.class, asked.rules());
        FieldChecks checks = new FieldChecks();
        String reason = checks.required(
                "reason", asked.reason(), FieldChecks.LINE, "Say why these closings are what is usual.");
        checks.require(rules != null, "rules", "Choose when a closing is worth a look.");
        String place = checks.optional("place", figures.place(), FieldChecks.LINE);
        checks.done();
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        ZoneId zone = site.zone();
        LocalDate today = LocalDate.ofInstant(now, zone);
        FigurePeriod period = FigurePeriod.of(
                FiguresAsked.day("first", asked.first(), today),
                FiguresAsked.day("last", asked.last(), today),
                zone,
                AskedFor.choice(Category.class, figures.category()),
                place);
        Baseline made = freeze(period, Objects.requireNonNull(rules), now);
        add(
                ClosingFigure.ID,
                period,
                new Row(
                        made.from(),
                        made.until(),
                        made.points(),
                        made.outside(),
                        Double.toString(made.level().centre()),
                        Double.toString(made.level().spread()),
                        made.rules().name(),
                        reason,
                        by.account(),
                        made.frozenAt()));
    }

    /**
     * Weeks that are to be frozen, as they were typed.
     *
     * @param weeksFirst day in the first week
     * @param weeksLast day in the last week, which is over
     */
    public record WeeksAsked(String weeksFirst, String weeksLast, String weeksReason) {}

    /** @throws Invalid naming the field */
    void freezeWeeks(FiguresAsked figures, WeeksAsked asked, Actor by) {
        Permissions.require(Permission.SEE_FIGURES, by);
        requireLasting(figures);
        FieldChecks checks = new FieldChecks();
        String reason = checks.required(
                "weeksReason", asked.weeksReason(), FieldChecks.LINE, "Say why these weeks are what is usual.");
        String place = checks.optional("place", figures.place(), FieldChecks.LINE);
        checks.done();
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        LocalDate today = LocalDate.ofInstant(now, site.zone());
        FigurePeriod period = weeks(figures, asked, place, today);
        List<FigureRows.Ticket> tickets = rows.opened(period, FigureQueries.MOST_TICKETS);
        new Invalid.Collector()
                .require(
                        tickets.size() < FigureQueries.MOST_TICKETS,
                        "weeksFirst",
                        "There are more than " + FigureQueries.MOST_TICKETS
                                + " tickets in this time. Choose a shorter one.")
                .throwIfAny();
        ShareBaseline made = ShareBaseline.of(
                period.begins(),
                period.ends(),
                new LateFigures(tickets, period, now)
                        .weeks(today).stream().map(LateFigures::count).toList(),
                now);
        add(
                LateFigures.WEEKS,
                period,
                new Row(
                        made.from(),
                        made.until(),
                        made.points(),
                        made.outside(),
                        Double.toString(made.target()),
                        Double.toString(made.wider()),
                        "",
                        reason,
                        by.account(),
                        made.frozenAt()));
    }

    private static void requireLasting(FiguresAsked figures) {
        new Invalid.Collector()
                .require(
                        figures.team().isEmpty() && figures.cause().isEmpty(),
                        figures.team().isEmpty() ? "cause" : "team",
                        "Freeze limits for all teams and causes: which tickets are a team's or a cause's changes.")
                .throwIfAny();
    }

    private FigurePeriod weeks(FiguresAsked figures, WeeksAsked asked, String place, LocalDate today) {
        LocalDate first = FiguresAsked.day("weeksFirst", asked.weeksFirst(), today);
        LocalDate last = FiguresAsked.day("weeksLast", asked.weeksLast(), today);
        new Invalid.Collector()
                .require(
                        !first.plusYears(FiguresAsked.LONGEST_YEARS).isBefore(last.plusDays(1)),
                        "weeksFirst",
                        "Take two years at most.")
                .throwIfAny();
        return FigurePeriod.of(
                LateFigures.monday(first),
                LateFigures.monday(last).plusDays(6),
                site.zone(),
                AskedFor.choice(Category.class, figures.category()),
                place);
    }

    private void add(String chart, FigurePeriod period, Row made) {
        filtered("freeze", chart, period)
                .with("begins", made.begins())
                .with("ends", made.ends())
                .with("points", made.points())
                .with("outside", made.outside())
                .with("centre", made.centre())
                .with("spread", made.spread())
                .with("rules", made.rules())
                .with("reason", made.reason())
                .with("by", made.frozenBy())
                .with("at", made.frozenAt())
                .run();
    }

    private Baseline freeze(FigurePeriod period, ChartRules rules, Instant now) {
        SiteHistory history = site.history();
        List<FigureRows.Closing> latest = new ArrayList<>(rows.closed(period, Baseline.MOST + 1));
        Collections.reverse(latest);
        List<Double> hours = latest.stream()
                .map(c -> closing(c, history))
                .map(Closing::hours)
                .toList();
        return Baseline.of(period.begins(), period.ends(), hours, rules, now);
    }

    /** Working time of the way that ended with a closing. */
    static Closing closing(FigureRows.Closing closing, SiteHistory site) {
        var times = closing.times();
        Instant at = closing.closed();
        return new Closing(
                at,
                times.ways().stream()
                        .filter(w -> at.equals(w.to()))
                        .findFirst()
                        .map(w -> times.hours(w, site, at))
                        .orElse(0.0));
    }
}
