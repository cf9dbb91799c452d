package org.benchtrail.core.readin;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/** Limits that came with a value; inclusive. */
record Bounds(@Nullable BigDecimal lower, @Nullable BigDecimal upper, String source) {
    static final Bounds NONE = new Bounds(null, null, "");

    static Bounds atLeast(long lower, String source) {
        return new Bounds(BigDecimal.valueOf(lower), null, source);
    }

    static Bounds atMost(long upper, String source) {
        return new Bounds(null, BigDecimal.valueOf(upper), source);
    }
}
