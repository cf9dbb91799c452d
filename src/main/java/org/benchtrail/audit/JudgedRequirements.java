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
import org.benchtrail.core.method.TicketNumber;

/** What concluded audits found of each requirement, whoever did the work. */
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

    /** Of the lots that ended in a period and are concluded, the latest twelve at most. */
    public List<Judged> between(Instant begins, Instant ends) {
        Map<String, Judged> found = new TreeMap<>();
        rows.lotsBetween(begins, ends, MOST_LOTS).stream().map(rows::lot).forEach(lot -> add(lot, found));
        return List.copyOf(found.values());
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
