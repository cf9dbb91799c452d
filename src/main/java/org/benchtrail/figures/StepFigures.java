package org.benchtrail.figures;

import io.quarkus.qute.RawString;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.figures.Lasting;
import org.benchtrail.core.figures.Lasting.Lasted;
import org.benchtrail.core.figures.Leaving;
import org.benchtrail.core.figures.TicketTimes;
import org.benchtrail.core.figures.TwoLastings;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.core.statistics.Interval;
import org.benchtrail.core.statistics.KaplanMeier;
import org.benchtrail.core.statistics.LogRank;
import org.benchtrail.figures.Figure.Head;
import org.benchtrail.figures.Figure.Row;
import org.benchtrail.platform.chart.Chart;
import org.benchtrail.platform.chart.Chart.Kind;
import org.benchtrail.platform.chart.Chart.Point;
import org.benchtrail.platform.chart.Chart.Series;
import org.benchtrail.platform.chart.SvgChart;
import org.jspecify.annotations.Nullable;

/** How long tickets stay in a step, from opening to closing, and on hold; what still lasts counts as lasting. */
final class StepFigures {
    private static final double CONFIDENCE = 0.95;
    private static final String WHOLE = "WHOLE";
    private static final String CURVE = "curve";
    private static final String ACROSS = "working time, h";
    private static final String UP = "not over, of 100";
    private static final String HOURS = "Working time [h]";
    private static final String WATCHED = "Watched until then";
    private static final String NOT_OVER = "Not over [%]";
    private static final String FROM = "95 % interval from [%]";
    private static final String TO = "to [%]";
    private static final String SAYS =
            "How many of 100 are not over after so many working hours. An open ticket counts for as long as it was"
                    + " watched, and so does a cancelled one or one that went back, though that is not chance.";
    private static final int BRIEF = 38;
    private static final int PER_THOUSAND = 1000;
    private static final double LEAST_CHANCE = 0.001;

    private final Map<Step, Group> steps = new EnumMap<>(Step.class);
    private final Map<WaitingFor, Group> holds = new EnumMap<>(WaitingFor.class);
    private final Group whole = new Group();

    /** What lasted, each with its ticket. */
    private static final class Group {
        private final List<Lasted> lasted = new ArrayList<>();
        private final List<Integer> tickets = new ArrayList<>();

        void add(int ticket, double hours, Leaving how) {
            lasted.add(new Lasted(hours, how));
            tickets.add(ticket);
        }

        /** Tickets of what ended between two times, the second one included. */
        List<Integer> endedBetween(double after, double upTo) {
            List<Integer> found = new ArrayList<>();
            for (int i = 0; i < lasted.size(); i++) {
                Lasted one = lasted.get(i);
                if (one.how().isEnd() && one.hours() > after && one.hours() <= upTo) {
                    found.add(tickets.get(i));
                }
            }
            return found;
        }
    }

    StepFigures(List<FigureRows.Ticket> tickets, SiteHistory site, Instant now) {
        for (Step step : Step.values()) {
            steps.put(step, new Group());
        }
        for (FigureRows.Ticket ticket : tickets) {
            TicketTimes times = ticket.times();
            times.stays().forEach(s -> group(s.step()).add(ticket.serial(), times.hours(s, site, now), s.how()));
            times.ways().forEach(w -> whole.add(ticket.serial(), times.hours(w, site, now), w.how()));
            times.holds()
                    .forEach(h -> holds.computeIfAbsent(h.waitingFor(), w -> new Group())
                            .add(ticket.serial(), TicketTimes.hours(h, site, now), h.how()));
        }
    }

    private Group group(@Nullable Step step) {
        Group group = step == null ? null : steps.get(step);
        return group == null ? whole : group;
    }

    Figure steps() {
        List<Row> rows = new ArrayList<>();
        for (Step step : Step.values()) {
            rows.add(row(step.name(), step.title(), group(step)));
        }
        rows.add(row(WHOLE, "From opening to closing", whole));
        return new Figure(
                "steps",
                "Time in each step",
                "Working hours by the site's calendar, without the holds that stop the clock. A step that was entered again"
                        + " counts each time. What is not over yet counts as lasting, so slow tickets are not forgotten.",
                null,
                "",
                heads("Step", "Times entered", "Gone on", "Still there", "Gone back"),
                rows,
                List.of());
    }

