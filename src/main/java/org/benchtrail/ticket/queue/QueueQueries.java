package org.benchtrail.ticket.queue;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.site.WorkingTime;
import org.benchtrail.people.Directory;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.site.DeviceBook;
import org.benchtrail.site.DeviceView;
import org.benchtrail.site.SiteBook;
import org.benchtrail.ticket.HandOvers;
import org.benchtrail.ticket.KnownCauses;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.QueueFilter;
import org.benchtrail.ticket.QueuePart;
import org.benchtrail.ticket.TicketListQueries;
import org.benchtrail.ticket.alarm.AlarmActs;
import org.jspecify.annotations.Nullable;

/** What the pages of the queue and of a new ticket show, each read in one transaction. */
@ApplicationScoped
@Transactional
class QueueQueries {
    private static final int ALIKE = 3;
    private static final int OFFERED = 300;
    private static final int LINES = 25;

    private final TicketListQueries lists;
    private final KnownCauses known;
    private final Directory people;
    private final AlarmActs alarms;
    private final SiteBook site;
    private final DeviceBook devices;
    private final SavedFilters saved;
    private final HandOvers handOvers;
    private final Clock clock;

    QueueQueries(
            TicketListQueries lists,
            KnownCauses known,
            Directory people,
            AlarmActs alarms,
            SiteBook site,
            DeviceBook devices,
            SavedFilters saved,
            HandOvers handOvers,
            Clock clock) {
        this.saved = saved;
        this.handOvers = handOvers;
        this.alarms = alarms;
        this.lists = lists;
        this.known = known;
        this.people = people;
        this.site = site;
        this.devices = devices;
        this.clock = clock;
    }

    /** @param form what was sent from the page and refused; null if nothing was */
    QueueView queue(QueueAsked asked, Actor viewer, ZoneId zone, @Nullable PostedForm form, List<Problem> problems) {
        Instant now = clock.instant();
        WorkingTime time = site.history().workingTime();
        QueueFilter filter =
                asked.filter(viewer.account(), now, zone).after(asked.begin()).lines(LINES);
        QueuePart part = lists.queue(filter, viewer);
        Map<String, String> names = people.names(part.assignees());
        List<QueueView.Line> lines = part.tickets().stream()
                .map(t -> QueueView.Line.of(t, names, asked.sorting(), now, zone, time))
                .toList();
        FormValues fill = new FormValues().put("", asked);
        if (form != null) {
            fill.typed(form.typed(), problems);
        }
        return QueueView.of(
                part,
                lines,
                alarms.standing(viewer),
                people.takers(now),
                saved.of(viewer),
                asked,
                viewer,
                fill,
                problems);
    }

    /** What is to be handed over when all that the filter fits is. */
    List<HandOvers.Seen> seen(QueueAsked asked, Actor by, ZoneId zone) {
        return handOvers.seen(asked.filter(by.account(), clock.instant(), zone).lines(HandOvers.MOST), by);
    }

    /** The ticket whose number is all that was typed, with its check digit or without. */
    Optional<TicketNumber> numbered(QueueAsked asked, Actor viewer) {
        return asked.after().isEmpty() ? lists.numbered(TicketNumber.meant(asked.text()), viewer) : Optional.empty();
    }

    /** The fields of a new ticket about that device. */
    FormValues about(String label, Actor viewer) {
        return (label.isBlank() ? Optional.<DeviceView>empty() : devices.known(label))
                .map(d -> new FormValues()
                        .set("device", d.label())
                        .set("place", d.place())
                        .set("category", d.category().name())
                        .set("requester", lists.reporter(d.label(), viewer).orElse("")))
                .orElseGet(FormValues::new);
    }

    /** The report with what the site knows: where its device stands, and how its requester was reached before. */
    NewTicket completed(NewTicket report, Actor viewer) {
        return report.completedBy(
                devices.known(report.device()).map(DeviceView::place).orElse(""),
                lists.contact(report.requester(), viewer).orElse(""));
    }

    NamedBefore named(Actor viewer) {
        return new NamedBefore(
                both(devices.placeNames(), lists.places(viewer)), both(devices.labels(), lists.devices(viewer)));
    }

    /** What the site knows first, then what tickets named. */
    private static List<String> both(List<String> known, List<String> named) {
        return Stream.concat(known.stream(), named.stream())
                .distinct()
                .limit(OFFERED)
                .toList();
    }

    AlikeView alike(String title, String device, @Nullable Category category, Actor viewer) {
        String words = title + " " + device;
        // a trainee who takes the ticket forecasts its causes first
        boolean causes = !viewer.is(Role.TRAINEE);
        return new AlikeView(
                lists.alike(words, 0, viewer).stream()
                        .filter(t -> t.standing() == Standing.OPEN)
                        .toList(),
                causes ? known.like(title, category, List.of(), ALIKE) : List.of(),
                causes ? known.solved(words, ALIKE) : List.of());
    }
}
