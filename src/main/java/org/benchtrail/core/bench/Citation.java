package org.benchtrail.core.bench;

import org.benchtrail.core.measure.Provenance;

/** Where a rule comes from: a title, and how well the rule is founded on it. */
public record Citation(String title, Provenance provenance) {
    /** A rule that the trade follows without a published origin. */
    public static final Citation COMMON_PRACTICE =
            new Citation(Provenance.COMMON_PRACTICE.words(), Provenance.COMMON_PRACTICE);

    /** A published source of which a public copy was seen. */
    public static Citation seen(String title) {
        return new Citation(title, Provenance.SEEN);
    }

    public static Citation fromMemory(String title) {
        return new Citation(title, Provenance.FROM_MEMORY);
    }

    /** Papers of the maker or of the site, whose figures were typed in. */
    public static Citation given(String title) {
        return new Citation(title, Provenance.GIVEN);
    }
}
