package org.benchtrail.audit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.benchtrail.core.audit.AuditAct;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.LotResult;
import org.benchtrail.core.audit.Mark;
import org.benchtrail.core.method.DefectClass;
import org.benchtrail.core.method.TicketNumber;

/** What audits found of the tickets that somebody worked on, as soon as that person may read it. */
@ApplicationScoped
@Transactional
public class JudgedWork {
    private final LotRows rows;

    JudgedWork(LotRows rows) {
        this.rows = rows;
    }

    /**
     * One requirement of one ticket that a reviewer opened and marked.
     *
     * @param at when the last was said of the ticket
     * @param critical whether somebody or somebody's data could have been harmed
     */
    public record Marked(TicketNumber ticket, String code, Instant at, boolean satisfied, boolean critical) {}

    /** Marks that say satisfied or not; no others judge anything. */
    public List<Marked> of(String account) {
        Map<String, List<LotRows.ReviewedOf>> byLot =
                rows.reviewedOf(account).stream().collect(Collectors.groupingBy(LotRows.ReviewedOf::lot));
        List<Marked> marked = new ArrayList<>();
        byLot.forEach((id, own) -> {
            AuditLot lot = rows.lot(id);
            own.stream()
                    .map(r -> new TicketNumber(r.ticket()))
                    .filter(ticket -> lot.isReadable(ticket.toString()))
                    .forEach(ticket -> add(lot, ticket, marked));
        });
        return marked;
    }

    private static void add(AuditLot lot, TicketNumber ticket, List<Marked> marked) {
        Instant at = said(lot, ticket.toString());
        LotResult.counting(lot, ticket.toString()).stream()
                .filter(m -> m.mark() == Mark.SATISFIED || m.mark() == Mark.NOT_SATISFIED)
                .map(m -> new Marked(
                        ticket,
                        m.requirement(),
                        at,
                        m.mark() == Mark.SATISFIED,
                        m.mark() == Mark.NOT_SATISFIED && m.defect() == DefectClass.CRITICAL))
                .forEach(marked::add);
    }

    private static Instant said(AuditLot lot, String ticket) {
        return lot.acts().stream()
                .filter(e -> isOf(e.act(), ticket))
                .map(AuditAct.Entry::at)
                .max(Instant::compareTo)
                .orElse(Instant.EPOCH);
    }

    private static boolean isOf(AuditAct act, String ticket) {
        return (act instanceof AuditAct.ReviewSigned signed && signed.ticket().equals(ticket))
                || (act instanceof AuditAct.SecondSigned second
                        && second.ticket().equals(ticket))
                || (act instanceof AuditAct.Settled settled && settled.ticket().equals(ticket));
    }
}
