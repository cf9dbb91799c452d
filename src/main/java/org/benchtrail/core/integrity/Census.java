package org.benchtrail.core.integrity;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * How much there was at the end of a day. What is counted never gets less, so that whoever takes something away with all that names it
 * still leaves a day that counted it.
 *
 * @param day in UTC
 * @param size leaves of the log when it was counted
 * @param leaves how many of these each kind of stream has; they are {@code size} together
 * @param rows how many there are of what is counted otherwise, by what it is called in the sentences
 */
public record Census(LocalDate day, long size, SortedMap<String, Long> leaves, SortedMap<String, Long> rows) {
    public Census {
        leaves = new TreeMap<>(leaves);
        rows = new TreeMap<>(rows);
    }

    /** The kind of a stream: streams of tickets are one kind, those of audits another. */
    public static String kind(String stream) {
        int slash = stream.indexOf('/');
        return slash < 0 ? stream : stream.substring(0, slash);
    }

    /**
     * What is not as it was counted, a sentence each.
     *
     * @param leavesNow by kind of stream, among the first {@code size} leaves that there are now
     * @param rowsNow what there is now
     */
    public List<String> faults(Map<String, Long> leavesNow, Map<String, Long> rowsNow) {
        List<String> faults = new ArrayList<>();
        if (!new TreeMap<>(leavesNow).equals(leaves)) {
            faults.add("On that day the first " + size + " leaves were " + told(leaves) + "; now they are "
                    + told(new TreeMap<>(leavesNow)) + ".");
        }
        rows.forEach((what, then) -> {
            long now = rowsNow.getOrDefault(what, 0L);
            if (now < then) {
                faults.add("On that day there were " + then + " " + what + ", and now there are " + now + ".");
            }
        });
        return faults;
    }

    private static String told(SortedMap<String, Long> counts) {
        List<String> parts = new ArrayList<>();
        counts.forEach((what, count) -> parts.add(count + " " + what));
        return String.join(", ", parts);
    }
}
