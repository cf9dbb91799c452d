package org.benchtrail.core.integrity;

import java.util.Collection;
import java.util.Optional;

/**
 * Entries of a trail that are lost, after which two people agreed to go on. Nothing that stood in them counts, and none of their
 * numbers is given again.
 *
 * @param first number of the first of them
 * @param last number of the last
 * @param hash of the last one, which the entry after the hole names as the one before it
 * @param incident place in the stream of incidents of the record that says who agreed
 */
public record Hole(int first, int last, String hash, long incident) {

    /** Whether an entry lies in it. */
    public boolean takes(long entry) {
        return entry >= first && entry <= last;
    }

    /** The one that begins with an entry. */
    public static Optional<Hole> at(int entry, Collection<Hole> holes) {
        return holes.stream().filter(hole -> hole.first == entry).findFirst();
    }

    /** For people, wherever the trail is shown. */
    public String sentence() {
        return (first == last ? "Entry " + first + " is a hole" : "Entries " + first + " to " + last + " are a hole")
                + ", mended by incident " + incident + ": what stood there is lost and counts for nothing.";
    }
}
