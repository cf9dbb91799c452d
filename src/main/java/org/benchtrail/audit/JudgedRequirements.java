package org.benchtrail.audit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.benchtrail.core.audit.AuditAct.Marked;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.LotResult;
import org.benchtrail.core.audit.Mark;
import org.benchtrail.core.audit.ReaderAgreement;
import org.benchtrail.core.method.TicketNumber;

/** What concluded audits found of each requirement, whoever did the work, and how far those who read it agree. */
@ApplicationScoped
@Transactional
public class JudgedRequirements {
    private static final int MOST_LOTS = 12;

    private final LotRows rows;

    JudgedRequirements(LotRows rows) {
        this.rows = rows;
    }

    /**
     * A requirement.
     *
     * @param judged marks that say satisfied or not; of each ticket the one that counts after settling
     * @param faulty tickets whose mark says that it was not satisfied
     */
    public record Judged(String code, String title, int judged, List<TicketNumber> faulty) {}

    /**
     * How far two readers of a lot agree.
     *
     * @param lot its id
     * @param place of the two among those of the lot, from 1
     * @param of how many twos read tickets of the lot both
     * @param apart tickets on which their first marks differ
     */
    public record Readers(String lot, int place, int of, ReaderAgreement agreement, List<TicketNumber> apart) {}

    /** @param readers by lot, the latest first */
    public record Found(List<Judged> requirements, List<Readers> readers) {}

    /** Of the lots that ended in a period and are concluded, the latest twelve at most. */
    public Found between(Instant begins, Instant ends) {
        Map<String, Judged> found = new TreeMap<>();
        List<Readers> readers = new ArrayList<>();
        for (String id : rows.lotsBetween(begins, ends, MOST_LOTS)) {
            AuditLot lot = rows.lot(id);
            add(lot, found);
            List<ReaderAgreement> agreements = ReaderAgreement.of(lot);
            for (int i = 0; i < agreements.size(); i++) {
                ReaderAgreement two = agreements.get(i);
                readers.add(new Readers(id, i + 1, agreements.size(), two, apart(lot, two)));
            }
        }
        return new Found(List.copyOf(found.values()), readers);
    }

    private static List<TicketNumber> apart(AuditLot lot, ReaderAgreement two) {
        return lot.pairs().stream()
                .filter(p -> p.first().mark() != p.second().mark())
                .filter(p -> two.isOf(List.of(
                        lot.review(p.ticket(), 1).orElseThrow().reviewer(),
                        lot.review(p.ticket(), 2).orElseThrow().reviewer())))
                .map(p -> TicketNumber.parse(p.ticket()))
                .distinct()
                .toList();
    }

    private static void add(AuditLot lot, Map<String, Judged> found) {
        for (String ticket : lot.drawnTickets()) {
            for (Marked mark : LotResult.counting(lot, ticket)) {
                if (mark.mark() == Mark.SATISFIED || mark.mark() == Mark.NOT_SATISFIED) {
                    found.merge(mark.requirement(), judged(mark, ticket), JudgedRequirements::together);
                }
            }
        }
    }

    private static Judged judged(Marked mark, String ticket) {
        return new Judged(
                mark.requirement(),
                LotViews.title(mark.requirement()),
                1,
                mark.mark() == Mark.NOT_SATISFIED ? List.of(TicketNumber.parse(ticket)) : List.of());
    }

    private static Judged together(Judged one, Judged other) {
        List<TicketNumber> faulty = new ArrayList<>(one.faulty());
        faulty.addAll(other.faulty());
        return new Judged(one.code(), one.title(), one.judged() + other.judged(), faulty);
    }
}
