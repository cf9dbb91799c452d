package org.benchtrail.core.diagnosis.path;

import java.util.List;

/** The paths of every category that has some. Part of a version of the cause catalogue. */
public record PathCatalogue(List<CategoryPaths> categories) {
    public static final PathCatalogue NONE = new PathCatalogue(List.of());

    public PathCatalogue {
        categories = List.copyOf(categories);
    }

    /** Those of a category; without segments if nobody described it. */
    public CategoryPaths category(String id) {
        return categories.stream()
                .filter(c -> c.category().equals(id))
                .findFirst()
                .orElseGet(() -> CategoryPaths.none(id));
    }
}
