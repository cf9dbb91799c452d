package org.benchtrail.core.measure;

/** How well a figure is founded on the source that it names. */
public enum Provenance {
    /** Seen in a public copy of the source, or follows from what was seen. */
    SEEN("published"),
    /** Worked out again from the source's own formula. */
    RECOMPUTED("recomputed from the published formula"),
    /** Written down from memory; to be checked against the source before it is relied on. */
    FROM_MEMORY("from memory, not checked"),
    /** What the trade does, without a published origin. */
    COMMON_PRACTICE("common practice, no source"),
    /** The maker's papers or the site's own rule, as they were typed in. */
    GIVEN("as given by the maker or the site");

    private final String words;

    Provenance(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
