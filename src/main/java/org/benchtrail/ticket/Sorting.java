package org.benchtrail.ticket;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The order of the queue. Each order ends with the number, so that no two tickets share a place.
 *
 * @param back from the last to the first
 */
public record Sorting(Key by, boolean back) {
    public static final Sorting DEFAULT = new Sorting(Key.DUE, false);

    /** What the order goes by, with the columns that it is read from, each of which has an index in that order. */
    public enum Key {
        DUE("first due", "last due", "due, serial", ":due, :serial"),
        NUMBER("lowest number", "highest number", "serial", ":serial"),
        PRIORITY("most urgent", "least urgent", "priority_rank, due, serial", ":rank, :due, :serial"),
        TOUCHED("longest untouched", "last touched", "touched, serial", ":touched, :serial");

        private final String first;
        private final String backFirst;
        private final String columns;
        private final String place;

        Key(String first, String backFirst, String columns, String place) {
            this.first = first;
            this.backFirst = backFirst;
            this.columns = columns;
            this.place = place;
        }
    }

    /** Every order there is. */
    public static List<Sorting> all() {
        return Arrays.stream(Key.values())
                .flatMap(key -> Stream.of(new Sorting(key, false), new Sorting(key, true)))
                .toList();
    }

    /** What stands first in it. */
    public String words() {
        return back ? by.backFirst : by.first;
    }

    /** As it stands in an address: {@code due}, or {@code due-back}. */
    public String token() {
        return by.name().toLowerCase(Locale.ROOT) + (back ? "-back" : "");
    }

    /** The order of that token; empty if there is none. */
    public static Optional<Sorting> parse(String token) {
        return all().stream().filter(sorting -> sorting.token().equals(token)).findFirst();
    }

    /** What stands behind {@code order by}. */
    String columns() {
        return back ? by.columns.replace(",", " desc,") + " desc" : by.columns;
    }

    /** The condition for what comes after a place. */
    String after() {
        return "(" + by.columns + ") " + (back ? "<" : ">") + " (" + by.place + ")";
    }
}
