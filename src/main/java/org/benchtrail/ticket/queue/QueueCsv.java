package org.benchtrail.ticket.queue;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Actor;
import org.benchtrail.people.Directory;
import org.benchtrail.platform.Csv;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.Cursor;
import org.benchtrail.ticket.QueueFilter;
import org.benchtrail.ticket.TicketLine;
import org.benchtrail.ticket.TicketListQueries;
import org.jspecify.annotations.Nullable;

/** The queue as a file: every ticket that a filter fits, in its order, read a stretch at a time. */
@ApplicationScoped
class QueueCsv {
    private static final int STRETCH = 200;

    private static final List<String> HEADS = List.of(
            "number",
            "what is wrong",
            "kind of trouble",
            "device",
            "place",
            "priority",
            "step",
            "state",
            "round",
            "assigned to",
            "opened",
            "due",
            "waits for",
            "look at it again",
            "escalated",
            "last act");

    private final TicketListQueries lists;
    private final Directory people;
    private final Clock clock;

    QueueCsv(TicketListQueries lists, Directory people, Clock clock) {
        this.lists = lists;
        this.people = people;
        this.clock = clock;
    }

    /** @param zone in which its times are written, with their distance from UTC */
    void write(QueueAsked asked, Csv form, Actor viewer, ZoneId zone, OutputStream file) throws IOException {
        QueueFilter.Choice choice = asked.filter(viewer.account(), clock.instant(), zone);
        write(form.line(HEADS), file);
        List<TicketLine> lines;
        do {
            lines = lists.lines(choice.lines(STRETCH), viewer);
            write(text(lines, form, zone), file);
            if (!lines.isEmpty()) {
                choice.after(Cursor.of(lines.get(lines.size() - 1), asked.sorting()));
            }
        } while (lines.size() == STRETCH);
    }

    private static void write(String text, OutputStream file) throws IOException {
        file.write(text.getBytes(StandardCharsets.UTF_8));
    }

    private String text(List<TicketLine> lines, Csv form, ZoneId zone) {
        Map<String, String> names = people.names(lines.stream()
                .map(TicketLine::assignee)
                .filter(Objects::nonNull)
                .collect(Collectors.toSet()));
        return lines.stream().map(line -> form.line(cells(line, names, zone))).collect(Collectors.joining());
    }

    private static List<String> cells(TicketLine line, Map<String, String> names, ZoneId zone) {
        String assignee = line.assignee();
        return List.of(
                line.number(),
                line.title(),
                Option.words(line.category()),
                line.device(),
                line.place(),
                line.priority().words(),
                line.step().title(),
                Option.words(line.standing()),
                Integer.toString(line.round()),
                assignee == null ? "" : names.getOrDefault(assignee, assignee),
                moment(line.opened(), zone),
                moment(line.due(), zone),
                Objects.requireNonNullElse(line.holdFor(), ""),
                moment(line.followUp(), zone),
                line.escalated() ? "yes" : "no",
                moment(line.touched(), zone));
    }

    private static String moment(@Nullable Instant at, ZoneId zone) {
        return at == null
                ? ""
                : DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(at.atZone(zone).truncatedTo(ChronoUnit.SECONDS));
    }
}
