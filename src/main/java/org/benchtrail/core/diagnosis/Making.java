package org.benchtrail.core.diagnosis;

import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * How a finding is made, and how its answers are to be taken.
 *
 * @param label how it is named in lists and reasons: a statement
 * @param act what to do, one or two sentences; empty if the label says enough
 * @param way how one comes to know it
 * @param invasive whether it opens, stops or changes something
 * @param cautions codes of what is shown before it is done, as the method names them
 * @param needs what must be so before, such as {@code outage-announced}
 * @param unless not offered while another finding is known to have one of these values
 * @param narrows id of the finding that this one says more exactly; what only followed from other facts for that one is then
 *     dropped; null if none
 * @param fleeting seen only while the fault shows
 */
public record Making(
        String label,
        String act,
        Way way,
        boolean invasive,
        Set<String> cautions,
        List<String> needs,
        List<Condition> unless,
        @Nullable String narrows,
        boolean fleeting) {

    /** How one comes to know a finding. */
    public enum Way {
        /** A person is asked. */
        ASK,
        /** A screen, a light, a part; nothing is changed. */
        LOOK,
        /** An instrument or a counter gives a value. */
        MEASURE,
        /** Something is swapped, moved, switched or run. */
        TRY
    }

    public Making {
        // in order, so that the same catalogue is the same text again
        cautions = Collections.unmodifiableSet(new TreeSet<>(cautions));
        needs = List.copyOf(needs);
        unless = List.copyOf(unless);
    }
}
