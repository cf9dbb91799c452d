package org.benchtrail.core.diagnosis;

import java.util.List;
import java.util.Map;

/**
 * What a model knows beyond a category as it stands.
 *
 * @param listed how many of the category's causes are entries of the catalogue; the others stand for what nobody listed in a
 *     place
 * @param parts of the causes, in the order of the causes
 * @param unlisted prior of the cause that is in no place
 * @param tables by finding, over the parts
 * @param cures tests that are half a repair
 * @param confirming by cause, the tests that may confirm it
 */
public record Structure(
        int listed,
        List<CausePart> parts,
        double unlisted,
        List<LikelihoodTable> tables,
        List<Cure> cures,
        Map<String, List<String>> confirming) {
    public Structure {
        parts = List.copyOf(parts);
        tables = List.copyOf(tables);
        cures = List.copyOf(cures);
        confirming = Map.copyOf(confirming);
    }
}
