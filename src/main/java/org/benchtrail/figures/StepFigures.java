package org.benchtrail.figures;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.benchtrail.core.figures.Lasting;
import org.benchtrail.core.figures.Lasting.Lasted;
import org.benchtrail.core.figures.Leaving;
import org.benchtrail.core.figures.TicketTimes;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.core.statistics.Interval;
import org.benchtrail.core.statistics.KaplanMeier;
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
        List<Row> rows = new ArrayList<>();
        double before = -1;
        for (KaplanMeier.Step at : curve) {
            Interval interval = at.interval(CONFIDENCE);
            rows.add(new Row(
                    String.valueOf(at.time()),
                    List.of(
                            Figure.hours(at.time()),
                            String.valueOf(at.atRisk()),
                            Figure.percent(at.survival()),
                            Figure.percent(interval.lower()),
                            Figure.percent(interval.upper())),
                    group.endedBetween(before, at.time())));
            before = at.time();
        }
        return new Figure(
                "curve",
                step == null ? "How long from opening to closing" : "How long in " + step.title(),
                "How many of 100 are not over after so many working hours. An open ticket counts for as long as it was"
                        + " watched, and so does a cancelled one or one that went back, though that is not chance.",
                curve.isEmpty() ? null : drawn(curve),
                curve.isEmpty() ? lasting.ended() + " of " + Lasting.ENOUGH + " needed: too few are over to draw." : "",
                List.of(
                        Head.words("Working time [h]"),
                        Head.number("Watched until then"),
                        Head.number("Not over [%]"),
                        Head.number("95 % interval from [%]"),
                        Head.number("to [%]")),
                rows,
                List.of());
    }

    private static io.quarkus.qute.RawString drawn(List<KaplanMeier.Step> curve) {
        List<Point> stair = new ArrayList<>(List.of(Point.at(0, 100)));
        List<Point> low = new ArrayList<>();
        List<Point> high = new ArrayList<>();
        for (KaplanMeier.Step at : curve) {
            Interval interval = at.interval(CONFIDENCE);
            stair.add(Point.at(at.time(), 100 * at.survival()));
            low.add(Point.at(at.time(), 100 * interval.lower()));
            high.add(Point.at(at.time(), 100 * interval.upper()));
        }
        return SvgChart.draw(new Chart(
                "working time, h",
                "not over, of 100",
                List.of(
                        new Series("not over", Kind.STAIR, stair),
                        new Series("95 % interval, from", Kind.STAIR, low),
                        new Series("95 % interval, to", Kind.STAIR, high))));
    }
}
