package org.benchtrail.core.site;

import java.time.Duration;
import java.time.Instant;

/** The time from one moment up to another, which is not part of it. */
public record Span(Instant from, Instant to) {
    boolean isEmpty() {
        return !from.isBefore(to);
    }

    /** The part of it that lies in the other one; empty if none does. */
    public Span within(Span other) {
        return new Span(later(from, other.from), earlier(to, other.to));
    }

    Duration length() {
        return isEmpty() ? Duration.ZERO : Duration.between(from, to);
    }

    static Instant earlier(Instant one, Instant other) {
        return one.isBefore(other) ? one : other;
    }

    static Instant later(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }
}
