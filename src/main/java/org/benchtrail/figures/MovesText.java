package org.benchtrail.figures;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.figures.Moved;
import org.benchtrail.core.figures.TicketTimes;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.desk.WaitingFor;
import org.jspecify.annotations.Nullable;

/** The moves of a ticket as one row of the database gives them: kind and microseconds of each, and what each hold was for. */
final class MovesText {
    private static final Map<String, Move> KINDS = Map.of(
            "advanced", Move.ADVANCE,
            "ruled-out", Move.REFUTE,
            "rethought", Move.RETHINK,
            "verify-failed", Move.FAIL,
            "closed", Move.CLOSE,
            "cancelled", Move.CANCEL,
            "reopened", Move.REOPEN,
            "held", Move.HOLD,
            "resumed", Move.RESUME);

    private MovesText() {}

    static TicketTimes read(Instant opened, @Nullable String moves, @Nullable String holds) {
        List<Moved> read = new ArrayList<>();
        String[] held = holds == null ? new String[0] : holds.split(",");
        int hold = 0;
        for (String part : moves == null ? new String[0] : moves.split(",")) {
            int gap = part.indexOf(' ');
            Move move = KINDS.get(part.substring(0, gap));
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
