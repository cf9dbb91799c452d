package org.benchtrail.catalogue;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A version of the catalogue as a line of their list.
 *
 * @param madeBy account; {@code server} for what was delivered
 * @param restores number of the version that it goes back to; null if it is a new one
 */
public record VersionView(
        int number,
        Instant madeAt,
        String madeBy,
        String note,
        VersionOrigin origin,
        @Nullable Integer restores) {}