    Figure holds() {
        Map<String, Row> rows = new LinkedHashMap<>();
        holds.forEach((what, group) -> rows.put(what.name(), row(what.name(), what.words(), group)));
        return new Figure(
                "holds",
                "Time on hold",
                "Working hours by the site's calendar, by what is waited for.",
                null,
                rows.isEmpty() ? "No ticket was put on hold." : "",
                heads("Waits for", "Holds", "Resumed", "Still on hold", "Gone back"),
                List.copyOf(rows.values()),
                List.of());
    }

    private static List<Head> heads(String of, String all, String ended, String open, String back) {
        return List.of(
                Head.words(of),
                Head.number(all),
                Head.number(ended),
                Head.number(open),
                Head.number(back),
                Head.number("Cancelled"),
                Head.number("Half took at most [h]"),
                Head.number("Nine in ten took at most [h]"));
    }

    private static Row row(String key, String title, Group group) {
        Lasting lasting = Lasting.of(group.lasted);
        return new Row(
                key,
                List.of(
                        title,
                        String.valueOf(lasting.all()),
                        String.valueOf(lasting.ended()),
                        String.valueOf(lasting.open()),
                        String.valueOf(lasting.back()),
                        String.valueOf(lasting.cancelled()),
                        time(lasting, lasting.median()),
                        time(lasting, lasting.ninetieth())),
                group.tickets.stream().distinct().toList());
    }

    private static String time(Lasting lasting, OptionalDouble hours) {
        if (!lasting.isEnough()) {
            return lasting.ended() + " of " + Lasting.ENOUGH + " needed";
        }
        return hours.isPresent() ? Figure.hours(hours.getAsDouble()) : "not reached";
    }

    /** @param step null for the whole way */
    Figure curve(@Nullable Step step) {
        Group group = group(step);
        Lasting lasting = Lasting.of(group.lasted);
        List<KaplanMeier.Step> curve = lasting.curve();
        return new Figure(
                CURVE,
                title(step),
                SAYS,
                curve.isEmpty() ? null : drawn(curve, group),
                few(lasting),
                List.of(
                        Head.words(HOURS),
                        Head.number(WATCHED),
                        Head.number(NOT_OVER),
                        Head.number(FROM),
                        Head.number(TO)),
                rows(curve, group, "", List.of()),
                List.of());
    }

    private static String title(@Nullable Step step) {
        return step == null ? "How long from opening to closing" : "How long in " + step.title();
    }

    private static String few(Lasting lasting) {
        return lasting.isEnough()
                ? ""
                : lasting.ended() + " of " + Lasting.ENOUGH + " needed: too few are over to draw.";
    }

    /**
     * @param key before those of the rows
     * @param second cells behind the first
     */
    private static List<Row> rows(List<KaplanMeier.Step> curve, Group group, String key, List<String> second) {
        List<Row> rows = new ArrayList<>();
        double before = -1;
        for (KaplanMeier.Step at : curve) {
            Interval interval = at.interval(CONFIDENCE);
            List<String> cells = new ArrayList<>(List.of(Figure.hours(at.time())));
            cells.addAll(second);
            cells.addAll(List.of(
                    String.valueOf(at.atRisk()),
                    Figure.percent(at.survival()),
                    Figure.percent(interval.lower()),
                    Figure.percent(interval.upper())));
            rows.add(new Row(key + at.time(), cells, group.endedBetween(before, at.time())));
            before = at.time();
        }
        return rows;
    }

