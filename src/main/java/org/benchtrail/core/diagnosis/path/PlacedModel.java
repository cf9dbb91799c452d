package org.benchtrail.core.diagnosis.path;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.diagnosis.Model;

/**
 * A model of causes in places, for one set of segments that are there.
 *
 * @param model whose findings are the listed ones, then the tests made from the structure
 * @param places of its parts, in their order
 * @param tests made from the structure
 * @param gone listed findings that make no sense with these segments
 */
record PlacedModel(Model model, Layout layout, List<PlacedPart> places, List<GenericTest> tests, Set<String> gone) {
    PlacedModel {
        places = List.copyOf(places);
        tests = List.copyOf(tests);
        gone = Set.copyOf(gone);
    }

    /** Mass of each segment that is there, in the order of the file. */
    Map<String, Double> masses(double[] parts) {
        Map<String, Double> masses = new LinkedHashMap<>();
        layout.segments().forEach(s -> masses.put(s.id(), 0.0));
        for (int p = 0; p < places.size(); p++) {
            double x = parts[p];
            masses.computeIfPresent(places.get(p).segment(), (segment, mass) -> mass + x);
        }
        return masses;
    }
}
