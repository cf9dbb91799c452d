package org.benchtrail.core.audit;

import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import org.benchtrail.core.integrity.Hash;

/**
 * Which tickets are looked at: {@code seed = SHA-256(head || plan)}, {@code rank(ticket) = SHA-256(seed || number)}, and of each
 * stratum the first by rank. No generator and no shuffling, so that anybody checks a ticket's rank with a hash command; a larger
 * sample begins with the smaller one.
 */
public record Draw(Hash seed) {
    private static final byte[] SECOND = ascii("second");

    /**
     * @param head the note of the log's head with the signatures that the plan names, to the last newline
     * @param plan as it was stated
     */
    public static Draw of(byte[] head, byte[] plan) {
        return new Draw(Hash.sha256(head, plan));
    }

    /** @param ticket number with its check digit */
    public Hash rank(String ticket) {
        return Hash.sha256(seed.bytes(), ascii(ticket));
    }

    /** By which the tickets that a second person reviews are chosen. */
    private Hash secondRank(String ticket) {
        return Hash.sha256(seed.bytes(), SECOND, ascii(ticket));
    }

    /** A ticket and the number by which it is drawn. */
    public record Ranked(String ticket, Hash rank) {}

    /** The tickets by rank, the first drawn first. */
    public List<Ranked> ranked(List<String> tickets) {
        return sorted(tickets, this::rank);
    }

    /** As {@link #ranked}, without the ranks. */
    public List<String> order(List<String> tickets) {
        return ranked(tickets).stream().map(Ranked::ticket).toList();
    }

    /** The tickets in the order in which they are taken for a second review. */
    public List<String> secondOrder(List<String> tickets) {
        return sorted(tickets, this::secondRank).stream().map(Ranked::ticket).toList();
    }

    private static List<Ranked> sorted(List<String> tickets, Function<String, Hash> rank) {
        return tickets.parallelStream()
                .map(ticket -> new Ranked(ticket, rank.apply(ticket)))
                .sorted(Comparator.comparing(Ranked::rank))
                .toList();
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
