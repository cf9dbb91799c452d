package org.benchtrail.ticket;

import java.time.Instant;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/**
 * How far the trail of a ticket is sealed.
 *
 * @param entry the last one that a signed head holds; 0 if none
 * @param asked how many witnesses the site asks, and of others those that have signed that head first
 * @param signed how many of them have signed a head that holds the entry
 * @param at when the last of these did so, by its own clock; null if none has
 */
public record SealedUpTo(
        int entry, int asked, int signed, @Nullable Instant at) {
    /** Said of a head that no witness has signed. */
    public static final String ALONE = "Signed by the shop alone. Nobody else has seen this head.";

    public static final SealedUpTo NOTHING = new SealedUpTo(0, 0, 0, null);

    /** @param entries that the trail has */
    public String sentence(int entries, ZoneId zone) {
        if (entry == 0) {
            return "Not sealed yet: nobody would see a change in the database.";
        }
        String witnessed = at == null ? "" : ", witnessed " + signed + " of " + asked + " at " + Times.text(at, zone);
        return "Sealed up to entry " + entry + witnessed + "." + (at == null ? " " + ALONE : "") + rest(entries);
    }

    private String rest(int entries) {
        if (entries > entry) {
            return entries == entry + 1
                    ? " Entry " + entries + " is not sealed yet."
                    : " Entries " + (entry + 1) + " to " + entries + " are not sealed yet.";
        }
        return entries < entry ? " Only " + entries + " are here." : "";
    }
}
