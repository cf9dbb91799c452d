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
import org.benchtrail.core.Invalid;
import org.benchtrail.core.figures.Baseline;
import org.benchtrail.core.figures.ClosingTimes.Closing;
import org.benchtrail.core.figures.Level;
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

/** Limits of the chart of closings that supervisors froze. They are added to, and none is ever changed. */
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

    /** @param by account of who froze it */
    record Frozen(Baseline baseline, String reason, String by) {}

    private record Row(
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
        Frozen read() {
            Level level = new Level(Double.parseDouble(centre), Double.parseDouble(spread));
            return new Frozen(
                    new Baseline(begins, ends, frozenAt, points, outside, level, ChartRules.valueOf(rules)),
                    reason,
                    frozenBy);
        }
    }

    /** Those of what a period is filtered by, in the order in which they were frozen; each filter has its own. */
    List<Frozen> of(FigurePeriod period) {
        return filtered("frozen", period).rows(Row.class).stream()
                .map(Row::read)
                .toList();
    }

    private Sql filtered(String statement, FigurePeriod period) {
        Category category = period.category();
        return Sql.of(database, text.statement(statement))
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
        FigurePeriod period = new FigurePeriod(
                FiguresAsked.day("first", asked.first(), today),
                FiguresAsked.day("last", asked.last(), today),
                zone,
                AskedFor.choice(Category.class, figures.category()),
                place,
                null);
        add(period, reason, by, freeze(period, Objects.requireNonNull(rules), now));
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

    private void add(FigurePeriod period, String reason, Actor by, Baseline made) {
        filtered("freeze", period)
                .with("begins", made.from())
                .with("ends", made.until())
                .with("points", made.points())
                .with("outside", made.outside())
                .with("centre", Double.toString(made.level().centre()))
                .with("spread", Double.toString(made.level().spread()))
                .with("rules", made.rules().name())
                .with("reason", reason)
                .with("by", by.account())
                .with("at", made.frozenAt())
                .run();
    }
}
