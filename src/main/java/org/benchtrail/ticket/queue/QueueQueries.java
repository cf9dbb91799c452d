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
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.site.WorkingTime;
import org.benchtrail.people.Directory;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.site.DeviceBook;
import org.benchtrail.site.SiteBook;
import org.benchtrail.ticket.KnownCauses;
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

    private final TicketListQueries lists;
    private final KnownCauses known;
    private final Directory people;
    private final AlarmActs alarms;
    private final SiteBook site;
    private final DeviceBook devices;
    private final Clock clock;

    QueueQueries(
            TicketListQueries lists,
            KnownCauses known,
            Directory people,
            AlarmActs alarms,
            SiteBook site,
            DeviceBook devices,
            Clock clock) {
        this.alarms = alarms;
        this.lists = lists;
        this.known = known;
        this.people = people;
        this.site = site;
        this.devices = devices;
        this.clock = clock;
    }

    QueueView queue(QueueAsked asked, Actor viewer, ZoneId zone) {
        QueuePart part = lists.queue(asked.filter(viewer.account()), viewer);
        Map<String, String> names = people.names(part.assignees());
        Instant now = clock.instant();
        WorkingTime time = site.history().workingTime();
        List<QueueView.Line> lines = part.tickets().stream()
                .map(t -> QueueView.Line.of(t, names, now, zone, time))
                .toList();
        return QueueView.of(part, lines, alarms.standing(viewer), people.workers(), asked);
    }

    /** The ticket whose number is all that was typed, with its check digit or without. */
    Optional<TicketNumber> numbered(QueueAsked asked, Actor viewer) {
        return asked.after().isEmpty() ? lists.numbered(TicketNumber.meant(asked.text()), viewer) : Optional.empty();
    }

    /** The fields of a new ticket about that device. */
    FormValues about(String label) {
        return devices.known(label)
                .map(d -> new FormValues()
                        .set("device", d.label())
                        .set("place", d.place())
                        .set("category", d.category().name()))
                .orElseGet(FormValues::new);
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
        return new AlikeView(
                lists.alike(words, 0, viewer).stream()
                        .filter(t -> t.standing() == Standing.OPEN)
                        .toList(),
                known.like(title, category, List.of(), ALIKE),
                known.solved(words, ALIKE));
    }
}
