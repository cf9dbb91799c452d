package org.benchtrail.catalogue;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.benchtrail.core.diagnosis.Catalogue;
import org.benchtrail.core.diagnosis.Learned;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.ModelSettings;

/**
 * One version of the catalogue's figures. Immutable; what was ranked with a version can be ranked again with it.
 *
 * @param number 1, 2, 3 without gaps
 * @param figures of each category by its id
 */
public record CatalogueVersion(int number, Map<String, Learned> figures, Map<String, Model> models) {

    /** As written, before anything was learned. */
    public static CatalogueVersion of(int number, Catalogue catalogue) {
        Map<String, Learned> figures = new TreeMap<>();
        catalogue.categories().forEach(c -> figures.put(c.id(), Learned.practice(c)));
        return of(number, figures);
    }

    public static CatalogueVersion of(int number, Map<String, Learned> figures) {
        Map<String, Model> models = new TreeMap<>();
        figures.forEach(
                (id, f) -> models.put(id, new Model(f.category(), ModelSettings.STANDARD.withUnlisted(f.unlisted()))));
        return new CatalogueVersion(number, Map.copyOf(figures), Map.copyOf(models));
    }

    /** Ready to rank with; empty if the catalogue has no such category. */
    public Optional<Model> model(String category) {
        return Optional.ofNullable(models.get(category));
    }

    /** What every percentage of the category carries: starter figures, or learned from so many cases. */
    public String label(String category) {
        return Objects.requireNonNull(figures.get(category), category).label();
    }
}
