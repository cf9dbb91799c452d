package org.benchtrail.core.audit;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.benchtrail.core.audit.AuditAct.Marked;
import org.benchtrail.core.statistics.Interval;
import org.benchtrail.core.statistics.Proportion;

/**
 * How often a signal was right when reviewers looked, who did not see it: tickets with the signal in which they found a defect of
 * its kind, and the same of tickets without it. Tickets that somebody chose to look at are not among them.
 *
 * @param hits reviewed tickets with the signal and a defect of its kind, 0 to {@code with}
 * @param with reviewed tickets with the signal
 * @param baseHits randomly drawn tickets without the signal that have such a defect, 0 to {@code base}
 * @param base randomly drawn tickets without the signal
 */
public record SignalWorth(long hits, long with, long baseHits, long base) {
    /** So many of each before anything is said. */
    public static final int ENOUGH = 20;

    private static final double CONFIDENCE = 0.95;
    public static final SignalWorth NONE = new SignalWorth(0, 0, 0, 0);

    /** What is known of a signal. */
    public enum Standing {
        NOT_YET_KNOWN,
        /** The interval of its precision lies above that of the base. */
        TELLS,
        /** It does not, or not surely. */
        TELLS_NOTHING
    }

    /**
     * Of one lot whose marks are final.
     *
     * @param marked tickets of the lot that show the signal
     */
    public static SignalWorth of(AuditLot lot, SignalKind kind, Set<String> marked) {
        List<String> apart = LotResult.apart(lot);
        SignalWorth worth = NONE;
        for (Map.Entry<Stratum, List<String>> part : lot.drawn().entrySet()) {
            boolean random = Objects.requireNonNull(lot.plan().takes().get(part.getKey()))
                            .percent()
                    < 100;
            for (String ticket : part.getValue()) {
                boolean counts = lot.isSigned(ticket, 1) && !apart.contains(ticket);
                if (counts && (marked.contains(ticket) || random)) {
                    worth = worth.and(one(marked.contains(ticket), hasDefect(lot, kind, ticket)));
                }
            }
        }
        return worth;
    }

    private static SignalWorth one(boolean marked, boolean defect) {
        int hit = defect ? 1 : 0;
        return marked ? new SignalWorth(hit, 1, 0, 0) : new SignalWorth(0, 0, hit, 1);
    }

    private static boolean hasDefect(AuditLot lot, SignalKind kind, String ticket) {
        return LotResult.counting(lot, ticket).stream()
                .filter(m -> kind.isAbout(m.requirement()))
                .map(Marked::mark)
                .anyMatch(Mark.NOT_SATISFIED::equals);
    }

    public SignalWorth and(SignalWorth other) {
        return new SignalWorth(hits + other.hits, with + other.with, baseHits + other.baseHits, base + other.base);
    }

    public Standing standing() {
        if (with < ENOUGH || base < ENOUGH) {
            return Standing.NOT_YET_KNOWN;
        }
        return precision().lower() > without().upper() ? Standing.TELLS : Standing.TELLS_NOTHING;
    }

    /** Wilson's 95 % interval; only where {@code with} is at least 1. */
    public Interval precision() {
        return new Proportion(hits, with).wilson(CONFIDENCE);
    }

    /** Wilson's 95 % interval of the base; only where {@code base} is at least 1. */
    public Interval without() {
        return new Proportion(baseHits, base).wilson(CONFIDENCE);
    }
}
