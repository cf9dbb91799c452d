package org.benchtrail.audit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.Draw;
import org.benchtrail.core.audit.Stratum;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.platform.Csv;

/** All tickets of a drawn lot, by part and rank: what somebody outside needs to draw them again. */
final class LotList {
    /** A longer list is printed with its drawn tickets alone; the file has all. */
    private static final int PRINTED = 300;

    private LotList() {}

    private static List<LotView.Listed> of(AuditLot lot, Predicate<String> listed) {
        Draw draw = new Draw(Hash.ofHex(lot.seed().orElseThrow().seed()));
        Set<String> drawn = Set.copyOf(lot.drawnTickets());
        return Arrays.stream(Stratum.values())
                .flatMap(part -> draw
                        .ranked(lot.tickets(part).stream().filter(listed).toList())
                        .stream()
                        .map(t -> new LotView.Listed(
                                part.title(), t.ticket(), t.rank().hex(), drawn.contains(t.ticket()))))
                .toList();
    }

    /** Those that a page or a paper shows. */
    static List<LotView.Listed> printed(AuditLot lot) {
        return of(lot, size(lot) <= PRINTED ? ticket -> true : Set.copyOf(lot.drawnTickets())::contains);
    }

    static int size(AuditLot lot) {
        return Arrays.stream(Stratum.values())
                .mapToInt(part -> lot.tickets(part).size())
                .sum();
    }

    static String csv(AuditLot lot) {
        List<String> lines = new ArrayList<>(List.of(Csv.PLAIN.line(List.of("part", "ticket", "rank", "drawn"))));
        of(lot, ticket -> true)
                .forEach(line -> lines.add(
                        Csv.PLAIN.line(List.of(line.part(), line.ticket(), line.rank(), line.drawn() ? "yes" : "no"))));
        return String.join("", lines);
    }
}
