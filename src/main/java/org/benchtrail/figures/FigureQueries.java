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
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.benchtrail.audit.JudgedRequirements;
import org.benchtrail.audit.MendedPapers;
import org.benchtrail.catalogue.Catalogues;
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
import org.benchtrail.site.TeamBook;

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
    private final TeamBook teams;
    private final Catalogues catalogues;
    private final Directory people;
    private final SiteBook site;
    private final Clock clock;

    FigureQueries(
            FigureRows rows,
            JudgedRequirements requirements,
            MendedPapers mended,
            ChartBaselines baselines,
            TeamBook teams,
            Catalogues catalogues,
            Directory people,
            SiteBook site,
            Clock clock) {
        this.rows = rows;
        this.requirements = requirements;
        this.mended = mended;
        this.baselines = baselines;
        this.teams = teams;
        this.catalogues = catalogues;
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
     * @param notes on how the filter is to be read
     * @param choices what can be asked for besides
     */
    public record Report(
            FigurePeriod period,
            String words,
            List<String> notes,
            Choices choices,
            String cut,
            List<Figure> figures,
            LocalDate over,
            List<BaselineLine> baselines,
            List<BaselineLine> weekBaselines) {
        /** Whether limits can be frozen for the filter. */
        public boolean isFreezable() {
            return !period.isOfSome();
        }

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

    /**
     * What can be asked for, where that depends on the shop.
     *
     * @param beside second groups for the curve; none while there is only one
     * @param small what is said of teams that are not offered; empty if all are
     */
    public record Choices(List<Option> teams, List<Option> causes, List<Option> beside, String small) {
        static final Choices NONE = new Choices(List.of(), List.of(), List.of(), "");
    }

    Report report(FiguresAsked asked, Actor viewer, ZoneId shown) {
        Permissions.require(Permission.SEE_FIGURES, viewer);
        Instant now = clock.instant();
        SiteHistory history = site.history();
        ZoneId zone = site.zone();
        LocalDate today = LocalDate.ofInstant(now, zone);
        FigureGroups groups = FigureGroups.of(teams.open(), catalogues.inForce());
        FigurePeriod period = asked.period(today, zone, groups);
        List<FigureCause> named = groups.named(rows.causes(period), period.cause());
        List<FigureRows.Ticket> tickets = rows.opened(period, MOST_TICKETS);
        StepFigures steps = new StepFigures(tickets, history, now);
        LateFigures late = new LateFigures(tickets, period, now);
        List<ChartBaselines.Frozen<Baseline>> frozen = baselines.of(period);
        List<ChartBaselines.Frozen<ShareBaseline>> frozenWeeks = baselines.ofWeeks(period);
        List<Figure> figures = new ArrayList<>(List.of(
                steps.steps(),
                groups.beside(asked.beside(), period, named)
                        .map(b -> curves(steps, period, tickets, b, history, now))
                        .orElseGet(() -> steps.curve(period.step())),
                steps.holds(),
                ClosingFigure.of(rows.closed(period, ClosingFigure.MOST), baselines(frozen), history, shown),
                late.byWeek(today, baselines(frozenWeeks))));
        figures.addAll(unlessAsked(period, late, groups, now));
        LocalDate over = period.until().isBefore(today) ? period.until() : today.minusDays(1);
        return new Report(
                period,
                words(period, tickets.size()),
                notes(period),
                choices(groups, period, named),
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

    private static Choices choices(FigureGroups groups, FigurePeriod period, List<FigureCause> named) {
        return new Choices(
                groups.teamOptions(),
                FigureGroups.options(named),
                groups.besides(period, named),
                groups.smallInWords());
    }

    private Figure curves(
            StepFigures steps,
            FigurePeriod period,
            List<FigureRows.Ticket> tickets,
            FigureGroups.Beside beside,
            SiteHistory history,
            Instant now) {
        Set<Integer> first = tickets.stream().map(FigureRows.Ticket::serial).collect(Collectors.toSet());
        List<FigureRows.Ticket> read = rows.opened(beside.period(), MOST_TICKETS);
        List<FigureRows.Ticket> second = read.stream()
                .filter(t -> !beside.others() || !first.contains(t.serial()))
                .toList();
        return steps.curves(period.step(), period.group(), new StepFigures(second, history, now), beside.words())
                .saying(
                        read.size() < MOST_TICKETS
                                ? ""
                                : "Of " + beside.words() + " only the latest are counted, of " + MOST_TICKETS
                                        + " tickets at most.");
    }

    private static <B> List<B> baselines(List<ChartBaselines.Frozen<B>> frozen) {
        return frozen.stream().map(ChartBaselines.Frozen::baseline).toList();
    }

    /** Those that make no sense of a part that was asked for. */
    private List<Figure> unlessAsked(FigurePeriod period, LateFigures late, FigureGroups groups, Instant now) {
        List<Figure> figures = new ArrayList<>();
        if (period.place().isEmpty()) {
            figures.add(late.byPlace());
        }
        if (period.category() == null) {
            figures.add(late.byCategory());
        }
        if (period.team() == null && !(groups.teams().isEmpty() && groups.small() == 0)) {
            figures.add(late.byTeam(groups));
        }
        if (period.cause() == null) {
            figures.add(late.byCause(groups));
        }
        if (!period.isFiltered()) {
            JudgedRequirements.Found found = requirements.between(period.begins(), period.ends());
            figures.add(RequirementFigure.of(found.requirements()));
            figures.add(ReadersFigure.of(found.readers()));
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
                + (period.place().isEmpty() ? "all places" : period.place())
                + (period.team() == null ? "" : ", team " + period.team().name())
                + (period.cause() == null
                        ? ""
                        : ", closed with the cause '" + period.cause().words() + "'") + ": "
                + tickets
                + ". Practice jobs are not among them.";
    }

    private static List<String> notes(FigurePeriod period) {
        List<String> notes = new ArrayList<>();
        if (period.team() != null) {
            notes.add("A ticket is the team's if whoever has it now, or had it last, is in the team today.");
        }
        if (period.cause() != null) {
            notes.add(
                    "A cause is known once a ticket is closed. Tickets that are still open are not among these, so the"
                            + " slow ones of the latest weeks are missing, and times look shorter than they are.");
        }
        return notes;
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
