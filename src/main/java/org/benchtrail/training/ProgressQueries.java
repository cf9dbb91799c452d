package org.benchtrail.training;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.PresenceEnded;
import org.benchtrail.core.method.desk.PresenceSigned;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.training.CoachLevel;
import org.benchtrail.core.training.TrainingProgress;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.NotFound;
import org.benchtrail.ticket.TicketQueries;

/** What somebody's work shows so far: read by themselves and the mentor whom they have now; nothing of it is kept. */
@ApplicationScoped
@Transactional
class ProgressQueries {
    private final CoachQueries coach;
    private final CoachStore store;
    private final ForecastsQueries forecasts;
    private final TicketQueries tickets;
    private final Directory people;
    private final Clock clock;

    ProgressQueries(
            CoachQueries coach,
            CoachStore store,
            ForecastsQueries forecasts,
            TicketQueries tickets,
            Directory people,
            Clock clock) {
        this.coach = coach;
        this.store = store;
        this.forecasts = forecasts;
        this.tickets = tickets;
        this.people = people;
        this.clock = clock;
    }

    /** @param withForecasts whether what was forecast is added */
    ProgressView own(Actor viewer, ZoneId zone, boolean withForecasts) {
        Permissions.require(Permission.WORK_TICKETS, viewer);
        return view(viewer, viewer, zone, withForecasts);
    }

    /** @throws NotFound unless that is a trainee whose mentor the viewer is now */
    ProgressView ofTrainee(String login, Actor viewer, ZoneId zone) {
        Permissions.require(Permission.WORK_TICKETS, viewer);
        Actor trainee = people.traineesOf(viewer.account()).stream()
                .filter(t -> t.account().equals(login))
                .findFirst()
                .orElseThrow(() -> new NotFound("trainee " + login + " of yours"));
        return view(trainee, viewer, zone, false);
    }

    private ProgressView view(Actor person, Actor viewer, ZoneId zone, boolean withForecasts) {
        CoachQueries.Whole whole = coach.whole(person.account());
        List<CoachQueries.JobSaid> said = whole.jobs();
        Set<TicketNumber> numbers = new TreeSet<>(Comparator.comparingInt(TicketNumber::serial));
        said.forEach(job -> {
            if (job.ticket() != null) {
                numbers.add(job.ticket());
            }
        });
        Map<TicketNumber, JobSheet> sheets = tickets.sound(numbers, viewer);
        List<TrainingProgress.Job> jobs = new ArrayList<>();
        for (CoachQueries.JobSaid job : said) {
            JobSheet sheet = job.ticket() == null ? null : sheets.get(job.ticket());
            if (job.family() != null) {
                jobs.add(new TrainingProgress.Job(trade(job.family()), true, job.events()));
            } else if (sheet != null) {
                jobs.add(new TrainingProgress.Job(sheet.opened().category(), false, job.events()));
            }
        }
        TrainingProgress progress = TrainingProgress.of(jobs);
        Map<String, String> names = people.names();
        return new ProgressView(
                person.account(),
                person.name(),
                person.account().equals(viewer.account()),
                Moments.text(clock.instant(), zone),
                since(sheets, person, zone),
                mentors(sheets, person, names),
                jobs(jobs),
                progress.lines().stream().map(ProgressQueries::line).toList(),
                progress.unseen().stream().map(Requirement::title).toList(),
                dangerous(numbers, sheets, person, names, zone),
                (int) said.stream().filter(CoachQueries.JobSaid::harmed).count(),
                levels(whole.levels()),
                store.heads(numbers).stream()
                        .map(h -> new ProgressView.Head(h.number().toString(), h.entry(), h.hash()))
                        .toList(),
                withForecasts ? forecasts.own(viewer, zone) : null);
    }

    private static Category trade(Family family) {
        return Category.valueOf(family.trade());
    }

