package org.benchtrail.core.diagnosis;

import java.util.List;
import java.util.Optional;

/**
 * The cause catalogue: every category with its findings and causes. An instance is valid as a whole.
 *
 * <p>The rules are those of {@link CatalogueRules}; a problem's field is the path of the entry, such as {@code
 * categories[0].causes[3].weight}.
 */
public record Catalogue(List<CauseCategory> categories) {

    /** @throws org.benchtrail.core.Invalid with every problem found */
    public Catalogue {
        categories = List.copyOf(categories);
        CatalogueRules.require(categories);
    }

    public Optional<CauseCategory> category(String id) {
        return categories.stream().filter(c -> c.id().equals(id)).findFirst();
    }

    /** Number of causes in all categories. */
    public int causes() {
        return categories.stream().mapToInt(c -> c.causes().size()).sum();
    }
}
