package org.benchtrail.audit;

import java.util.List;
import java.util.stream.Stream;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.AuditLot.Turn;

/** Which review is given next: by the order of the draw, first reviews before second ones; between them what was chosen. */
final class Giving {
    private Giving() {}

    /** The reviews that nobody has, in the order in which they are given. A second one comes when the first is signed. */
    static List<Turn> open(AuditLot lot) {
        Stream<Turn> first = lot.drawnTickets().stream().map(t -> new Turn(t, 1));
        Stream<Turn> second =
                lot.secondTickets().stream().filter(t -> lot.isSigned(t, 1)).map(t -> new Turn(t, 2));
        Stream<Turn> chosen = lot.chosen().stream().map(c -> new Turn(c.ticket(), 1));
        return Stream.concat(Stream.concat(first, chosen), second)
                .filter(turn -> lot.review(turn.ticket(), turn.turn()).isEmpty())
                .toList();
    }
}
