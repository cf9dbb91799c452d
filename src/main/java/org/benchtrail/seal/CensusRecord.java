package org.benchtrail.seal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.io.IOException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.benchtrail.core.integrity.Census;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/** Counts once a day what there is, as a record that is sealed like all others. */
@ApplicationScoped
class CensusRecord {
    private static final String STREAM = "census";
    private static final String WHAT = "day";
    /** What else the stream holds is recorded once. */
    private static final int NEWEST = 10;

    private final LogRows rows;
    private final EntityManager database;
    private final ObjectMapper mapper;
    private final String counts;
    private final String leaves;
    private volatile LocalDate counted = LocalDate.MIN;

    CensusRecord(LogRows rows, EntityManager database, ObjectMapper mapper) {
        this.rows = rows;
        this.database = database;
        this.mapper = mapper;
        SqlText text = SqlText.of(CensusRecord.class);
        counts = text.statement("rows");
        leaves = text.statement("leaves");
    }

    /** Counts, unless that was done today or the log began today. Of several servers one does; a day on which none ran is left out. */
    void keep(LocalDate today) {
        if (counted.isBefore(today) && QuarkusTransaction.requiringNew().call(() -> isKept(today))) {
            counted = today;
        }
    }

    private boolean isKept(LocalDate today) throws IOException {
        if (!rows.lock()) {
            return false;
        }
        Optional<Census> last = all(rows.newest(STREAM, NEWEST)).stream().findFirst();
        Optional<LocalDate> begun =
                last.map(Census::day).or(() -> rows.firstSigned().map(at -> LocalDate.ofInstant(at, ZoneOffset.UTC)));
        if (begun.isEmpty()) {
            return false;
        }
        if (begun.orElseThrow().isBefore(today)) {
            long size = rows.size();
            SortedMap<String, Long> sealed =
                    new TreeMap<>(last.map(Census::leaves).orElseGet(TreeMap::new));
            leaves(last.map(Census::size).orElse(0L), size)
                    .forEach((kind, count) -> sealed.merge(kind, count, Long::sum));
            rows.record(STREAM, WHAT, mapper.writeValueAsString(new Census(today, size, sealed, rows())));
        }
        return true;
    }

    /** All that were ever recorded and can be read, the oldest first; within the running transaction. */
    List<Census> all() {
        return all(rows.records(STREAM, 0, Integer.MAX_VALUE));
    }

    private List<Census> all(List<LogRows.SiteRecord> records) {
        return records.stream()
                .flatMap(record -> read(record.canonical()).stream())
                .toList();
    }

    /** What was altered so that it cannot be read is named by its hash. */
    private Optional<Census> read(byte[] canonical) {
        try {
            JsonNode read = mapper.readTree(canonical);
            return read.path("what").asText().equals(WHAT)
                    ? Optional.of(mapper.treeToValue(read.path("content"), Census.class))
                    : Optional.empty();
        } catch (IOException altered) {
            return Optional.empty();
        }
    }

    private record Count(String what, long count) {
        static SortedMap<String, Long> map(List<Count> counts) {
            return counts.stream().collect(Collectors.toMap(Count::what, Count::count, Long::sum, TreeMap::new));
        }
    }

    /** Of everything that is counted, how much there is now; within the running transaction. */
    SortedMap<String, Long> rows() {
        return Count.map(Sql.of(database, counts).rows(Count.class));
    }

    private SortedMap<String, Long> leaves(long from, long to) {
        return Count.map(
                Sql.of(database, leaves).with("from", from).with("to", to).rows(Count.class));
    }
}
