package org.benchtrail.core.bench.storage;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/**
 * The attribute table of an ATA drive, with its thresholds where they are known.
 *
 * <p>Source: ATA/ATAPI-5 and later, SMART READ DATA and READ THRESHOLDS; SFF-8035i r2 (semantics; clause numbers from
 * memory). A sector holds a revision word, thirty entries of twelve bytes from offset 2, and at offset 511 a checksum that
 * makes the sum of all bytes zero modulo 256.
 *
 * @param rows in the drive's own order, each id once
 */
public record AtaAttributes(List<Attribute> rows) {

    /**
     * One attribute.
     *
     * @param id 1 to 255
     * @param prefail true if a value at the threshold tells of imminent failure, false if of the end of the design life;
     *     true where the table does not say
     * @param value normalised, 1 to 253; higher is better
     * @param worst the lowest value seen, 1 to 253
     * @param threshold 0 to 253; 0 never trips; negative if not known
     * @param raw the maker's counter, 48 bits
     */
    public record Attribute(int id, boolean prefail, int value, int worst, int threshold, long raw) {
        /** The value has come down to the threshold: the drive itself says that it fails. */
        public boolean failing() {
            return threshold > 0 && value <= threshold;
        }

        /** The value was at the threshold once and has come back. */
        public boolean failedBefore() {
            return threshold > 0 && value > threshold && worst <= threshold;
        }
    }

    private static final int ENTRIES = 30;
    private static final int ENTRY_SIZE = 12;
    private static final int FIRST = 2;
    private static final int LAST = 511;
    private static final int LOWEST = 1;
    private static final int HIGHEST = 253;
    private static final long MOST_RAW = (1L << 48) - 1;

    public AtaAttributes {
        rows = List.copyOf(rows);
    }

    public Optional<Attribute> find(int id) {
        return rows.stream().filter(row -> row.id() == id).findFirst();
    }

    /**
     * Reads the attribute sector and, if given, the threshold sector.
     *
     * @throws Invalid if one is empty, cut short, too long, uniform, fails its checksum, has its bytes exchanged, or holds
     *     what no drive can mean; the field is the offset or the row, with {@code thresholds} before it for the second
     */
    public static AtaAttributes parse(byte @Nullable [] data, byte @Nullable [] thresholds) {
        Sector values = checked(data);
        Map<Integer, Integer> limits = thresholds == null ? Map.of() : thresholds(thresholds);
        List<Attribute> rows = new ArrayList<>();
        Invalid.Collector found = new Invalid.Collector();
        for (int row = 0; row < ENTRIES; row++) {
            int at = FIRST + row * ENTRY_SIZE;
            if (values.u8(at) != 0) {
                rows.add(entry(values, at, limits));
            }
        }
        found.require(!rows.isEmpty(), "offset 2", "no entry is in use: this is not an attribute table");
        check(found, rows);
        found.throwIfAny();
        return new AtaAttributes(rows);
    }

    private static Attribute entry(Sector s, int at, Map<Integer, Integer> limits) {
        int id = s.u8(at);
        boolean prefail = (s.u16(at + 1) & 1) == 1;
        return new Attribute(id, prefail, s.u8(at + 3), s.u8(at + 4), limits.getOrDefault(id, -1), s.u48(at + 5));
    }

    private static Map<Integer, Integer> thresholds(byte[] raw) {
        try {
            Sector s = checked(raw);
            Map<Integer, Integer> limits = new HashMap<>();
            Invalid.Collector found = new Invalid.Collector();
            for (int row = 0; row < ENTRIES; row++) {
                threshold(s, FIRST + row * ENTRY_SIZE, limits, found);
            }
            found.throwIfAny();
            return limits;
        } catch (Invalid e) {
            throw new Invalid(e.problems().stream()
                    .map(p -> new Invalid.Problem("thresholds " + p.field(), p.sentence()))
                    .toList());
        }
    }

