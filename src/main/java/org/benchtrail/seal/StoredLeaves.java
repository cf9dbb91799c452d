package org.benchtrail.seal;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.Leaf;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/**
 * Leaves with what they seal, many at once and within the running transaction. What stands one after the other in a stream is asked for
 * as one range: to look up each leaf by itself costs the database several times as much.
 */
@Startup
@ApplicationScoped
class StoredLeaves {
    private static final String TICKETS = "ticket/";
    private static final String FILES = "files";
    private static final byte[] GONE = {};

    private final EntityManager database;
    private final SqlText text;

    StoredLeaves(EntityManager database) {
        this.database = database;
        text = SqlText.of(StoredLeaves.class).having("leaves", "entries", "records", "files");
    }

    /**
     * A leaf and what it seals, as both are stored; whether it is one is for whoever looks at it.
     *
     * @param canonical the bytes that the leaf is the hash of; none if they are gone, or of the site's if another hash stands beside them
     */
    record StoredLeaf(long index, String stream, long place, byte[] hash, byte[] leafHash, byte[] canonical) {
        /** @throws IllegalArgumentException if what stands in the row is no leaf */
        Leaf leaf() {
            return new Leaf(stream, place, Hash.of(hash));
        }
    }

    private record Row(long index, String stream, long place, byte[] hash, byte[] leafHash) {
        StoredLeaf with(byte[] canonical) {
            return new StoredLeaf(index, stream, place, hash, leafHash, canonical);
        }

        boolean isFile() {
            return stream.equals(FILES);
        }

        String hex() {
            return HexFormat.of().formatHex(hash);
        }
    }

    /** What is stored at a place of a run. */
    private record Placed(int run, long place, String hash, byte[] canonical) {}

    private record FileRecord(String hash, byte[] canonical) {}

    /** Leaves of a stream with places one after the other. */
    private static final class Run {
        private final String stream;
        private final long first;
        private final List<Row> rows = new ArrayList<>();

        Run(Row row) {
            stream = row.stream;
            first = row.place;
        }

        boolean isOfTicket() {
            return stream.startsWith(TICKETS);
        }

        long next() {
            return first + rows.size();
        }

        Row at(long place) {
            return rows.get((int) (place - first));
        }
    }

    /** Leaves from an index to before another, in their order. */
    List<StoredLeaf> between(long from, long to) {
        List<Row> rows = Sql.of(database, text.statement("leaves"))
                .with("from", from)
                .with("to", to)
                .rows(Row.class);
        List<Run> runs = runs(rows);
        Map<Long, byte[]> sealed = files(rows.stream().filter(Row::isFile).toList());
        add(sealed, "entries", runs.stream().filter(Run::isOfTicket).toList(), false);
        add(sealed, "records", runs.stream().filter(run -> !run.isOfTicket()).toList(), true);
        return rows.stream()
                .map(row -> row.with(sealed.getOrDefault(row.index, GONE)))
                .toList();
    }

    private static List<Run> runs(List<Row> rows) {
        Map<String, Run> newest = new HashMap<>();
        List<Run> runs = new ArrayList<>();
        for (Row row : rows) {
            Run run = newest.get(row.stream);
            if (!row.isFile() && (run == null || run.next() != row.place)) {
                run = new Run(row);
                newest.put(row.stream, run);
                runs.add(run);
            }
            if (run != null) {
                run.rows.add(row);
            }
        }
        return runs;
    }

    /** @param alike whether what is stored counts only under the hash of its leaf */
    private void add(Map<Long, byte[]> sealed, String statement, List<Run> runs, boolean alike) {
        if (runs.isEmpty()) {
            return;
        }
        List<Placed> stored = Sql.of(database, text.statement(statement))
                .with("streams", runs.stream().map(run -> run.stream).toArray(String[]::new))
                .with("firsts", runs.stream().map(run -> run.first).toArray(Long[]::new))
                .with("lasts", runs.stream().map(run -> run.next() - 1).toArray(Long[]::new))
                .rows(Placed.class);
        for (Placed one : stored) {
            Row row = runs.get(one.run - 1).at(one.place);
            if (!alike || row.hex().equals(one.hash)) {
                sealed.put(row.index, one.canonical);
            }
        }
    }

    private Map<Long, byte[]> files(List<Row> rows) {
        Map<Long, byte[]> sealed = new HashMap<>();
        if (!rows.isEmpty()) {
            Map<String, byte[]> stored = Sql.of(database, text.statement("files"))
                    .with("hashes", rows.stream().map(Row::hex).toArray(String[]::new))
                    .rows(FileRecord.class)
                    .stream()
                    .collect(Collectors.toMap(FileRecord::hash, FileRecord::canonical));
            rows.forEach(row -> sealed.put(row.index, stored.getOrDefault(row.hex(), GONE)));
        }
        return sealed;
    }
}
