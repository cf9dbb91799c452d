package org.benchtrail.core.audit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.benchtrail.core.audit.AuditLot.Difference;
import org.benchtrail.core.statistics.Kappa;

/**
 * How far two readers agree, by the first marks of both, whichever of them read a ticket first.
 *
 * @param one account of the reader of the rows, by the alphabet the first of the two
 * @param other account of the reader of the columns
 * @param table counts, in the order of {@link Mark}
 * @param kappa empty where there are fewer pairs than it takes
 * @param apart differences by requirement, those with the most first
 */
public record ReaderAgreement(
        String one,
        String other,
        List<List<Long>> table,
        long pairs,
        long agreed,
        Optional<Kappa> kappa,
        Map<String, Long> apart) {
    /** So many pairs make a kappa; common practice. */
    public static final int LEAST = 30;

    private static final int LEAST_FOR_TALK = 60;
    private static final double LOW = 0.4;

    public ReaderAgreement {
        table = List.copyOf(table);
        apart = Collections.unmodifiableMap(new LinkedHashMap<>(apart));
    }

    /** Of each two who read a ticket of the lot both, in the order of their accounts. */
    public static List<ReaderAgreement> of(AuditLot lot) {
        Map<List<String>, List<Difference>> byReaders =
                new TreeMap<>((a, b) -> String.join(" ", a).compareTo(String.join(" ", b)));
        for (Difference pair : lot.pairs()) {
            List<String> readers = new ArrayList<>(List.of(reader(lot, pair, 1), reader(lot, pair, 2)));
            Collections.sort(readers);
            byReaders.computeIfAbsent(readers, r -> new ArrayList<>()).add(pair);
        }
        return byReaders.entrySet().stream()
                .map(e -> of(lot, e.getKey().get(0), e.getKey().get(1), e.getValue()))
                .toList();
    }

    private static String reader(AuditLot lot, Difference pair, int turn) {
        return lot.review(pair.ticket(), turn).orElseThrow().reviewer();
    }

    private static ReaderAgreement of(AuditLot lot, String one, String other, List<Difference> pairs) {
        int size = Mark.values().length;
        long[][] counts = new long[size][size];
        Map<String, Long> apart = new TreeMap<>();
        long agreed = 0;
        for (Difference pair : pairs) {
            boolean inOrder = reader(lot, pair, 1).equals(one);
            Mark first = pair.first().mark();
            Mark second = pair.second().mark();
            counts[(inOrder ? first : second).ordinal()][(inOrder ? second : first).ordinal()]++;
            if (first == second) {
                agreed++;
            } else {
                apart.merge(pair.requirement(), 1L, Long::sum);
            }
        }
        return new ReaderAgreement(
                one,
                other,
                Arrays.stream(counts)
                        .map(row -> Arrays.stream(row).boxed().toList())
                        .toList(),
                pairs.size(),
                agreed,
                pairs.size() < LEAST ? Optional.empty() : Optional.of(Kappa.of(counts)),
                mostFirst(apart));
    }

    private static Map<String, Long> mostFirst(Map<String, Long> apart) {
        Map<String, Long> sorted = new LinkedHashMap<>();
        apart.entrySet().stream()
                .sorted((a, b) -> Long.compare(b.getValue(), a.getValue()))
                .forEach(e -> sorted.put(e.getKey(), e.getValue()));
        return sorted;
    }

    /** Whether the two agree so little that they talk before the lot is concluded. */
    public boolean asksForTalk() {
        return pairs >= LEAST_FOR_TALK
                && kappa.filter(k -> k.kappa().isPresent() && k.kappa().getAsDouble() < LOW)
                        .isPresent();
    }

    /** Codes of what they differ on most often: where they have to talk, its question is written anew. */
    public List<String> mostApart() {
        long most = apart.values().stream().mapToLong(Long::longValue).max().orElse(0);
        return apart.entrySet().stream()
                .filter(e -> e.getValue() == most)
                .map(Map.Entry::getKey)
                .toList();
    }

    /** Whether these are the two, in whatever order. */
    public boolean isOf(List<String> readers) {
        return readers.size() == 2 && readers.contains(one) && readers.contains(other);
    }
}
