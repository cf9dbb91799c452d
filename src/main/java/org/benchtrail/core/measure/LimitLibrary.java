package org.benchtrail.core.measure;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/**
 * Limits by id, each with its source and edition: the published ones, and those a shop adds (nameplate, policy).
 *
 * <p>Immutable; adding gives a new library. An id that is taken is refused, so that a limit is never changed under a verdict:
 * a new edition gets a new id.
 */
public final class LimitLibrary {

    /**
     * One limit.
     *
     * @param id stable: lower-case words, digits and points, joined by hyphens
     * @param quantity what is measured, and where, such as "+12 V rail, load end"
     * @param edition of the source, or "-"
     * @param note what has to be minded, may be empty
     */
    public record Row(String id, String quantity, Limit limit, String edition, Provenance provenance, String note) {
        public Row {
            new Invalid.Collector()
                    .require(
                            id.matches("[a-z0-9.]+(-[a-z0-9.]+)*") && id.length() <= 60,
                            "id",
                            "Write the id in lower-case words, digits and points joined by hyphens, at most 60"
                                    + " characters.")
                    .require(!quantity.isBlank(), "quantity", "Say what is measured, and where.")
                    .throwIfAny();
        }
    }

    private static final String RESOURCE = "limits.tsv";
    private static final int COLUMNS = 9;

    private final Map<String, Row> rows;

    private LimitLibrary(Map<String, Row> rows) {
        this.rows = rows;
    }

    /** The rows seeded from published standards. */
    public static LimitLibrary published() {
        return Seeded.LIBRARY;
    }

    public Collection<Row> rows() {
        return Collections.unmodifiableCollection(rows.values());
    }

    public Optional<Row> find(String id) {
        return Optional.ofNullable(rows.get(id));
    }

    /** Rows that can judge this quantity. */
    public List<Row> measuring(Dimension dimension) {
        return rows.values().stream()
                .filter(r -> r.limit().unit().dimension() == dimension)
                .toList();
    }

    /**
     * This library and one more row.
     *
     * @throws Invalid if the id is taken
     */
    public LimitLibrary with(Row row) {
        if (rows.containsKey(row.id())) {
            throw new Invalid(
                    "id",
                    "A limit with the id " + row.id()
                            + " exists; limits are not changed, so give the new one its own id.");
        }
        Map<String, Row> more = new LinkedHashMap<>(rows);
        more.put(row.id(), row);
        return new LimitLibrary(more);
    }

    /** Loaded when first asked for. */
    private static final class Seeded {
        private static final LimitLibrary LIBRARY = load();
    }

    private static LimitLibrary load() {
        LimitLibrary library = new LimitLibrary(Map.of());
        for (Row row : rowsOf(lines())) {
            library = library.with(row);
        }
        return library;
    }

    private static List<String> lines() {
        try (InputStream in = LimitLibrary.class.getResourceAsStream(RESOURCE)) {
            if (in == null) {
                throw new IllegalStateException("the resource " + RESOURCE + " is missing");
            }
            return new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))
                    .lines()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Rows of the table: tab-separated, the first line names the columns, lines that begin with # are remarks. */
    private static List<Row> rowsOf(List<String> lines) {
        List<Row> rows = new ArrayList<>();
        boolean heading = true;
        for (String line : lines) {
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            if (!heading) {
                rows.add(row(line));
            }
            heading = false;
        }
        return rows;
    }

    private static Row row(String line) {
        String[] cells = line.split("\t", -1);
        if (cells.length != COLUMNS) {
            throw new IllegalStateException("not " + COLUMNS + " columns: " + line);
        }
        Limit limit = Limit.of(bound(cells[3]), bound(cells[4]), Units.named(cells[2]), cells[5]);
        Provenance provenance =
                Provenance.valueOf(cells[7].toUpperCase(Locale.ROOT).replace(' ', '_'));
        return new Row(cells[0], cells[1], limit, cells[6], provenance, cells[8].equals("-") ? "" : cells[8]);
    }

    private static @Nullable BigDecimal bound(String cell) {
        return cell.equals("-") ? null : new BigDecimal(cell);
    }
}
