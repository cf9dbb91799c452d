package org.benchtrail.audit;

import java.util.List;
import java.util.stream.Stream;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.AuditLot.Turn;
import org.benchtrail.core.method.Actor;

/** Which review is given next: by the order of the draw, first reviews before second ones; between them what was chosen. */
final class Giving {
    private static final long USUAL_MINUTES = 6;

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

    /** How many of them that person may take at most; whether they had a part in the ticket is looked at when it is given. */
    static int openTo(AuditLot lot, Actor person) {
        return (int) open(lot).stream()
                .filter(turn -> AuditActs.mayTurnTo(lot, turn, person))
                .count();
    }

    /** How long one takes: the middle of those that were signed in this lot, else what is usual. */
    static long minutesEach(AuditLot lot) {
        List<Long> took = lot.reviews().stream()
                .filter(AuditLot.Review::signed)
                .map(AuditLot.Review::minutes)
                .sorted()
                .toList();
        return took.isEmpty() ? USUAL_MINUTES : Math.max(1, took.get((took.size() - 1) / 2));
    }
}
