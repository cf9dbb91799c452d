package org.benchtrail.figures;

import io.quarkus.qute.RawString;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.benchtrail.core.figures.Count;
import org.benchtrail.core.figures.ShareBaseline;
import org.benchtrail.core.figures.ShareByUnit;
import org.benchtrail.core.figures.ShareOverTime;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.statistics.Funnel;
import org.benchtrail.core.statistics.SpreadChart;
import org.benchtrail.figures.Figure.Head;
import org.benchtrail.figures.Figure.Row;
import org.benchtrail.platform.Option;
import org.benchtrail.platform.chart.Chart;
import org.benchtrail.platform.chart.Chart.Kind;
import org.benchtrail.platform.chart.Chart.Point;
import org.benchtrail.platform.chart.Chart.Series;
import org.benchtrail.platform.chart.SvgChart;
import org.jspecify.annotations.Nullable;

/**
 * How often a ticket is not closed by its due time. Only tickets count whose due time is over, closed by then or not, so that what
 * is quick does not count before what is slow. A ticket counts once, by the due time that it has now; a cancelled one does not.
 */
final class LateFigures {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);
    private static final double[] TAILS = {0.001, 0.025, 0.975, 0.999};
    private static final int DRAWN_SIZES = 40;

    static final String WEEKS = "late-weeks";

    private final FigurePeriod period;
    private final List<FigureRows.Ticket> due;

    LateFigures(List<FigureRows.Ticket> tickets, FigurePeriod period, Instant now) {
        this.period = period;
        due = tickets.stream()
                .filter(t -> t.standing() != Standing.CANCELLED && !t.due().isAfter(now))
                .toList();
    }

    static boolean isLate(FigureRows.Ticket ticket) {
        return ticket.ended() == null || ticket.ended().isAfter(ticket.due());
    }

    static Count count(Collection<FigureRows.Ticket> tickets) {
        return new Count(tickets.stream().filter(LateFigures::isLate).count(), tickets.size());
    }

    static List<Integer> late(Collection<FigureRows.Ticket> tickets) {
        return tickets.stream()
                .filter(LateFigures::isLate)
                .map(FigureRows.Ticket::serial)
                .toList();
    }

    static LocalDate monday(LocalDate day) {
        return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    /** Whose due time is over, by the week in which they were opened. */
    List<List<FigureRows.Ticket>> weeks(LocalDate today) {
        LocalDate first = monday(period.from());
        LocalDate last = monday(period.until().isAfter(today) ? today : period.until());
        List<List<FigureRows.Ticket>> weeks = new ArrayList<>();
        for (LocalDate week = first; !week.isAfter(last); week = week.plusWeeks(1)) {
            weeks.add(new ArrayList<>());
        }
        for (FigureRows.Ticket ticket : due) {
            LocalDate opened = LocalDate.ofInstant(ticket.opened(), period.zone());
            weeks.get((int) ChronoUnit.WEEKS.between(first, monday(opened))).add(ticket);
        }
        return weeks;
    }

    /** @param frozen limits, in the order in which they were frozen; none if the weeks' own are wanted */
    Figure byWeek(LocalDate today, List<ShareBaseline> frozen) {
        LocalDate first = monday(period.from());
        List<List<FigureRows.Ticket>> weeks = weeks(today);
        if (!frozen.isEmpty()) {
            return HeldWeeksFigure.of(weeks, first, period.zone(), frozen);
        }
        ShareOverTime share =
                ShareOverTime.of(weeks.stream().map(LateFigures::count).toList());
        SpreadChart chart = share.chart();
        List<Row> rows = chart == null ? counted(weeks, first) : drawnRows(share, chart, weeks, first);
        return new Figure(
                WEEKS,
                "Not closed by the due time, week by week",
                chart == null ? WEEK : WEEK + " " + spread(chart),
                chart == null ? null : drawn(share, chart),
                chart == null
                        ? share.groups().size() + " of " + ShareOverTime.ENOUGH
                                + " groups needed, each of enough weeks to expect 5 late tickets and 5 others: too few to"
                                + " draw."
                        : "",
                List.of(
                        Head.words("Opened"),
                        Head.number("Due time over"),
                        Head.number("Not closed by then"),
                        Head.number("Share [%]"),
                        Head.words("Limits by chance alone [%]"),
                        Head.words("Limits as weeks differ [%]"),
                        Head.words("Against the limits")),
                rows,
                unusual(rows));
    }

    static List<String> unusual(List<Row> weeks) {
        return weeks.stream()
                .filter(r -> r.cells().get(r.cells().size() - 1).equals("outside"))
                .map(r -> "Of the tickets opened " + r.first() + ", "
                        + r.cells().get(3) + " in 100 were not closed by their due time: outside the usual limits.")
                .toList();
    }

    static final String WEEK =
            "Tickets by the week in which they were opened, once their due time is over. Weeks with little are joined.";

    private static String spread(SpreadChart chart) {
        return chart.dispersion().isMoreThanChance()
                ? "Weeks differ by more than chance alone explains, so the limits drawn are as wide as neighbouring weeks"
                        + " differ; the others stand in the table."
                : "The limits drawn are those of chance alone, which explains how weeks differ; the others stand in the"
                        + " table.";
    }

    static String days(LocalDate monday, int first, int last) {
        return DAY.format(monday.plusWeeks(first)) + " to "
                + DAY.format(monday.plusWeeks(last + 1L).minusDays(1));
    }

    private static List<Row> counted(List<List<FigureRows.Ticket>> weeks, LocalDate monday) {
        return IntStream.range(0, weeks.size())
                .filter(i -> !weeks.get(i).isEmpty())
                .mapToObj(i -> new Row(
                        monday.plusWeeks(i).toString(),
                        List.of(
                                days(monday, i, i),
                                String.valueOf(weeks.get(i).size()),
                                String.valueOf(count(weeks.get(i)).hits()),
                                "",
                                "",
                                "",
                                ""),
                        late(weeks.get(i))))
                .toList();
    }

    private static List<Row> drawnRows(
            ShareOverTime share, SpreadChart chart, List<List<FigureRows.Ticket>> weeks, LocalDate monday) {
        List<Row> rows = new ArrayList<>();
        List<Integer> out = outside(chart);
        for (int i = 0; i < share.groups().size(); i++) {
            ShareOverTime.Group group = share.groups().get(i);
            SpreadChart.Limits wide = chart.limits().get(i);
            var plain = chart.plain().points().get(i);
            rows.add(new Row(
                    monday.plusWeeks(group.first()).toString(),
                    List.of(
                            days(monday, group.first(), group.last()),
                            String.valueOf(group.count().of()),
                            String.valueOf(group.count().hits()),
                            Figure.percent(plain.sample().share()),
                            Figure.percent(plain.lower()) + " to " + Figure.percent(plain.upper()),
                            Figure.percent(wide.lower()) + " to " + Figure.percent(wide.upper()),
                            out.contains(i) ? "outside" : ""),
                    late(weeks.subList(group.first(), group.last() + 1).stream()
                            .flatMap(List::stream)
                            .toList())));
        }
        return rows;
    }

    private static List<Integer> outside(SpreadChart chart) {
        return chart.dispersion().isMoreThanChance()
                ? chart.outside()
                : chart.plain().outside();
    }

    private static RawString drawn(ShareOverTime share, SpreadChart chart) {
        boolean wide = chart.dispersion().isMoreThanChance();
        int size = share.groups().size();
        return SvgChart.draw(new Chart(
                "weeks or joined weeks, in order",
                "not closed by the due time, %",
                List.of(
                        series(
                                "upper limit",
                                Kind.LIMIT,
                                size,
                                i -> wide
                                        ? chart.limits().get(i).upper()
                                        : chart.plain().points().get(i).upper()),
                        series(
                                "share of all",
                                Kind.IDEAL,
                                size,
                                i -> chart.plain().meanShare()),
                        series(
                                "lower limit",
                                Kind.LIMIT,
                                size,
                                i -> wide
                                        ? chart.limits().get(i).lower()
                                        : chart.plain().points().get(i).lower()),
                        series(
                                "one week, or several joined",
                                Kind.DOTS,
                                size,
                                i -> chart.plain().points().get(i).sample().share()))));
    }

    static Series series(String title, Kind kind, int size, Function<Integer, Double> share) {
        return new Series(
                title,
                kind,
                IntStream.range(0, size)
                        .mapToObj(i -> Point.at(i + 1, 100 * share.apply(i)))
                        .toList());
    }

    Figure byPlace() {
        Map<String, List<FigureRows.Ticket>> places = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        due.forEach(
                t -> places.computeIfAbsent(t.place(), p -> new ArrayList<>()).add(t));
        return byUnit("late-places", "place", "Place", places);
    }

    Figure byCategory() {
        Map<String, List<FigureRows.Ticket>> kinds = new TreeMap<>();
        due.forEach(t -> kinds.computeIfAbsent(Option.words(t.category()), c -> new ArrayList<>())
                .add(t));
        return byUnit("late-kinds", "kind of trouble", "Kind of trouble", kinds);
    }

    /**
     * @param groups teams with enough people; a ticket of somebody who is in two of them counts in both
     */
    Figure byTeam(FigureGroups groups) {
        Map<String, List<FigureRows.Ticket>> teams = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        Map<String, List<String>> teamsOf = new HashMap<>();
        groups.teams()
                .forEach(team -> team.members()
                        .forEach(m -> teamsOf.computeIfAbsent(m, a -> new ArrayList<>())
                                .add(team.name())));
        due.stream()
                .filter(t -> t.assignee() != null)
                .forEach(t -> teamsOf.getOrDefault(Objects.requireNonNull(t.assignee()), List.of())
                        .forEach(team -> teams.computeIfAbsent(team, n -> new ArrayList<>())
                                .add(t)));
        return byUnit("late-teams", "team", "Team", teams).saying(TEAMS, groups.smallInWords());
    }

    private static final String TEAMS =
            "A ticket is a team's if whoever has it now, or had it last, is in that team today; of a person in two teams it"
                    + " counts in both.";

    Figure byCause(FigureGroups groups) {
        Map<String, List<FigureRows.Ticket>> causes = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        int others = 0;
        for (FigureRows.Ticket ticket : due) {
            FigureCause cause = ticket.cause() == null ? null : groups.cause(ticket.cause());
            if (cause != null) {
                causes.computeIfAbsent(
                                cause.words() + " (" + Option.words(cause.category()) + ")", c -> new ArrayList<>())
                        .add(ticket);
            } else {
                others++;
            }
        }
        return byUnit("late-causes", "cause", "Cause", causes)
                .saying(
                        "A cause is known once a ticket is closed.",
                        others == 0
                                ? ""
                                : others + " tickets that are open, or were closed with a cause that is not in the"
                                        + " catalogue, are not among them.");
    }

    private static Figure byUnit(String id, String what, String head, Map<String, List<FigureRows.Ticket>> units) {
        List<ShareByUnit.Unit> named = new ArrayList<>();
        units.forEach((name, tickets) -> named.add(new ShareByUnit.Unit(name, count(tickets), false)));
        ShareByUnit share = ShareByUnit.of(named);
        Funnel funnel = share.funnel();
        List<Row> rows = new ArrayList<>();
        List<FigureRows.Ticket> small = new ArrayList<>();
        for (ShareByUnit.Unit unit : share.units()) {
            List<FigureRows.Ticket> tickets = units.getOrDefault(unit.name(), List.of());
            if (unit.isLarge()) {
                rows.add(row(unit.name(), unit.name(), tickets, funnel, unit.out() ? "worth a look" : ""));
            } else {
                small.addAll(tickets);
            }
        }
        if (!small.isEmpty()) {
            rows.add(row("(few)", "all with fewer than " + ShareByUnit.LARGE + " tickets", small, null, ""));
        }
        return new Figure(
                id,
                "Not closed by the due time, by " + what,
                says(what, funnel),
                funnel == null ? null : drawn(share, funnel, what),
                few(what, share),
                List.of(
                        Head.words(head),
                        Head.number("Due time over"),
                        Head.number("Not closed by then"),
                        Head.number("Share [%]"),
                        Head.words("By chance 95 in 100 lie within [%]"),
                        Head.words("By chance 998 in 1000 lie within [%]"),
                        Head.words("Against the limits")),
                rows,
                share.units().stream()
                        .filter(ShareByUnit.Unit::out)
                        .map(u -> "More or fewer tickets than chance explains were not closed by their due time: "
                                + what + " " + u.name() + ".")
                        .toList());
    }

    private static String says(String what, @Nullable Funnel funnel) {
        String words =
                "Each " + what + " against its own number of tickets, in the order of the alphabet: a small one varies"
                        + " more by chance. Outside the limits means worth a look, no more.";
        return funnel == null || !funnel.dispersion().isMoreThanChance()
                ? words
                : words + " They differ by more than chance alone explains, so the limits are "
                        + Figure.number(funnel.dispersion().factor()) + " times as wide.";
    }

    private static String few(String what, ShareByUnit share) {
        if (share.funnel() != null) {
            return "";
        }
        return share.large() < ShareByUnit.ENOUGH
                ? share.large() + " of " + ShareByUnit.ENOUGH + " needed with at least " + ShareByUnit.LARGE
                        + " tickets each, by " + what + ": too few to draw."
                : "All were closed by their due time, or none was: nothing varies.";
    }

    private static Row row(
            String key, String title, List<FigureRows.Ticket> tickets, @Nullable Funnel funnel, String word) {
        Count count = count(tickets);
        return new Row(
                key,
                List.of(
                        title,
                        String.valueOf(count.of()),
                        String.valueOf(count.hits()),
                        funnel == null ? "" : Figure.percent((double) count.hits() / count.of()),
                        funnel == null ? "" : within(funnel, count.of(), 1, 2),
                        funnel == null ? "" : within(funnel, count.of(), 0, 3),
                        word),
                late(tickets));
    }

    private static String within(Funnel funnel, long size, int low, int high) {
        return Figure.percent(funnel.drawn(size, TAILS[low])) + " to "
                + Figure.percent(funnel.drawn(size, TAILS[high]));
    }

    private static RawString drawn(ShareByUnit share, Funnel funnel, String what) {
        long least =
                funnel.units().stream().mapToLong(u -> u.share().trials()).min().orElse(1);
        long most =
                funnel.units().stream().mapToLong(u -> u.share().trials()).max().orElse(1);
        long[] sizes = IntStream.rangeClosed(0, DRAWN_SIZES)
                .mapToLong(i -> least + (most - least) * i / DRAWN_SIZES)
                .distinct()
                .toArray();
        List<Series> series = new ArrayList<>();
        for (int i = 0; i < TAILS.length; i++) {
            boolean outer = i == 0 || i == TAILS.length - 1;
            double tail = TAILS[i];
            series.add(new Series(
                    outer ? "998 in 1000 lie within, by chance" : "95 in 100 lie within, by chance",
                    outer ? Kind.LIMIT : Kind.IDEAL,
                    java.util.Arrays.stream(sizes)
                            .mapToObj(n -> Point.at(n, 100 * funnel.drawn(n, tail)))
                            .toList()));
        }
        series.add(new Series(
                "one " + what,
                Kind.DOTS,
                share.units().stream()
                        .filter(ShareByUnit.Unit::isLarge)
                        .map(u -> Point.at(
                                u.count().of(),
                                100.0 * u.count().hits() / u.count().of()))
                        .toList()));
        return SvgChart.draw(new Chart("tickets whose due time is over", "not closed by the due time, %", series));
    }
}
