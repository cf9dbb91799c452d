package org.benchtrail.knowledge;

import org.benchtrail.core.method.Category;
import org.jspecify.annotations.Nullable;

/** A known cause at one moment, as its history keeps it in JSON. */
record CauseImage(
        String title,
        Category category,
        @Nullable String causeId,
        String shows,
        String apart,
        String cure,
        CauseState state,
        @Nullable Long mergedInto,
        int confirmations) {}
