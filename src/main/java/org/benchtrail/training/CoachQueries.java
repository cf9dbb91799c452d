package org.benchtrail.training;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.audit.JudgedWork;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.plan.PlanRequirement;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.statistics.Proportion;
import org.benchtrail.core.training.CoachChoices;
import org.benchtrail.core.training.CoachEvent;
import org.benchtrail.core.training.CoachLevel;
import org.benchtrail.core.training.CoachStanding;
import org.benchtrail.core.training.CoachTexts;
import org.benchtrail.core.training.Ties;
import org.benchtrail.core.training.WorkJudged;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.LastUsed;
import org.benchtrail.platform.NotFound;
import org.benchtrail.ticket.coach.CoachFile;
import org.benchtrail.ticket.coach.Coaching;
import org.jspecify.annotations.Nullable;

/**
 * How much the coach shows somebody, from what is recorded of their work: steps left and refused, what audits and mentors found, and
 * practice jobs that have ended. Nothing of it is kept; only what somebody chose is.
 */
@ApplicationScoped
@Transactional
class CoachQueries implements Coaching {
    private static final int KEPT_JOBS = 2000;

    private final CoachStore store;
    private final PracticeStore practice;
    private final JudgedWork audits;
    private final Catalogues catalogues;
    private final CoachFile file;
    private final Directory people;
    private final Clock clock;

    /** Nothing of an ended job changes: what it told is told again. */
    private final Map<Integer, PracticeJudged.Told> told = LastUsed.map(KEPT_JOBS);

    CoachQueries(
            CoachStore store,
            PracticeStore practice,
            JudgedWork audits,
            Catalogues catalogues,
            CoachFile file,
            Directory people,
            Clock clock) {
        this.store = store;
        this.practice = practice;
        this.audits = audits;
        this.catalogues = catalogues;
        this.file = file;
        this.people = people;
        this.clock = clock;
    }

    /** What was recorded of somebody, by requirement, and when their first work was. */
    private record Recorded(Map<String, List<CoachEvent>> events, Instant begun, CoachChoices choices, double bound) {
        private CoachStanding standing(Requirement requirement, Instant now) {
            return CoachStanding.of(
                    events.getOrDefault(requirement.code(), List.of()),
                    CoachTexts.isOfSafety(requirement),
                    begun,
                    now,
                    bound);
        }

        private CoachLevel shown(Requirement requirement, Instant now) {
            return standing(requirement, now).shown(choices.at(requirement.code(), now));
        }
    }

    @Override
    public Map<String, CoachLevel> shownTo(Actor trainee) {
        return levels(recorded(trainee.account()));
    }

    /**
     * What was looked at of one job, or went wrong on it.
     *
     * @param ticket null of a practice job
     * @param family null of a ticket
     * @param harmed whether somebody, or somebody's data, came to harm on a practice job
     */
    record JobSaid(
            @Nullable TicketNumber ticket,
            @Nullable Family family,
            Map<String, List<CoachEvent>> events,
            boolean harmed) {}

    private Recorded recorded(String person) {
        CoachChoices choices = store.choices(person);
        Map<TicketNumber, List<Entry>> work = store.work(person);
        return recorded(person, choices, work, said(person, choices, work));
    }

    private Recorded recorded(
            String person, CoachChoices choices, Map<TicketNumber, List<Entry>> work, List<JobSaid> jobs) {
        Map<String, List<CoachEvent>> events = new HashMap<>();
        jobs.forEach(job -> add(job.events, events));
        return new Recorded(events, begun(work, person), choices, store.bound());
    }

    /**
     * What was said of somebody's jobs, live ones first, and how much they are shown after it.
     *
     * @param levels by code of the requirement
     */
    record Whole(List<JobSaid> jobs, Map<String, CoachLevel> levels) {}

    Whole whole(String person) {
        CoachChoices choices = store.choices(person);
        Map<TicketNumber, List<Entry>> work = store.work(person);
        List<JobSaid> jobs = said(person, choices, work);
        return new Whole(jobs, levels(recorded(person, choices, work, jobs)));
    }

    private List<JobSaid> said(String person, CoachChoices choices, Map<TicketNumber, List<Entry>> work) {
        Map<TicketNumber, List<WorkJudged.Judgement>> judged = new HashMap<>();
        if (!work.isEmpty()) {
            audits.of(person)
                    .forEach(m -> judged.computeIfAbsent(m.ticket(), t -> new ArrayList<>())
                            .add(new WorkJudged.Judgement(m.code(), m.at(), m.satisfied(), m.critical())));
        }
        List<JobSaid> said = new ArrayList<>();
        work.forEach((ticket, entries) -> said.add(new JobSaid(
                ticket, null, WorkJudged.of(entries, person, judged.getOrDefault(ticket, List.of()), choices), false)));
        practice.ended(person).forEach(ended -> said.add(practised(ended, person, choices)));
        return said;
    }

    private JobSaid practised(PracticeStore.Ended ended, String person, CoachChoices choices) {
        PracticeJudged.Told job = told(ended, person);
        return new JobSaid(
                null,
                job.family(),
                job.events(choices, ended.ended()),
                job.harm().containsKey(PlanRequirement.CAUTIONS_TAKEN.code()));
    }

