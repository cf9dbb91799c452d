package org.benchtrail.figures;

import java.util.List;
import org.benchtrail.core.method.Category;

/**
 * A cause of the catalogue, as tickets were closed with it.
 *
 * @param key tells it from those of other kinds of trouble
 * @param ids by which closed tickets name it: its own, and those that it had before
 */
record FigureCause(String key, Category category, List<String> ids, String words) {
    FigureCause {
        ids = List.copyOf(ids);
    }

    static String key(Category category, String id) {
        return category.name() + "/" + id;
    }
}
