package org.benchtrail.core.diagnosis.path;

import java.util.Set;

/**
 * Whether a segment is there at all. Structure, no evidence: it carries no likelihood.
 *
 * @param start what holds until somebody says
 * @param ask the question that settles it; empty if only a finding does
 * @param finding id of a listed finding whose answer settles it; empty if none does
 * @param is values of that finding that mean there; any other answer means absent
 */
public record Presence(Start start, String ask, String finding, Set<String> is) {
    /** Part of every such device. */
    public static final Presence ALWAYS = new Presence(Start.ALWAYS, "", "", Set.of());

    /** What holds until somebody says. */
    public enum Start {
        ALWAYS,
        /** Counted in until asked. */
        THERE,
        /** Counted out until somebody says yes. */
        ABSENT
    }

    public Presence {
        is = Set.copyOf(is);
    }
}