    private static void threshold(Sector s, int at, Map<Integer, Integer> limits, Invalid.Collector found) {
        int id = s.u8(at);
        if (id != 0) {
            found.require(!limits.containsKey(id), "offset " + at, "attribute " + id + " stands here a second time");
            limits.put(id, s.u8(at + 1));
        }
    }

    private static Sector checked(byte @Nullable [] raw) {
        Sector s = Sector.of(raw);
        if (s.u16(0) > 0xFF && s.u16Swapped(0) <= 0xFF) {
            throw new Invalid("offset 0", swappedSentence(s));
        }
        if (s.sum() != 0) {
            throw new Invalid(
                    "offset " + LAST,
                    "wrong checksum: all bytes add up to " + s.sum()
                            + " modulo 256 instead of 0; read the sector again");
        }
        return s;
    }

    private static String swappedSentence(Sector s) {
        return "the revision word reads " + s.u16(0) + ", with its bytes exchanged " + s.u16Swapped(0)
                + ": the bytes of every word seem exchanged; read the sector unexchanged";
    }

    /**
     * Reads typed rows, one attribute on a line: {@code id value worst threshold raw}, decimal, separated by blanks. Empty
     * lines and what follows a # are passed over.
     *
     * @throws Invalid if a line cannot be read or holds what no drive can mean; the field is the row, counted from 1
     */
    public static AtaAttributes parseRows(String text) {
        Invalid.Collector found = new Invalid.Collector();
        List<Attribute> rows = new ArrayList<>();
        for (String line :
                text.lines().map(AtaAttributes::bare).filter(l -> !l.isEmpty()).toList()) {
            rows.add(row(line, rows.size() + 1));
        }
        found.require(!rows.isEmpty(), "row 1", "there is no row: give lines of id, value, worst, threshold, raw");
        check(found, rows);
        found.throwIfAny();
        return new AtaAttributes(rows);
    }

    private static String bare(String line) {
        int comment = line.indexOf('#');
        return (comment < 0 ? line : line.substring(0, comment)).strip();
    }

    private static Attribute row(String line, int number) {
        String[] parts = line.split("\\s+");
        if (parts.length != 5) {
            throw new Invalid(
                    "row " + number, "five numbers are needed, id value worst threshold raw, not " + parts.length);
        }
        try {
            int[] small = new int[4];
            for (int i = 0; i < small.length; i++) {
                small[i] = Integer.parseInt(parts[i]);
            }
            refuseNegativeThreshold(small[3], number);
            return new Attribute(small[0], true, small[1], small[2], small[3], Long.parseLong(parts[4]));
        } catch (NumberFormatException e) {
            throw new Invalid("row " + number, "whole decimal numbers are needed");
        }
    }

    /** Inside, a negative threshold means "not known"; typed rows cannot say that. */
    private static void refuseNegativeThreshold(int threshold, int number) {
        if (threshold < 0) {
            throw new Invalid("row " + number, "threshold " + threshold + " is outside 0 to 253");
        }
    }

    private static void check(Invalid.Collector found, List<Attribute> rows) {
        Set<Integer> seen = new HashSet<>();
        for (int i = 0; i < rows.size(); i++) {
            Attribute a = rows.get(i);
            String row = "row " + (i + 1);
            found.require(a.id() >= 1 && a.id() <= 255, row, "id " + a.id() + " is outside 1 to 255");
            found.require(seen.add(a.id()), row, "attribute " + a.id() + " stands here a second time");
            normalised(found, row, "value", a.id(), a.value());
            normalised(found, row, "worst", a.id(), a.worst());
            found.require(
                    a.threshold() <= HIGHEST,
                    row,
                    "threshold " + a.threshold() + " of attribute " + a.id() + " is outside 0 to 253");
            found.require(a.raw() >= 0 && a.raw() <= MOST_RAW, row, "raw " + a.raw() + " does not fit in 48 bits");
        }
    }

    private static void normalised(Invalid.Collector found, String row, String what, int id, int value) {
        found.require(
                value >= LOWEST && value <= HIGHEST,
                row,
                what + " " + value + " of attribute " + id + " is outside 1 to 253: 0, 254 and 255 mean nothing");
    }
}