    private static String since(Map<TicketNumber, JobSheet> sheets, Actor person, ZoneId zone) {
        return sheets.values().stream()
                .flatMap(sheet -> sheet.facts().stream())
                .filter(f -> f.stamp().by().equals(person.account()))
                .map(f -> f.stamp().at())
                .min(Instant::compareTo)
                .map(at -> Moments.text(at, zone))
                .orElse("");
    }

    private String mentors(Map<TicketNumber, JobSheet> sheets, Actor person, Map<String, String> names) {
        Set<String> signed = sheets.values().stream()
                .flatMap(sheet -> sheet.all(Signed.class, s -> s.fact().signatory() == Signatory.MENTOR).stream())
                .map(s -> s.stamp().by())
                .collect(Collectors.toCollection(TreeSet::new));
        String now = people.mentorOf(person.account());
        List<String> parts = new ArrayList<>();
        if (!now.isEmpty()) {
            parts.add("now " + names.getOrDefault(now, now));
        }
        if (!signed.isEmpty()) {
            parts.add("signed by "
                    + signed.stream().map(s -> names.getOrDefault(s, s)).collect(Collectors.joining(", ")));
        }
        return String.join("; ", parts);
    }

    private static List<ProgressView.Jobs> jobs(List<TrainingProgress.Job> jobs) {
        Map<Category, int[]> counts = new TreeMap<>();
        jobs.forEach(job -> counts.computeIfAbsent(job.trade(), t -> new int[2])[job.practice() ? 1 : 0]++);
        return counts.entrySet().stream()
                .map(e -> new ProgressView.Jobs(e.getKey().title(), e.getValue()[0], e.getValue()[1]))
                .toList();
    }

    private static ProgressView.Line line(TrainingProgress.Line line) {
        return new ProgressView.Line(
                line.requirement().step().title(),
                line.requirement().title(),
                line.trade().title(),
                line.practice() ? "practice" : "live",
                line.met().hits() + " of " + line.met().trials(),
                ForecastsQueries.percent(line.interval()),
                line.isSpokenOf());
    }

    private static List<ProgressView.Dangerous> dangerous(
            Set<TicketNumber> numbers,
            Map<TicketNumber, JobSheet> sheets,
            Actor person,
            Map<String, String> names,
            ZoneId zone) {
        List<ProgressView.Dangerous> acts = new ArrayList<>();
        for (TicketNumber number : numbers) {
            JobSheet sheet = sheets.get(number);
            if (sheet != null) {
                sheet.all(PresenceSigned.class, p -> p.fact().trainee().equals(person.account()))
                        .forEach(p -> acts.add(new ProgressView.Dangerous(
                                number.toString(),
                                p.entry(),
                                DangerousAct.of(sheet, p.fact().about())
                                        .map(DangerousAct::what)
                                        .orElse("An act that was taken back"),
                                names.getOrDefault(p.stamp().by(), p.stamp().by()) + ", "
                                        + Moments.text(p.stamp().at(), zone),
                                ended(sheet, p))));
            }
        }
        return acts;
    }

    private static String ended(JobSheet sheet, StandingFact<PresenceSigned> presence) {
        return sheet.latest(PresenceEnded.class, e -> e.fact().presence() == presence.entry())
                .map(e -> Boolean.TRUE.equals(e.fact().stayed()) ? "stayed" : "did not stay")
                .orElse("not said");
    }

    private static List<ProgressView.Level> levels(Map<String, CoachLevel> shown) {
        List<ProgressView.Level> levels = new ArrayList<>();
        for (Step step : Step.values()) {
            Map<CoachLevel, Long> counts = Requirements.of(step).stream()
                    .collect(Collectors.groupingBy(
                            r -> shown.getOrDefault(r.code(), CoachLevel.EXAMPLE),
                            TreeMap::new,
                            Collectors.counting()));
            levels.add(new ProgressView.Level(
                    step.title(),
                    counts.entrySet().stream()
                            .map(e -> e.getKey().words() + " at " + e.getValue())
                            .collect(Collectors.joining("; "))));
        }
        return levels;
    }
}
