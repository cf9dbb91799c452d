package org.benchtrail.training;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.core.diagnosis.Learned;
import org.benchtrail.core.learning.ForecastScores;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.ForecastKind;
import org.benchtrail.core.statistics.Interval;
import org.benchtrail.core.training.ChanceContent;
import org.benchtrail.core.training.ChanceOutcome;
import org.benchtrail.core.training.ForecastContent;
import org.benchtrail.core.training.ForecastsMade;
import org.benchtrail.learning.CaseTruths;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.NotFound;
import org.benchtrail.ticket.TicketQueries;

/** Forecasts as their author reads them, and the mentor that the author has now; nobody else. */
@ApplicationScoped
@Transactional
class ForecastsQueries {
    private static final double MUCH_SKIPPED = 0.3;
    private static final String OTHER = ForecastContent.OTHER;

    private final ForecastStore store;
    private final CaseTruths truths;
    private final Catalogues catalogues;
    private final Directory people;
    private final TicketQueries tickets;

    ForecastsQueries(
            ForecastStore store, CaseTruths truths, Catalogues catalogues, Directory people, TicketQueries tickets) {
        this.tickets = tickets;
        this.store = store;
        this.truths = truths;
        this.catalogues = catalogues;
        this.people = people;
    }

    ForecastsView own(Actor viewer, ZoneId zone) {
        Permissions.require(Permission.WORK_TICKETS, viewer);
        return view(viewer, viewer, zone);
    }

    /** @throws NotFound unless that is a trainee whose mentor the viewer is now */
    ForecastsView ofTrainee(String login, Actor viewer, ZoneId zone) {
        Permissions.require(Permission.WORK_TICKETS, viewer);
        Actor trainee = people.traineesOf(viewer.account()).stream()
                .filter(t -> t.account().equals(login))
                .findFirst()
                .orElseThrow(() -> new NotFound("trainee " + login + " of yours"));
        store.noteReading(login, viewer.account());
        return view(trainee, viewer, zone);
    }

    /** Erases one of the viewer's own, once it is scored, or any once they are no trainee any more. */
    void erase(String ticket, int entry, Actor viewer) {
        Permissions.require(Permission.WORK_TICKETS, viewer);
        Read read = read(viewer);
        ForecastStore.Row row = Stream.concat(read.rows.stream(), read.chances.stream())
                .filter(r -> r.number().toString().equals(ticket) && r.entry() == entry && isErasable(r, read, viewer))
                .findFirst()
                .orElseThrow(() -> new NotFound("forecast that can be erased now"));
        store.erase(viewer.account(), row);
    }

    private static boolean isErasable(ForecastStore.Row row, Read read, Actor person) {
        return !person.is(Role.TRAINEE) || read.truths.containsKey(row.number());
    }

    /**
     * @param rows of causes
     * @param chances of single things
     */
    private record Read(
            List<ForecastStore.Row> rows, List<ForecastStore.Row> chances, Map<TicketNumber, String> truths) {
        /** What may be scored: an accepted cause, and nothing seen before. */
        private boolean counts(ForecastStore.Row row) {
            return truths.containsKey(row.number()) && !row.seen();
        }
    }

    private Read read(Actor person) {
        List<ForecastStore.Row> rows = store.of(person.account());
        Set<TicketNumber> tickets = new HashSet<>();
        rows.forEach(row -> tickets.add(row.number()));
        return new Read(
                rows.stream().filter(ForecastStore.Row::isOfCauses).toList(),
                rows.stream().filter(row -> !row.isOfCauses()).toList(),
                truths.of(tickets));
    }

    private ForecastsView view(Actor person, Actor viewer, ZoneId zone) {
        Read read = read(person);
        ForecastsMade made = new ForecastsMade(read.rows.stream()
                .filter(read::counts)
                .map(row -> scored(row, read.truths.getOrDefault(row.number(), "")))
                .toList());
        long skipped = store.skipped(person.account());
        long due = skipped + read.rows.size();
        Map<String, String> names = names();
        boolean own = person.account().equals(viewer.account());
        long left = read.rows.stream().filter(ForecastStore.Row::seen).count();
        return new ForecastsView(
                person.account(),
                person.name(),
                own,
                made.words(),
                due > 0 && skipped > MUCH_SKIPPED * due,
                skipped + " of " + due,
                scores(made),
                made.scores().map(ForecastsQueries::cells).orElse(List.of()),
                (read.rows.size() - made.scored().size() - left) + " wait for an accepted cause; " + left
                        + " made after a colleague's sheet was seen, which is never scored.",
                read.rows.stream()
                        .map(row -> line(row, read, person, own, names, zone))
                        .toList(),
                chances(read, person, viewer, names),
                readings(person, zone),
                own
                        ? people.traineesOf(viewer.account()).stream()
                                .map(t -> new ForecastsView.Pair(t.account(), t.name()))
                                .toList()
                        : List.of());
    }

