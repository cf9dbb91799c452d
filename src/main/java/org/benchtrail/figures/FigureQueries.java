package org.benchtrail.figures;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.benchtrail.audit.JudgedRequirements;
import org.benchtrail.audit.MendedPapers;
import org.benchtrail.core.figures.Baseline;
import org.benchtrail.core.figures.ShareBaseline;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.Option;
import org.benchtrail.site.SiteBook;

/** All figures of a period, made from the trails' moves in one transaction. */
@ApplicationScoped
@Transactional
class FigureQueries {
    /** More tickets than that are not read: the period is then shorter, and says so. */
    static final int MOST_TICKETS = 20_000;

    private static final int MOST_LISTED = 200;
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);

    private final FigureRows rows;
    private final JudgedRequirements requirements;
    private final MendedPapers mended;
    private final ChartBaselines baselines;
    private final Directory people;
    private final SiteBook site;
    private final Clock clock;

    FigureQueries(
            FigureRows rows,
            JudgedRequirements requirements,
            MendedPapers mended,
            ChartBaselines baselines,
            Directory people,
            SiteBook site,
            Clock clock) {
        this.rows = rows;
        this.requirements = requirements;
        this.mended = mended;
        this.baselines = baselines;
        this.people = people;
        this.site = site;
        this.clock = clock;
    }

    /**
     * @param period that was asked for, or the usual one
     * @param words the filter, with how many tickets fit it
     * @param cut what was left out because there is too much; empty if nothing was
     * @param over last day of it that is over
     * @param baselines limits of closings that were frozen for this filter, the latest first
     * @param weekBaselines those of weeks
     */
    public record Report(
            FigurePeriod period,
            String words,
            String cut,
            List<Figure> figures,
            LocalDate over,
            List<BaselineLine> baselines,
            List<BaselineLine> weekBaselines) {
        public List<String> unusual() {
            return figures.stream().flatMap(f -> f.unusual().stream()).toList();
        }

        /** What was looked at with limits. */
        public String looked() {
            List<String> drawn = figures.stream()
                    .filter(f -> f.few().isEmpty() && !f.rows().isEmpty())
                    .filter(f -> f.id().startsWith("late") || f.id().equals(ClosingFigure.ID))
                    .map(f -> f.title().toLowerCase(Locale.ROOT))
                    .toList();
            return String.join("; ", drawn);
        }

        Figure figure(String id) {
            return figures.stream()
                    .filter(f -> f.id().equals(id))
                    .findFirst()
                    .orElseThrow(() -> new NotFound("figure " + id));
        }
    }

    Report report(FiguresAsked asked, Actor viewer, ZoneId shown) {
        Permissions.require(Permission.SEE_FIGURES, viewer);
        Instant now = clock.instant();
        SiteHistory history = site.history();
        ZoneId zone = site.zone();
        LocalDate today = LocalDate.ofInstant(now, zone);
        FigurePeriod period = asked.period(today, zone);
        List<FigureRows.Ticket> tickets = rows.opened(period, MOST_TICKETS);
        StepFigures steps = new StepFigures(tickets, history, now);
        LateFigures late = new LateFigures(tickets, period, now);
        List<ChartBaselines.Frozen<Baseline>> frozen = baselines.of(period);
        List<ChartBaselines.Frozen<ShareBaseline>> frozenWeeks = baselines.ofWeeks(period);
        List<Figure> figures = new ArrayList<>(List.of(
                steps.steps(),
                steps.curve(period.step()),
                steps.holds(),
                ClosingFigure.of(rows.closed(period, ClosingFigure.MOST), baselines(frozen), history, shown),
                late.byWeek(today, baselines(frozenWeeks))));
        figures.addAll(unlessAsked(period, late, now));
        LocalDate over = period.until().isBefore(today) ? period.until() : today.minusDays(1);
        return new Report(
                period,
                words(period, tickets.size()),
                cut(tickets, shown),
                figures,
                over,
                lines(frozen, "closings", FigureQueries::limits, b -> b.rules().words(), shown),
                lines(
                        frozenWeeks,
                        "weeks, or joined weeks,",
                        FigureQueries::limits,
                        b -> "one beyond its limits",
                        shown));
    }

    private static <B> List<B> baselines(List<ChartBaselines.Frozen<B>> frozen) {
        return frozen.stream().map(ChartBaselines.Frozen::baseline).toList();
    }

    /** Those that make no sense of a part that was asked for. */
    private List<Figure> unlessAsked(FigurePeriod period, LateFigures late, Instant now) {
        List<Figure> figures = new ArrayList<>();
        if (period.place().isEmpty()) {
            figures.add(late.byPlace());
        }
        if (period.category() == null) {
            figures.add(late.byCategory());
        }
        if (!period.isFiltered()) {
            figures.add(RequirementFigure.of(requirements.between(period.begins(), period.ends())));
            figures.add(MendingFigure.of(mended.between(period.begins(), period.ends(), now)));
        }
        return figures;
    }

    /**
     * Limits that were frozen, as the page tells them.
     *
     * @param made of which closings
     * @param limits in hours
     * @param frozen by whom, when and why
     */
    public record BaselineLine(String made, String limits, String rules, String frozen) {}

    private <B> List<BaselineLine> lines(
            List<ChartBaselines.Frozen<B>> frozen,
            String points,
            Function<B, String> limits,
            Function<B, String> rules,
            ZoneId shown) {
        Map<String, String> names = people.names(
                frozen.stream().map(f -> f.row().frozenBy()).distinct().toList());
        List<BaselineLine> lines = new ArrayList<>();
        for (ChartBaselines.Frozen<B> one : frozen) {
            ChartBaselines.Row row = one.row();
            lines.add(
                    0,
                    new BaselineLine(
                            row.points() + " " + points + " from " + days(row.begins(), row.ends(), site.zone()) + ", "
                                    + outside(row.outside()),
                            limits.apply(one.baseline()),
                            rules.apply(one.baseline()),
                            names.getOrDefault(row.frozenBy(), row.frozenBy()) + ", "
                                    + Moments.text(row.frozenAt(), shown) + ": " + row.reason()));
        }
        return lines;
    }

    private static String limits(Baseline made) {
        return Figure.number(made.level().lower()) + " to "
                + Figure.number(made.level().upper()) + " h, middle "
                + Figure.number(made.level().middle()) + " h";
    }

    private static String limits(ShareBaseline made) {
        return Figure.percent(made.target()) + " % are usual; limits "
                + (made.wider() == 1
                        ? "by chance alone"
                        : Figure.number(made.wider())
                                + " times as wide as by chance alone, because weeks differed by more")
                + ", for each week by its own number of tickets";
    }

    private static String days(Instant from, Instant until, ZoneId zone) {
        return DAY.format(LocalDate.ofInstant(from, zone)) + " to "
                + DAY.format(LocalDate.ofInstant(until, zone).minusDays(1));
    }

    private static String outside(int outside) {
        return outside == 0 ? "none of them outside" : outside + " of them outside, and kept";
    }

    private static String words(FigurePeriod period, int tickets) {
        return "Tickets opened from " + DAY.format(period.from()) + " to " + DAY.format(period.until()) + ", "
                + (period.category() == null ? "all kinds of trouble" : Option.words(period.category())) + ", "
                + (period.place().isEmpty() ? "all places" : period.place()) + ": " + tickets
                + ". Practice jobs are not among them.";
    }

    private static String cut(List<FigureRows.Ticket> tickets, ZoneId zone) {
        return tickets.size() < MOST_TICKETS
                ? ""
                : "There are more than " + MOST_TICKETS + ": only those opened since "
                        + Moments.text(tickets.get(tickets.size() - 1).opened(), zone)
                        + " are counted. Ask for a shorter period.";
    }

    /** A ticket in the list of those behind a number. */
    public record TicketOf(String number, String title) {}

    /**
     * The tickets behind one row of a figure.
     *
     * @param more how many are not listed
     */
    public record Behind(String title, String row, String words, List<TicketOf> tickets, int more) {}

    Behind behind(FiguresAsked asked, String figure, String key, Actor viewer, ZoneId shown) {
        Report report = report(asked, viewer, shown);
        Figure found = report.figure(figure);
        Figure.Row row = found.rows().stream()
                .filter(r -> r.key().equals(key))
                .findFirst()
                .orElseThrow(() -> new NotFound("row of this figure; it may have changed meanwhile"));
        List<Integer> all = row.tickets().stream().distinct().sorted().toList();
        List<Integer> listed = all.subList(0, Math.min(MOST_LISTED, all.size()));
        return new Behind(
                found.title(),
                row.first(),
                report.words(),
                rows.titles(listed).stream()
                        .map(t -> new TicketOf(new TicketNumber(t.serial()).toString(), t.title()))
                        .toList(),
                all.size() - listed.size());
    }
}
