package org.benchtrail.figures;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.figures.MoveKinds;
import org.benchtrail.core.figures.Moved;
import org.benchtrail.core.figures.TicketTimes;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.desk.WaitingFor;
import org.jspecify.annotations.Nullable;

/** The moves of a ticket as one row of the database gives them: kind and microseconds of each, and what each hold was for. */
final class MovesText {
    private MovesText() {}

    static TicketTimes read(Instant opened, @Nullable String moves, @Nullable String holds) {
        List<Moved> read = new ArrayList<>();
        String[] held = holds == null ? new String[0] : holds.split(",");
        int hold = 0;
        for (String part : moves == null ? new String[0] : moves.split(",")) {
            int gap = part.indexOf(' ');
            Move move = MoveKinds.move(part.substring(0, gap)).orElse(null);
            Instant at = Instant.EPOCH.plus(Long.parseLong(part.substring(gap + 1)), ChronoUnit.MICROS);
            if (move == Move.HOLD) {
                String[] what = held[hold++].split(" ");
                read.add(new Moved(move, at, WaitingFor.valueOf(what[0]), Instant.parse(what[1])));
            } else if (move != null) {
                read.add(Moved.of(move, at));
            }
        }
        return TicketTimes.of(opened, read);
    }
}
