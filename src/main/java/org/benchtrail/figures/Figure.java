package org.benchtrail.figures;

import io.quarkus.qute.RawString;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.platform.Csv;
import org.jspecify.annotations.Nullable;

/**
 * One figure: a table, and a picture of the same numbers where there is enough to draw.
 *
 * @param id by which files and lists of tickets ask for it
 * @param says what it is and how it is read
 * @param chart null where there is too little, or nothing to draw
 * @param few what is missing for the picture; empty if nothing is
 * @param unusual what is out of its limits
 */
public record Figure(
        String id,
        String title,
        String says,
        @Nullable RawString chart,
        String few,
        List<Head> heads,
        List<Row> rows,
        List<String> unusual) {
    /** Half a minute. */
    static final double LEAST_HOURS = 1 / 120.0;

    private static final int DIGITS = 3;

    /** @param number whether the column holds numbers; their unit is part of the text */
    public record Head(String text, boolean number) {
        static Head words(String text) {
            return new Head(text, false);
        }

        static Head number(String text) {
            return new Head(text, true);
        }
    }

    /**
     * @param key tells it from the other rows
     * @param tickets that it is made of, by serial
     */
    public record Row(String key, List<String> cells, List<Integer> tickets) {
        public Row {
            cells = List.copyOf(cells);
            tickets = List.copyOf(tickets);
        }

        public String first() {
            return cells.get(0);
        }

        /** The key as part of an address. */
        public String address() {
            return URLEncoder.encode(key, StandardCharsets.UTF_8);
        }
    }

    /** A cell with what stands above it. */
    public record Cell(Head head, String text) {}

    public Figure {
        heads = List.copyOf(heads);
        rows = List.copyOf(rows);
        unusual = List.copyOf(unusual);
    }

    /** With more said of it; what is empty is left out. */
    Figure saying(String... more) {
        String all = Stream.concat(Stream.of(says), Stream.of(more).filter(m -> !m.isEmpty()))
                .collect(Collectors.joining(" "));
        return new Figure(id, title, all, chart, few, heads, rows, unusual);
    }

    /** The cells behind the first. */
    public List<Cell> cells(Row row) {
        List<Cell> cells = new ArrayList<>();
        for (int i = 1; i < heads.size(); i++) {
            cells.add(new Cell(heads.get(i), row.cells().get(i)));
        }
        return cells;
    }

    /** The table as comma-separated values. */
    public String csv(Csv form) {
        return form.line(heads.stream().map(Head::text).toList())
                + rows.stream().map(r -> form.line(r.cells())).collect(Collectors.joining());
    }

    static String number(double value) {
        return Numeral.of(value, DIGITS);
    }

    /** Working time; what is shorter than half a minute is none. */
    static String hours(double hours) {
        return hours < LEAST_HOURS ? "0" : number(hours);
    }

    /** A share in percent. */
    static String percent(double share) {
        return Numeral.of(100 * share, DIGITS);
    }
}
