package org.benchtrail.core.integrity;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Between which times a leaf was put into the log, by the times at which witnesses saw its heads. Nobody else's clock counts for much:
 * the server's own word about when it signed a head can only make a bound wider.
 */
public final class SeenTimes {
    /** How far clocks may be apart; the same for all servers of a site. */
    public static final Duration CLOCKS = Duration.ofMinutes(5);

    /** How long something may wait to be sealed before the site is told of it. */
    public static final Duration UNSEALED = Duration.ofMinutes(5);

    private static final Instant EVER_BEFORE = Instant.EPOCH;
    private static final Instant EVER_AFTER = Instant.parse("9999-01-01T00:00:00Z");

    /**
     * A head that a witness signed.
     *
     * @param signed when the server signed it, by its own clock
     * @param seen when a witness signed it, the first of several
     */
    public record Head(long size, Instant signed, Instant seen) {}

    /**
     * Leaves from one head to the next.
     *
     * @param without when a witness last saw the log without them; null if none did
     * @param with when one first saw it with them; null if none did yet
     */
    public record Span(
            long from,
            long to,
            @Nullable Instant without,
            @Nullable Instant with) {
        public Instant notBefore() {
            return without == null ? EVER_BEFORE : without.minus(UNSEALED);
        }

        public Instant notAfter() {
            return with == null ? EVER_AFTER : with.plus(CLOCKS);
        }

        /** What is wrong with a time in one sentence; empty if nothing is. */
        public String fault(Instant at) {
            if (at.isBefore(notBefore())) {
                return "Entered late: it bears the time " + at + ", and at " + without
                        + " the log was without it, as a witness saw.";
            }
            return at.isAfter(notAfter())
                    ? "It bears the time " + at + ", but a witness saw it in the log at " + with
                            + " already: a clock was ahead, or the time is not true."
                    : "";
        }
    }

    private final List<Head> heads;
    private final Instant[] with;
    private final Instant[] without;
    private final List<Head> setBack = new ArrayList<>();

    /** @param heads that a witness signed, the smallest first, each size once */
    public SeenTimes(List<Head> heads) {
        this.heads = List.copyOf(heads);
        with = new Instant[heads.size()];
        without = new Instant[heads.size()];
        Instant first = EVER_AFTER;
        for (int i = heads.size() - 1; i >= 0; i--) {
            // a larger log was seen earlier: then all that is in this one was
            first = earlier(first, heads.get(i).seen());
            with[i] = first;
        }
        Instant last = EVER_BEFORE;
        for (int i = 0; i < heads.size(); i++) {
            Head head = heads.get(i);
            if (head.signed().isBefore(last.minus(CLOCKS))) {
                setBack.add(head);
            }
            // a witness may be shown a head long after it was signed, and the log has grown since
            last = later(last, earlier(with[i], head.signed()));
            without[i] = last;
        }
    }

    private static Instant earlier(Instant one, Instant other) {
        return one.isBefore(other) ? one : other;
    }

    private static Instant later(Instant one, Instant other) {
        return one.isBefore(other) ? other : one;
    }

    /** Heads that the server says it signed before a witness saw a smaller one. */
    public List<Head> setBack() {
        return List.copyOf(setBack);
    }

    /** Whether any witness saw any head; if none did, no time can be told. */
    public boolean known() {
        return !heads.isEmpty();
    }

    /** The spans of these leaves. */
    public List<Span> between(long from, long to) {
        List<Span> spans = new ArrayList<>();
        long begins = from;
        for (int i = firstAfter(from); begins < to; i++) {
            long ends = i < heads.size() ? Math.min(to, heads.get(i).size()) : to;
            spans.add(new Span(begins, ends, i == 0 ? null : without[i - 1], i < heads.size() ? with[i] : null));
            begins = ends;
        }
        return spans;
    }

    /** The first head that holds the leaf; as many as there are if none does. */
    private int firstAfter(long index) {
        int low = 0;
        int high = heads.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (heads.get(middle).size() > index) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }
}
