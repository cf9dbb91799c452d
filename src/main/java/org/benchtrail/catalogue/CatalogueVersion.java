package org.benchtrail.catalogue;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.benchtrail.core.advice.KindWords;
import org.benchtrail.core.diagnosis.Catalogue;
import org.benchtrail.core.diagnosis.Learned;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.PlanSettings;
import org.benchtrail.core.diagnosis.path.Localiser;
import org.benchtrail.core.diagnosis.path.PathCatalogue;

/**
 * One version of the catalogue's figures. Immutable; what was ranked with a version can be ranked again with it.
 *
 * @param number 1, 2, 3 without gaps
 * @param figures of each category by its id
 * @param localisers of each category by its id, ready to say where a fault is and what it is
 * @param words of all kinds of trouble
 */
public record CatalogueVersion(
        int number,
        Map<String, Learned> figures,
        Map<String, Model> models,
        Map<String, Localiser> localisers,
        KindWords words) {

    /** As written, before anything was learned. */
    public static CatalogueVersion of(int number, Catalogue catalogue, PathCatalogue paths) {
        return of(number, practice(catalogue), paths);
    }

    /** The figures as written, by category. */
    static Map<String, Learned> practice(Catalogue catalogue) {
        Map<String, Learned> figures = new TreeMap<>();
        catalogue.categories().forEach(c -> figures.put(c.id(), Learned.practice(c)));
        return figures;
    }

    public static CatalogueVersion of(int number, Map<String, Learned> figures, PathCatalogue paths) {
        Map<String, Model> models = new TreeMap<>();
        Map<String, Localiser> localisers = new TreeMap<>();
        figures.forEach((id, f) -> {
            ModelSettings settings = ModelSettings.STANDARD.withUnlisted(f.unlisted());
            models.put(id, new Model(f.category(), settings));
            localisers.put(id, new Localiser(f.category(), paths.category(id), settings, PlanSettings.STANDARD));
        });
        KindWords words =
                new KindWords(figures.values().stream().map(Learned::category).toList());
        return new CatalogueVersion(number, Map.copyOf(figures), Map.copyOf(models), Map.copyOf(localisers), words);
    }

    /** Of the causes alone; empty if the catalogue has no such category. */
    public Optional<Model> model(String category) {
        return Optional.ofNullable(models.get(category));
    }

    /** Ready to diagnose with; empty if the catalogue has no such category. */
    public Optional<Localiser> localiser(String category) {
        return Optional.ofNullable(localisers.get(category));
    }

    /** What every percentage of the category carries: starter figures, or learned from so many cases. */
    public String label(String category) {
        return Objects.requireNonNull(figures.get(category), category).label();
    }
}
