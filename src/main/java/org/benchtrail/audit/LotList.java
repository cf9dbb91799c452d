package org.benchtrail.audit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
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

    static List<LotView.Listed> of(AuditLot lot) {
        Draw draw = new Draw(Hash.ofHex(lot.seed().orElseThrow().seed()));
        Set<String> drawn = Set.copyOf(lot.drawnTickets());
        return Arrays.stream(Stratum.values())
                .flatMap(part -> draw.order(lot.tickets(part)).stream()
                        .map(t ->
                                new LotView.Listed(part.title(), t, draw.rank(t).hex(), drawn.contains(t))))
                .toList();
    }

    /** Those of a list that a page or a paper shows. */
    static List<LotView.Listed> printed(List<LotView.Listed> list) {
        return list.size() <= PRINTED
                ? list
                : list.stream().filter(LotView.Listed::drawn).toList();
    }

    static String csv(AuditLot lot) {
        List<String> lines = new ArrayList<>(List.of(Csv.line(List.of("part", "ticket", "rank", "drawn"))));
        of(lot).forEach(line ->
                lines.add(Csv.line(List.of(line.part(), line.ticket(), line.rank(), line.drawn() ? "yes" : "no"))));
        return String.join("", lines);
    }
}
