package org.benchtrail.seal;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.integrity.Leaf;
import org.benchtrail.core.integrity.MerkleProofs;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.TreeReader;

/** Single records of a stream of the site, each held against the newest head; everything within the running transaction. */
@ApplicationScoped
public class SealedRecords {
    private final LogRows rows;
    private final Heads heads;

    SealedRecords(LogRows rows, Heads heads) {
        this.rows = rows;
        this.heads = heads;
    }

    /** How a record stands in the log. */
    public enum Standing {
        SEALED,
        /** No head covers its place yet: nobody vouches for it. */
        WAITING,
        UNLIKE
    }

    /** @param canonical the bytes that are stored */
    public record Told(byte[] canonical, Standing standing) {}

    /** By place; without those whose record is gone. */
    public Map<Long, Told> of(String stream, Collection<Long> places) {
        Optional<LogRows.Signed> head = rows.newest();
        long size = head.map(LogRows.Signed::size).orElse(0L);
        Optional<Checkpoint> signed = head.flatMap(this::signed);
        TreeReader tree = new TreeReader(size, rows);
        Map<Long, Long> indices = rows.places(stream).stream()
                .collect(Collectors.toMap(LogRows.PlaceRow::place, LogRows.PlaceRow::index));
        Map<Long, Told> told = new HashMap<>();
        for (long place : places) {
            List<LogRows.SiteRecord> found = rows.records(stream, place - 1, 1);
            if (!found.isEmpty() && found.get(0).place() == place) {
                byte[] canonical = found.get(0).canonical();
                long index = indices.getOrDefault(place, Long.MAX_VALUE);
                Leaf leaf = new Leaf(stream, place, Hash.ofHex(HashChain.hash(canonical)));
                Standing standing = index >= size
                        ? Standing.WAITING
                        : signed.filter(s -> isIn(leaf, index, tree, s)).isPresent()
                                ? Standing.SEALED
                                : Standing.UNLIKE;
                told.put(place, new Told(canonical, standing));
            }
        }
        return told;
    }

    /** What a head says, if the log signed it. */
    private Optional<Checkpoint> signed(LogRows.Signed head) {
        try {
            return heads.isOfLog(head.note())
                    ? Optional.of(Checkpoint.parse(SignedNote.parse(head.note()).text()))
                    : Optional.empty();
        } catch (IllegalArgumentException altered) {
            return Optional.empty();
        }
    }

    /** By the bytes of the record and the root that was signed; what the rows of the log say of that leaf counts for nothing. */
    private static boolean isIn(Leaf leaf, long index, TreeReader tree, Checkpoint signed) {
        try {
            return MerkleProofs.includes(index, signed.size(), leaf.leafHash(), tree.inclusion(index), signed.root());
        } catch (IllegalArgumentException altered) {
            return false;
        }
    }
}
