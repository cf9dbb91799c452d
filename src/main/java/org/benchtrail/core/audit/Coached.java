package org.benchtrail.core.audit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.statistics.Interval;
import org.benchtrail.core.statistics.Proportion;

/**
 * What reviews found of one requirement in somebody's work.
 *
 * @param judged marks that say satisfied or not; of each ticket the one that counts after settling
 * @param faulty tickets whose mark says that it was not satisfied
 */
public record Coached(Requirement requirement, int judged, List<String> faulty) {
    /** So many marks make a share; common practice. */
    public static final int ENOUGH = 30;

    private static final double CONFIDENCE = 0.95;

    public Coached {
        faulty = List.copyOf(faulty);
    }

    /** A ticket that the person worked on, in the lot that it was drawn in. */
    public record Work(AuditLot lot, String ticket) {}

    /** Requirements with something to learn, in the order of the method and not of their faults; what cannot be read yet is left out. */
    public static List<Coached> of(List<Work> works) {
        Map<String, Coached> found = new LinkedHashMap<>();
        Requirements.all().forEach(r -> found.put(r.code(), new Coached(r, 0, List.of())));
        for (Work work : works) {
            if (work.lot().isReadable(work.ticket())) {
                LotResult.counting(work.lot(), work.ticket())
                        .forEach(m -> found.computeIfPresent(m.requirement(), (code, all) -> all.and(m)));
            }
        }
        return found.values().stream().filter(c -> !c.faulty().isEmpty()).toList();
    }

    private Coached and(AuditAct.Marked mark) {
        return switch (mark.mark()) {
            case SATISFIED -> new Coached(requirement, judged + 1, faulty);
            case NOT_SATISFIED -> {
                List<String> more = new ArrayList<>(faulty);
                more.add(mark.ticket());
                yield new Coached(requirement, judged + 1, more);
            }
            case NOT_APPLICABLE, CANNOT_TELL -> this;
        };
    }

    /** 95 % interval of the share that is not satisfied, by Wilson's score; empty of too few. */
    public Optional<Interval> share() {
        return judged < ENOUGH
                ? Optional.empty()
                : Optional.of(new Proportion(faulty.size(), judged).wilson(CONFIDENCE));
    }
}