    /**
     * The curve with that of a second group in one picture, and how many of each were still watched below it.
     *
     * @param step null for the whole way
     * @param name of the group
     * @param otherName of the second one
     */
    Figure curves(@Nullable Step step, String name, StepFigures second, String otherName) {
        Group group = group(step);
        Group other = second.group(step);
        TwoLastings two = TwoLastings.of(group.lasted, other.lasted);
        List<KaplanMeier.Step> curve = two.one().curve();
        List<KaplanMeier.Step> otherCurve = two.other().curve();
        List<Row> rows = new ArrayList<>(rows(curve, group, "", List.of(name)));
        rows.addAll(rows(otherCurve, other, "beside/", List.of(otherName)));
        List<Drawn> drawn = new ArrayList<>();
        if (!curve.isEmpty()) {
            drawn.add(new Drawn(name, curve, group));
        }
        if (!otherCurve.isEmpty()) {
            drawn.add(new Drawn(otherName, otherCurve, other));
        }
        return new Figure(
                CURVE,
                title(step),
                SAYS + " " + difference(two, group, other),
                drawn.isEmpty() ? null : drawn(drawn),
                Stream.of(few(name, two.one()), few(otherName, two.other()))
                        .filter(f -> !f.isEmpty())
                        .collect(Collectors.joining(" ")),
                List.of(
                        Head.words(HOURS),
                        Head.words("Group"),
                        Head.number(WATCHED),
                        Head.number(NOT_OVER),
                        Head.number(FROM),
                        Head.number(TO)),
                rows,
                List.of());
    }

    private static String few(String name, Lasting lasting) {
        return lasting.isEnough() ? "" : "Of " + name + ": " + few(lasting);
    }

    private static String difference(TwoLastings two, Group group, Group other) {
        if (two.difference().isEmpty()) {
            return "Whether the two differ is not told from fewer than " + Lasting.ENOUGH + " of each that are over.";
        }
        if (!Collections.disjoint(new HashSet<>(group.tickets), other.tickets)) {
            return "Some tickets are in both groups, so whether they differ is not told.";
        }
        LogRank rank = two.difference().orElseThrow();
        double chance = rank.byChance();
        return "Of groups that are alike, "
                + (chance < LEAST_CHANCE ? "fewer than 1 in 1000" : Figure.number(PER_THOUSAND * chance) + " in 1000")
                + " differ by as much as these by chance alone (log-rank test, chi square "
                + Figure.number(rank.statistic()) + "). It does not say why.";
    }

    /** A group whose curve is drawn. */
    private record Drawn(String name, List<KaplanMeier.Step> curve, Group group) {}

    private static RawString drawn(List<Drawn> groups) {
        return SvgChart.draw(new Chart(
                ACROSS,
                UP,
                groups.stream()
                        .map(g -> new Series(brief(g.name()), Kind.STAIR, stair(g.curve())))
                        .toList(),
                groups.stream()
                        .map(g -> watched("Still watched, " + brief(g.name()), g.group()))
                        .toList()));
    }

    private static Chart.Row watched(String title, Group group) {
        return new Chart.Row(title, hours -> String.valueOf(Lasting.watched(group.lasted, hours)));
    }

    /** As much of a name as a picture has room for. */
    private static String brief(String name) {
        return name.length() <= BRIEF ? name : name.substring(0, BRIEF - 1).strip() + "\u2026";
    }

    private static List<Point> stair(List<KaplanMeier.Step> curve) {
        List<Point> stair = new ArrayList<>(List.of(Point.at(0, 100)));
        curve.forEach(at -> stair.add(Point.at(at.time(), 100 * at.survival())));
        return stair;
    }

    private static RawString drawn(List<KaplanMeier.Step> curve, Group group) {
        List<Point> low = new ArrayList<>();
        List<Point> high = new ArrayList<>();
        for (KaplanMeier.Step at : curve) {
            Interval interval = at.interval(CONFIDENCE);
            low.add(Point.at(at.time(), 100 * interval.lower()));
            high.add(Point.at(at.time(), 100 * interval.upper()));
        }
        return SvgChart.draw(new Chart(
                ACROSS,
                UP,
                List.of(
                        new Series("not over", Kind.STAIR, stair(curve)),
                        new Series("95 % interval, from", Kind.STAIR, low),
                        new Series("95 % interval, to", Kind.STAIR, high)),
                List.of(watched("Still watched", group))));
    }
}
