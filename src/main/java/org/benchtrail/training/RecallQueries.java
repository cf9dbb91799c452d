package org.benchtrail.training;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.training.RecallForm.Answering;
import org.benchtrail.core.training.RecallItem;
import org.benchtrail.core.training.RecallItem.Choice;
import org.benchtrail.core.training.RecallItem.Source;
import org.benchtrail.core.training.RecallJob;
import org.benchtrail.core.training.RecallMaker;
import org.benchtrail.core.training.RecallPlan;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.ticket.QueueFilter;
import org.benchtrail.ticket.TicketLine;
import org.benchtrail.ticket.TicketListQueries;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.Times;
import org.benchtrail.ticket.coach.CoachFile;

/** The questions at the beginning of a shift, as they are asked of one person, by nobody else, from what they worked themselves. */
@ApplicationScoped
@Transactional
class RecallQueries {
    private static final Duration SOON = Duration.ofMinutes(15);
    private static final int OWN = 50;
    private static final String PARTED = ",";

    private final RecallStore store;
    private final RecallPractice practice;
    private final TicketQueries tickets;
    private final TicketListQueries lists;
    private final CoachFile texts;
    private final Clock clock;

    RecallQueries(
            RecallStore store,
            RecallPractice practice,
            TicketQueries tickets,
            TicketListQueries lists,
            CoachFile texts,
            Clock clock) {
        this.store = store;
        this.practice = practice;
        this.tickets = tickets;
        this.lists = lists;
        this.texts = texts;
        this.clock = clock;
    }

    /** What one person's day asks, and what they said to it. */
    private record Day(
            LocalDate date, List<RecallItem> asked, Map<String, RecallStore.Row> said, List<RecallStore.Row> all) {
        private Optional<RecallItem> next() {
            return asked.stream().filter(i -> !said.containsKey(i.id())).findFirst();
        }
    }

    /** How many are asked and not answered; 0 where nothing is offered. */
    long waiting(Actor viewer, ZoneId zone) {
        if (state(viewer, zone) != RecallView.State.ASKED) {
            return 0;
        }
        Day day = day(viewer, zone);
        return day.asked.stream().filter(i -> !day.said.containsKey(i.id())).count();
    }

    RecallView today(Actor viewer, ZoneId zone) {
        Permissions.require(Permission.WORK_TICKETS, viewer);
        RecallView.State state = state(viewer, zone);
        if (state == RecallView.State.NOT_ASKED || state == RecallView.State.URGENT) {
            return RecallView.nothing(state);
        }
        Day day = day(viewer, zone);
        List<RecallView.Told> told = day.asked.stream()
                .flatMap(i -> Optional.ofNullable(day.said.get(i.id())).map(said -> told(i, said)).stream())
                .toList();
        Optional<RecallItem> next = state == RecallView.State.SKIPPED ? Optional.empty() : day.next();
        return new RecallView(
                next.isPresent() || state == RecallView.State.SKIPPED
                        ? state
                        : told.isEmpty() ? RecallView.State.NONE : RecallView.State.DONE,
                told,
                next.map(i -> asked(i, zone)).orElse(null),
                told.size() + 1,
                day.asked.size(),
                day.all.size(),
                day.all.stream().filter(RecallStore.Row::hit).count());
    }

    /**
     * Keeps an answer; what was answered on that day already stands.
     *
     * @throws Invalid if it is none of the day's questions, or no answer
     */
    void answer(String item, List<String> answer, Actor viewer, ZoneId zone) {
        Permissions.require(Permission.WORK_TICKETS, viewer);
        if (state(viewer, zone) != RecallView.State.ASKED) {
            throw new Invalid("form", "Nothing is asked now.");
        }
        Day day = day(viewer, zone);
        RecallItem asked = day.asked.stream()
                .filter(i -> i.id().equals(item))
                .findFirst()
                .orElseThrow(() -> new Invalid("form", "That is no question of today."));
        if (!day.said.containsKey(item)) {
            store.answer(
                    viewer.account(),
                    new RecallStore.Row(item, day.date, String.join(PARTED, answer), asked.isRight(answer)));
        }
    }

