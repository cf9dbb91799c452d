package org.benchtrail.catalogue;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A version of the catalogue as a line of their list.
 *
 * @param madeBy account of who proposed it; {@code server} for what was delivered
 * @param confirmedBy account; null for what was delivered, or made before it took two
 * @param restores number of the version that it goes back to; null if it is a new one
 */
public record VersionView(
        int number,
        Instant madeAt,
        String madeBy,
        @Nullable String confirmedBy,
        String note,
        VersionOrigin origin,
        @Nullable Integer restores) {

    /** The page that shows it. */
    public String page() {
        return "/catalogue/versions/" + number;
    }
}
