package org.benchtrail.core.audit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.benchtrail.core.audit.AuditAct.Marked;
import org.benchtrail.core.audit.AuditLot.Review;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.statistics.LotBounds;
import org.benchtrail.core.statistics.LotBounds.Seen;
import org.benchtrail.core.statistics.StratifiedBounds;

/**
 * What the reviews say of the whole lot: how many of its tickets have a critical or major defect.
 *
 * @param strata each with what was seen of it
 * @param items of which it speaks: all but those without an independent review
 * @param lower of the two-sided 95 % interval; what cannot be told counts as no defect
 * @param upper of the two-sided 95 % interval; what cannot be told counts as a defect
 * @param atMost one-sided 95 % upper bound
 * @param point estimate: sum of N x/n
 * @param method by which the bounds were made, in words
 * @param apart tickets that were reviewed by somebody who is not independent
 */
public record LotResult(
        List<Line> strata,
        int items,
        int lower,
        int upper,
        int atMost,
        double point,
        String method,
        List<String> apart) {
    private static final double CONFIDENCE = 0.95;
    private static final BigDecimal EXACT = BigDecimal.valueOf(CONFIDENCE);
    private static final double EACH_SIDE = 0.975;

    /**
     * A stratum.
     *
     * @param items N
     * @param looked n whose review is signed
     * @param found of them with a critical or major defect
     * @param unsure of them with none, and something that cannot be told and would be one
     */
    public record Line(Stratum stratum, int items, int looked, int found, int unsure) {
        public boolean census() {
            return looked == items;
        }

        private Seen least() {
            return new Seen(items, looked, found);
        }

        private Seen most() {
            return new Seen(items, looked, found + unsure);
        }
    }

    /** What a ticket comes to. */
    enum Verdict {
        SOUND,
        UNSURE,
        DEFECT
    }

    public static LotResult of(AuditLot lot) {
        return of(lines(lot), apart(lot));
    }

    /** Drawn tickets that were reviewed by somebody who is not independent. */
    static List<String> apart(AuditLot lot) {
        return lot.drawnTickets().stream()
                .filter(t ->
                        lot.reviews().stream().anyMatch(r -> r.turn().ticket().equals(t) && !r.independent()))
                .toList();
    }

    private static List<Line> lines(AuditLot lot) {
        List<String> apart = apart(lot);
        List<Line> lines = new ArrayList<>();
        lot.drawn()
                .forEach(
                        (stratum, tickets) -> line(lot, stratum, tickets, apart).ifPresent(lines::add));
        return lines;
    }

    private static java.util.Optional<Line> line(
            AuditLot lot, Stratum stratum, List<String> tickets, List<String> apart) {
        List<String> counted = tickets.stream().filter(t -> !apart.contains(t)).toList();
        List<Verdict> verdicts = counted.stream()
                .flatMap(t -> lot.review(t, 1).filter(Review::signed).stream())
                .map(r -> verdict(lot, r))
                .toList();
        int items = lot.tickets(stratum).size() - (tickets.size() - counted.size());
        return items == 0
                ? java.util.Optional.empty()
                : java.util.Optional.of(new Line(
                        stratum,
                        items,
                        verdicts.size(),
                        (int) verdicts.stream().filter(v -> v == Verdict.DEFECT).count(),
                        (int) verdicts.stream().filter(v -> v == Verdict.UNSURE).count()));
    }

    static LotResult of(List<Line> lines, List<String> apart) {
        List<Line> random = lines.stream().filter(l -> !l.census()).toList();
        int known = lines.stream().filter(Line::census).mapToInt(Line::found).sum();
        int unsure = lines.stream().filter(Line::census).mapToInt(Line::unsure).sum();
        List<Seen> least = random.stream().map(Line::least).toList();
        List<Seen> most = random.stream().map(Line::most).toList();
        double point = lines.stream()
                .filter(l -> l.looked() > 0)
                .mapToDouble(l -> (double) l.items() * l.found() / l.looked())
                .sum();
        return new LotResult(
                List.copyOf(lines),
                lines.stream().mapToInt(Line::items).sum(),
                known + lowest(least),
                known + unsure + highest(most),
                known + unsure + oneSided(most),
                point,
                method(random),
                List.copyOf(apart));
    }

    private static int lowest(List<Seen> random) {
        if (random.size() < 2) {
            return random.isEmpty()
                    ? 0
                    : LotBounds.twoSided(random.get(0), EXACT).lower();
        }
        return StratifiedBounds.isExact(random)
                ? StratifiedBounds.exactLower(random, EACH_SIDE)
                : StratifiedBounds.simpleLower(random, EACH_SIDE);
    }

    private static int highest(List<Seen> random) {
        if (random.size() < 2) {
            return random.isEmpty()
                    ? 0
                    : LotBounds.twoSided(random.get(0), EXACT).upper();
        }
        return StratifiedBounds.isExact(random)
                ? StratifiedBounds.exactUpper(random, EACH_SIDE)
                : StratifiedBounds.simpleUpper(random, EACH_SIDE);
    }

    private static int oneSided(List<Seen> random) {
        if (random.size() < 2) {
            return random.isEmpty() ? 0 : LotBounds.upperBound(random.get(0), EXACT);
        }
        return StratifiedBounds.isExact(random)
                ? StratifiedBounds.exactUpper(random, CONFIDENCE)
                : StratifiedBounds.simpleUpper(random, CONFIDENCE);
    }

    private static String method(List<Line> random) {
        if (random.isEmpty()) {
            return "Every ticket was looked at, so the number is known.";
        }
        String one =
                "Exact, by the hypergeometric distribution; parts that were looked at in full are added as they are.";
        if (random.size() == 1) {
            return one;
        }
        boolean exact =
                StratifiedBounds.isExact(random.stream().map(Line::least).toList());
        return exact
                ? "Exact for the two random parts together, by turning the test round over all ways in which defects can be"
                        + " spread; parts that were looked at in full are added as they are."
                : "Each random part by itself, exact, at a level at which all hold together, and added: wide, and always valid.";
    }

    /** The mark that counts: what was settled, else the first one. */
    static Marked settled(AuditLot lot, Marked first) {
        return lot.settled(first.ticket(), first.requirement())
                .map(s -> new Marked(
                        first.ticket(),
                        first.turn(),
                        first.requirement(),
                        s.mark(),
                        s.defect(),
                        first.entries(),
                        s.remark()))
                .orElse(first);
    }

    /** The marks of a signed review as they count. */
    public static List<Marked> counting(AuditLot lot, String ticket) {
        return lot.review(ticket, 1)
                .filter(Review::signed)
                .map(r -> r.marks().values().stream().map(m -> settled(lot, m)).toList())
                .orElse(List.of());
    }

    private static Verdict verdict(AuditLot lot, Review review) {
        Verdict verdict = Verdict.SOUND;
        for (Marked first : review.marks().values()) {
            Marked mark = settled(lot, first);
            if (mark.mark() == Mark.NOT_SATISFIED
                    && Objects.requireNonNull(mark.defect()).counts()) {
                return Verdict.DEFECT;
            }
            // what cannot be told of a minor requirement hides no defect by which the ticket is judged
            boolean hides = mark.mark() == Mark.CANNOT_TELL && isUsuallyCounted(mark.requirement());
            verdict = hides ? Verdict.UNSURE : verdict;
        }
        return verdict;
    }

    /** Whether what is lacking there is usually a defect by which a ticket is judged; of what nobody asks about any more it is. */
    private static boolean isUsuallyCounted(String code) {
        return Requirements.of(code).map(r -> r.review().usual().counts()).orElse(true);
    }

    /** Whether every ticket that it speaks of was looked at. */
    public boolean isCensus() {
        return strata.stream().allMatch(Line::census);
    }

    /** Tickets of the random parts with a defect, by which the lot is accepted or not; in all of them, where the rest was drawn. */
    static int foundAtRandom(AuditLot lot) {
        Map<Stratum, Take> takes = lot.plan().takes();
        return lines(lot).stream()
                .filter(l -> Objects.requireNonNull(takes.get(l.stratum())).percent() < 100)
                .mapToInt(Line::found)
                .sum();
    }

    /** Whether the random parts have no more defects than the plan allows; settled only when every mark is. */
    public static boolean isAccepted(AuditLot lot) {
        return foundAtRandom(lot) <= lot.plan().acceptance();
    }

    /** Whether any part was drawn at random by the plan, and not looked at in full. */
    public static boolean isSampled(AuditLot lot) {
        return lot.drawn().keySet().stream().anyMatch(s -> {
            int items = lot.tickets(s).size();
            return Objects.requireNonNull(lot.plan().takes().get(s)).of(items) < items;
        });
    }
}
