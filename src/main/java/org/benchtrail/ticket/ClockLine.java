package org.benchtrail.ticket;

import java.time.Instant;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.site.TicketClock;

/**
 * The clock of a ticket in one line of its row, so that due times are made anew without reading trails: start, priority, whether
 * it is answered, then a word for each hold: {@code PART/2026-06-01T08:00:00Z/2026-06-02T08:00:00Z}.
 */
final class ClockLine {
    private static final int HEAD = 3;
    private static final String ANSWERED = "answered";

    private ClockLine() {}

    static String of(TicketClock clock) {
        Stream<String> head =
                Stream.of(clock.start().toString(), clock.priority().name(), clock.answered() ? ANSWERED : "new");
        Stream<String> holds = clock.holds().stream().map(h -> h.waitingFor().name() + "/" + h.from() + "/" + h.to());
        return Stream.concat(head, holds).collect(Collectors.joining(" "));
    }

    static TicketClock read(String line) {
        String[] words = line.split(" ");
        List<TicketClock.OnHold> holds =
                Stream.of(words).skip(HEAD).map(ClockLine::hold).toList();
        return new TicketClock(Instant.parse(words[0]), Priority.valueOf(words[1]), words[2].equals(ANSWERED), holds);
    }

    private static TicketClock.OnHold hold(String word) {
        String[] parts = word.split("/");
        return new TicketClock.OnHold(WaitingFor.valueOf(parts[0]), Instant.parse(parts[1]), Instant.parse(parts[2]));
    }
}