    private ForecastsView.Chances chances(Read read, Actor person, Actor viewer, Map<String, String> names) {
        Set<TicketNumber> numbers = new TreeSet<>(Comparator.comparingInt(TicketNumber::serial));
        read.chances.forEach(row -> numbers.add(row.number()));
        Map<TicketNumber, JobSheet> sheets = numbers.isEmpty() ? Map.of() : tickets.sound(numbers, viewer);
        boolean own = person.account().equals(viewer.account());
        List<ForecastsView.Chance> lines = new ArrayList<>();
        List<ForecastScores.Forecast> scored = new ArrayList<>();
        for (ForecastStore.Row row : read.chances) {
            ChanceContent said = row.chance();
            JobSheet sheet = sheets.get(row.number());
            Optional<Boolean> came = sheet == null || row.seen()
                    ? Optional.empty()
                    : ChanceOutcome.of(sheet, said, row.entry(), read.truths.containsKey(row.number()));
            came.ifPresent(c -> scored.add(ForecastScores.Forecast.picked(row.ticket(), said.percent(), c)));
            lines.add(new ForecastsView.Chance(
                    row.number().toString(),
                    row.entry(),
                    said.percent() + " % " + words(said, names),
                    came.map(c -> c ? "it came" : "it did not come").orElse("not scored"),
                    own && isErasable(row, read, person)));
        }
        if (scored.isEmpty()) {
            return new ForecastsView.Chances("", List.of(), lines);
        }
        ForecastScores scores = new ForecastScores(scored);
        String over = scores.overconfidence()
                .map(o -> ForecastsMade.words(o.mean(), o.interval()))
                .orElse("Too few tickets to hold how sure against how right: from five on it is said.");
        return new ForecastsView.Chances(
                scored.size() + " scored, Brier score " + decimal(scores.brier()) + ", 0 is best and 1 worst. " + over,
                cells(scores),
                lines);
    }

    private static String words(ChanceContent said, Map<String, String> names) {
        return switch (said.kind()) {
            case CHECK -> "that check " + said.about() + " comes as expected";
            case ACTION -> "that the trouble is gone after action " + said.about();
            default -> names.getOrDefault(said.about(), said.about()) + ": " + said.value();
        };
    }

    private List<ForecastsView.Pair> readings(Actor person, ZoneId zone) {
        List<ForecastStore.Reading> readings = store.readings(person.account());
        Map<String, String> readers = people.names(
                readings.stream().map(ForecastStore.Reading::reader).toList());
        return readings.stream()
                .map(r -> new ForecastsView.Pair(
                        readers.getOrDefault(r.reader(), r.reader()), Moments.text(r.at(), zone)))
                .toList();
    }

    private static ForecastsMade.Scored scored(ForecastStore.Row row, String truth) {
        return new ForecastsMade.Scored(row.ticket(), row.content().all(), truth, row.chances());
    }

    private static List<ForecastsView.Pair> scores(ForecastsMade made) {
        if (made.scored().isEmpty()) {
            return List.of();
        }
        List<ForecastsView.Pair> scores = new ArrayList<>();
        scores.add(new ForecastsView.Pair("Scored", String.valueOf(made.scored().size())));
        scores.add(new ForecastsView.Pair("Brier score, 0 is best and 1 worst", decimal(made.brier())));
        made.skill()
                .ifPresent(skill -> scores.add(new ForecastsView.Pair(
                        "Skill against the catalogue's own chances, 0 is as good", decimal(skill))));
        scores.add(new ForecastsView.Pair(
                "The true cause was given 0 %", made.ruledOut() == 1 ? "once" : made.ruledOut() + " times"));
        return scores;
    }

    private static List<ForecastsView.Cell> cells(ForecastScores scores) {
        return scores.cells().stream()
                .map(cell -> new ForecastsView.Cell(
                        cell.percent() + " %",
                        cell.came().hits() + " of " + cell.came().trials(),
                        percent(cell.interval()),
                        cell.isSpokenOf()))
                .toList();
    }

    static String percent(Interval interval) {
        return String.format(Locale.ROOT, "%.0f to %.0f %%", 100 * interval.lower(), 100 * interval.upper());
    }

    private static String decimal(double value) {
        return String.format(Locale.ROOT, "%.2f", value + 0.0);
    }

    private static ForecastsView.Line line(
            ForecastStore.Row row, Read read, Actor person, boolean own, Map<String, String> names, ZoneId zone) {
        ForecastContent forecast = row.content();
        List<String> causes = forecast.all().entrySet().stream()
                .sorted(Map.Entry.comparingByValue(Comparator.reverseOrder()))
                .map(e -> e.getValue() + " % "
                        + (e.getKey().equals(OTHER) ? "something else" : names.getOrDefault(e.getKey(), e.getKey())))
                .toList();
        String next = forecast.nextTest();
        return new ForecastsView.Line(
                row.number().toString(),
                row.entry(),
                "round " + row.round()
                        + (row.kind().equals(ForecastKind.CAUSES_EARLY.name()) ? ", before what is alike" : ""),
                Moments.text(row.made(), zone),
                causes,
                next.isEmpty() ? "" : names.getOrDefault(next, next),
                result(row, read, names),
                own && isErasable(row, read, person));
    }

    private static String result(ForecastStore.Row row, Read read, Map<String, String> names) {
        String truth = read.truths.get(row.number());
        if (truth == null) {
            return "not scored: no accepted cause";
        }
        String was = "It was: " + names.getOrDefault(truth, "something that is not listed") + ". ";
        if (row.seen()) {
            return was + "Not scored: its causes were seen before.";
        }
        ForecastsMade.Scored scored = scored(row, truth);
        return was + (scored.isRuledOut() ? "It had been given 0 %; " : "") + "Brier score " + decimal(scored.brier());
    }

    /** Causes and findings by id, of every kind of trouble. */
    private Map<String, String> names() {
        Map<String, String> names = new HashMap<>();
        for (Learned figures : catalogues.inForce().figures().values()) {
            figures.category().causes().forEach(c -> names.put(c.id(), c.name()));
            figures.category().findings().forEach(f -> names.put(f.id(), f.label()));
        }
        return names;
    }
}
