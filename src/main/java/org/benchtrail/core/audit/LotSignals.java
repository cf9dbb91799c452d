package org.benchtrail.core.audit;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.benchtrail.core.audit.SignalTrace.Text;
import org.benchtrail.core.audit.SignalTrace.Value;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.site.WorkingTime;

/**
 * The signals of a lot, made when it is frozen. A past ticket that a value is held against is one of the same lot.
 */
public final class LotSignals {
    private static final int DIGITS_ELSEWHERE = 3;
    private static final int LEAST_CLOSED = 2;
    private static final Duration LAST = Duration.ofHours(1);

    private final ToDoubleFunction<String> usualMinutes;
    private final SignalNumbers numbers;
    private final List<SignalTrace> traces = new ArrayList<>();

    /** @param usualMinutes of the check that answers that finding of the catalogue; 0 where it is not known */
    public LotSignals(ToDoubleFunction<String> usualMinutes, SignalNumbers numbers) {
        this.usualMinutes = usualMinutes;
        this.numbers = numbers;
    }

    /**
     * What is seen of one ticket, on whatever thread; {@link #add} takes it in.
     *
     * @param sheet as it was when the ticket ended
     * @param trail up to the entry with which it ended
     */
    public SignalTrace trace(String ticket, JobSheet sheet, List<Entry> trail) {
        return SignalTrace.of(ticket, sheet, trail, usualMinutes, numbers);
    }

    public void add(SignalTrace trace) {
        traces.add(trace);
    }

    /** At most one of a kind for each ticket, by ticket in the order in which they came, then by kind. */
    public List<Signal> all(Instant begins, Instant ends, WorkingTime time) {
        List<Signal> signals = new ArrayList<>();
        Set<String> alike = textsAlike();
        Map<String, String> summaries = summaries();
        Map<String, List<Found>> values = values();
        Set<String> last = closedLast(begins, ends, time);
        for (SignalTrace trace : traces) {
            List<Signal> of = new ArrayList<>(trace.own());
            repeated(trace, alike, summaries)
                    .ifPresent(d -> of.add(new Signal(trace.ticket(), SignalKind.REPEATED_TEXT, d)));
            toTheDigit(trace, values)
                    .ifPresent(d -> of.add(new Signal(trace.ticket(), SignalKind.VALUE_TO_THE_DIGIT, d)));
            if (last.contains(trace.ticket())) {
                of.add(new Signal(trace.ticket(), SignalKind.END_OF_PERIOD, "the last working hour before the freeze"));
            }
            of.sort(Comparator.comparing(Signal::kind));
            signals.addAll(of);
        }
        return signals;
    }

    private static String key(Text text) {
        return text.by() + "\n" + text.folded();
    }

    /** What one person wrote on so many tickets or more. */
    private Set<String> textsAlike() {
        Map<String, Set<String>> where = new HashMap<>();
        for (SignalTrace trace : traces) {
            trace.texts()
                    .forEach(t ->
                            where.computeIfAbsent(key(t), k -> new HashSet<>()).add(trace.ticket()));
        }
        where.values().removeIf(tickets -> tickets.size() < numbers.ticketsAlike());
        return where.keySet();
    }

    /** By words in a row the ticket whose summary has them; no name where several have. */
    private Map<String, String> summaries() {
        Map<String, String> where = new HashMap<>();
        for (SignalTrace trace : traces) {
            trace.summary().forEach(run -> where.merge(run, trace.ticket(), (a, b) -> ""));
        }
        return where;
    }

    private Optional<String> repeated(SignalTrace trace, Set<String> alike, Map<String, String> summaries) {
        for (Text text : trace.texts()) {
            if (alike.contains(key(text))) {
                return Optional.of("entry " + text.entry() + ", as on other tickets of the lot");
            }
            for (String run : SignalTrace.shingles(List.of(text.folded()), numbers.wordsInARow())) {
                if (!summaries.getOrDefault(run, trace.ticket()).equals(trace.ticket())) {
                    return Optional.of("entry " + text.entry() + ", as in another ticket's summary");
                }
            }
        }
        return Optional.empty();
    }

    private record Found(String ticket, Value value) {}

    private static String key(Value value) {
        return value.key() + "\n" + value.digits();
    }

    private Map<String, List<Found>> values() {
        Map<String, List<Found>> where = new HashMap<>();
        for (SignalTrace trace : traces) {
            trace.values()
                    .forEach(v -> where.computeIfAbsent(key(v), k -> new ArrayList<>())
                            .add(new Found(trace.ticket(), v)));
        }
        return where;
    }

    private static Optional<String> toTheDigit(SignalTrace trace, Map<String, List<Found>> values) {
        for (Value after : trace.values()) {
            if (after.after()) {
                for (Found other : values.getOrDefault(key(after), List.of())) {
                    boolean own = other.ticket().equals(trace.ticket());
                    if (own && !other.value().after() && SignalTrace.isFine(after.digits())) {
                        return Optional.of("entries " + other.value().entry() + " and " + after.entry());
                    }
                    if (!own && other.value().at().isBefore(after.at()) && digits(after) >= DIGITS_ELSEWHERE) {
                        return Optional.of("entry " + after.entry() + ", as on an earlier ticket of the lot");
                    }
                }
            }
        }
        return Optional.empty();
    }

    private static int digits(Value value) {
        return new BigDecimal(value.digits()).precision();
    }

    /** Tickets that somebody closed in the last working hour who closed more than three times as many in it as usually. */
    private Set<String> closedLast(Instant begins, Instant ends, WorkingTime time) {
        Map<String, List<SignalTrace>> byPerson = new HashMap<>();
        traces.stream()
                .filter(t -> !t.closedBy().isEmpty())
                .forEach(t -> byPerson.computeIfAbsent(t.closedBy(), k -> new ArrayList<>())
                        .add(t));
        long before = time.between(begins, ends).minus(LAST).toSeconds();
        Set<String> last = new HashSet<>();
        byPerson.values().forEach(closed -> {
            List<String> late = closed.stream()
                    .filter(t -> time.between(t.ended(), ends).compareTo(LAST) <= 0)
                    .map(SignalTrace::ticket)
                    .toList();
            long usual = (long) closed.size() - late.size();
            boolean more = before > 0 && late.size() * before > numbers.timesTheUsual() * usual * LAST.toSeconds();
            if (late.size() >= LEAST_CLOSED && more) {
                last.addAll(late);
            }
        });
        return last;
    }
}
