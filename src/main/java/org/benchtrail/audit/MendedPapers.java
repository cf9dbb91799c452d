package org.benchtrail.audit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.benchtrail.core.audit.Mending;
import org.benchtrail.core.method.TicketNumber;

/** What came of addenda that audits asked for; by requirement, and of whom they were asked is not told. */
@ApplicationScoped
@Transactional
public class MendedPapers {
    private final LotRows rows;

    MendedPapers(LotRows rows) {
        this.rows = rows;
    }

    /**
     * @param code of the requirement; empty for all together
     * @param tickets that were asked about
     */
    public record Mended(String code, String title, Mending mending, List<TicketNumber> tickets) {}

    /** Of the lots that ended in a period: all together, then each requirement that was asked about; none if nothing was. */
    public List<Mended> between(Instant begins, Instant ends, Instant now) {
        List<LotRows.WantedRow> wanted = rows.wanted(begins, ends);
        Map<String, List<LotRows.WantedRow>> byTitle = new TreeMap<>();
        wanted.forEach(w -> byTitle.computeIfAbsent(LotViews.title(w.requirement()), t -> new ArrayList<>())
                .add(w));
        List<Mended> mended = new ArrayList<>();
        if (!wanted.isEmpty()) {
            mended.add(mended("", "All requirements", wanted, now));
        }
        byTitle.forEach((title, some) -> mended.add(mended(some.get(0).requirement(), title, some, now)));
        return mended;
    }

    private static Mended mended(String code, String title, List<LotRows.WantedRow> wanted, Instant now) {
        return new Mended(
                code,
                title,
                Mending.of(
                        wanted.stream()
                                .map(w -> new Mending.Wanted(w.due(), w.written(), w.countersigned()))
                                .toList(),
                        now),
                wanted.stream().map(w -> new TicketNumber(w.ticket())).toList());
    }
}