    /** No more today; nothing counts as wrong by it. */
    void skip(Actor viewer, ZoneId zone) {
        Permissions.require(Permission.WORK_TICKETS, viewer);
        store.end(viewer.account(), date(zone));
    }

    /** All answers of the viewer's are gone; the day is over with it, so that nothing is answered a second time. */
    void erase(Actor viewer, ZoneId zone) {
        Permissions.require(Permission.WORK_TICKETS, viewer);
        store.erase(viewer.account());
        store.end(viewer.account(), date(zone));
    }

    private LocalDate date(ZoneId zone) {
        return clock.instant().atZone(zone).toLocalDate();
    }

    private RecallView.State state(Actor viewer, ZoneId zone) {
        if (!viewer.is(Role.TRAINEE)) {
            return RecallView.State.NOT_ASKED;
        }
        if (store.isEnded(viewer.account(), date(zone))) {
            return RecallView.State.SKIPPED;
        }
        return isUrgent(viewer) ? RecallView.State.URGENT : RecallView.State.ASKED;
    }

    private boolean isUrgent(Actor viewer) {
        Instant now = clock.instant();
        List<TicketLine> open = lists.queue(
                        QueueFilter.of(Standing.OPEN).assignee(viewer.account()).lines(OWN), viewer)
                .tickets();
        boolean soon = open.stream().anyMatch(t -> !t.isOverdue(now) && t.isOverdue(now.plus(SOON)));
        return soon
                || tickets
                        .sound(
                                open.stream()
                                        .map(t -> new TicketNumber(t.serial()))
                                        .toList(),
                                viewer)
                        .values()
                        .stream()
                        .anyMatch(JobSheet::workStopped);
    }

    private Day day(Actor viewer, ZoneId zone) {
        LocalDate today = date(zone);
        List<RecallStore.Row> all = store.answers(viewer.account());
        List<RecallPlan.Answered> answers =
                all.stream().map(RecallStore.Row::answered).toList();
        Map<String, Integer> before = new HashMap<>();
        Map<String, RecallStore.Row> said = new HashMap<>();
        all.forEach(r -> {
            if (r.day().isBefore(today)) {
                before.merge(r.item(), 1, Integer::sum);
            } else {
                said.put(r.item(), r);
            }
        });
        List<RecallJob> jobs = new ArrayList<>(practice.jobs(viewer));
        jobs.addAll(closed(viewer));
        List<RecallItem> items = RecallMaker.of(jobs, texts.texts(), before);
        return new Day(today, RecallPlan.of(items, answers, today, zone), said, all);
    }

    /** One that was opened again says nothing until it is closed again. */
    private List<RecallJob> closed(Actor viewer) {
        List<RecallJob> jobs = new ArrayList<>();
        tickets.sound(store.tickets(viewer.account()), viewer).forEach((number, sheet) -> {
            Instant closed = sheet.course().closed();
            if (sheet.course().standing() == Standing.CLOSED && closed != null) {
                Source source = new Source(
                        number.toString(),
                        "/tickets/" + number + "/record",
                        "/tickets/" + number + "/entries/",
                        sheet.opened().category().title(),
                        closed);
                jobs.add(new RecallJob(source, viewer.account(), sheet, Soaks.of(sheet), Optional.empty()));
            }
        });
        return jobs;
    }

    private static RecallView.Asked asked(RecallItem item, ZoneId zone) {
        return new RecallView.Asked(
                item.id(),
                item.form().answering(),
                item.asks(),
                item.given(),
                item.choices(),
                item.source().trade(),
                Times.text(item.source().ended(), zone));
    }

    private static RecallView.Told told(RecallItem item, RecallStore.Row said) {
        return new RecallView.Told(
                item.asks(),
                item.given(),
                said.hit(),
                words(item, Arrays.asList(said.given().split(PARTED, -1))),
                item.form().answering() == Answering.NUMBER ? List.of(item.because()) : words(item, item.key()),
                item.form().answering() == Answering.NUMBER ? "" : item.because(),
                item.link());
    }

    private static List<String> words(RecallItem item, List<String> ids) {
        return ids.stream()
                .map(id -> item.choices().stream()
                        .filter(c -> c.id().equals(id))
                        .findFirst()
                        .map(Choice::words)
                        .orElse(id))
                .toList();
    }
}