    private Map<String, CoachLevel> levels(Recorded recorded) {
        Instant now = clock.instant();
        Map<String, CoachLevel> shown = new HashMap<>();
        Requirements.all().forEach(r -> shown.put(r.code(), recorded.shown(r, now)));
        return shown;
    }

    private static void add(Map<String, List<CoachEvent>> of, Map<String, List<CoachEvent>> to) {
        of.forEach((code, events) ->
                to.computeIfAbsent(code, c -> new ArrayList<>()).addAll(events));
    }

    private Instant begun(Map<TicketNumber, List<Entry>> work, String person) {
        Instant practised = practice.first(person).orElse(clock.instant());
        return firstLive(work, person).filter(at -> at.isBefore(practised)).orElse(practised);
    }

    private PracticeJudged.Told told(PracticeStore.Ended ended, String person) {
        PracticeJudged.Told known = told.get(ended.id());
        if (known != null) {
            return known;
        }
        PracticeJob job =
                practice.job(ended.id(), person).orElseThrow(() -> new NotFound("practice job " + ended.id()));
        PracticeJudged.Told now = PracticeJudged.of(
                job,
                ended.ended(),
                catalogues
                        .inForce()
                        .model(Ties.of(job.truth().family()).category())
                        .orElseThrow());
        told.put(ended.id(), now);
        return now;
    }

    /** When that person first left a step of a ticket, or tried to. */
    Optional<Instant> firstLive(String person) {
        return firstLive(store.work(person), person);
    }

    private static Optional<Instant> firstLive(Map<TicketNumber, List<Entry>> work, String person) {
        return work.values().stream()
                .flatMap(List::stream)
                .filter(e -> e.stamp().by().equals(person))
                .map(e -> e.stamp().at())
                .min(Instant::compareTo);
    }

    /** What was met at the first try on a practice job that has ended, see {@link WorkJudged#firstTries}. */
    Proportion firstTries(int job, Instant ended, String person) {
        PracticeJudged.Told told = told(new PracticeStore.Ended(job, ended), person);
        Set<String> untrue = new HashSet<>(told.harm().keySet());
        told.judged().stream().filter(j -> !j.satisfied()).forEach(j -> untrue.add(j.code()));
        return WorkJudged.firstTries(told.entries(), person, untrue);
    }

    /** The texts, and how much of them the viewer is shown; none while they work a job without the coach. */
    CoachPageView own(Actor viewer) {
        Permissions.require(Permission.WORK_TICKETS, viewer);
        return practice.isSilent(viewer.account())
                ? new CoachPageView(viewer.account(), viewer.name(), true, false, List.of(), List.of())
                : view(viewer, viewer);
    }

    /** @throws NotFound unless that is a trainee whose mentor the viewer is now */
    CoachPageView ofTrainee(String login, Actor viewer) {
        Permissions.require(Permission.WORK_TICKETS, viewer);
        Actor trainee = people.traineesOf(viewer.account()).stream()
                .filter(t -> t.account().equals(login))
                .findFirst()
                .orElseThrow(() -> new NotFound("trainee " + login + " of yours"));
        return view(trainee, viewer);
    }

    private CoachPageView view(Actor person, Actor viewer) {
        boolean coached = person.is(org.benchtrail.core.method.Role.TRAINEE);
        Instant now = clock.instant();
        Recorded recorded = coached ? recorded(person.account()) : null;
        List<CoachPageView.Part> parts = new ArrayList<>();
        for (Step step : Step.values()) {
            parts.add(new CoachPageView.Part(
                    step.title(),
                    Requirements.of(step).stream()
                            .map(r -> row(r, recorded, now))
                            .toList()));
        }
        boolean own = person.account().equals(viewer.account());
        return new CoachPageView(
                person.account(),
                person.name(),
                own,
                coached,
                parts,
                own
                        ? people.traineesOf(viewer.account()).stream()
                                .map(t -> new ForecastsView.Pair(t.account(), t.name()))
                                .toList()
                        : List.of());
    }

    private CoachPageView.Row row(Requirement requirement, @Nullable Recorded recorded, Instant now) {
        if (recorded == null) {
            return new CoachPageView.Row(file.texts().of(requirement.code()), requirement.title(), null, "", false);
        }
        CoachStanding standing = recorded.standing(requirement, now);
        CoachLevel shown = recorded.shown(requirement, now);
        String counted = standing.looked() == 0
                ? "nothing looked at yet at this level"
                : standing.met() + " of " + standing.looked() + " met at this level";
        return new CoachPageView.Row(
                file.texts().of(requirement.code()),
                requirement.title(),
                shown,
                shown == standing.level()
                        ? counted
                        : "as you chose; left to the coach it is "
                                + standing.level().words() + ", " + counted,
                CoachTexts.isOfSafety(requirement));
    }

    /**
     * @param code of a requirement; empty for all
     * @param level its name; empty to leave it to the coach again
     */
    void choose(String code, String level, Actor viewer) {
        Permissions.require(Permission.WORK_TICKETS, viewer);
        new Invalid.Collector()
                .require(code.isEmpty() || Requirements.of(code).isPresent(), "form", "There is no such requirement.")
                .require(
                        level.isEmpty() || CoachPageView.LEVELS.contains(level),
                        "form",
                        "Choose one of what is offered.")
                .throwIfAny();
        store.choose(viewer.account(), code, level.isEmpty() ? null : CoachLevel.valueOf(level));
    }
}
