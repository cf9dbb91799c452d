package org.benchtrail.core.diagnosis.path;

import java.util.Arrays;
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
 * @param subjects what the tests are about
 * @param segmentOf for each part the number of its segment among those that are there; their count if it is in none
 */
record PlacedModel(
        Model model,
        Layout layout,
        List<PlacedPart> places,
        List<GenericTest> tests,
        Set<String> gone,
        Subjects subjects,
        List<Integer> segmentOf) {
    PlacedModel {
        places = List.copyOf(places);
        tests = List.copyOf(tests);
        gone = Set.copyOf(gone);
        segmentOf = List.copyOf(segmentOf);
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

    /** Expected entropy of the place, nats, after a test whose reports have that reliability. */
    double doubtAfter(String test, double[] parts, double reliability) {
        double doubt = 0;
        double[] masses = new double[layout.segments().size() + 1];
        for (double[] after : model.after(test, parts, reliability)) {
            Arrays.fill(masses, 0);
            for (int p = 0; p < places.size(); p++) {
                masses[segmentOf.get(p)] += after[p];
            }
            double mass = 0;
            double sum = 0;
            for (int s = 0; s < masses.length - 1; s++) {
                mass += masses[s];
                sum += masses[s] > 0 ? masses[s] * StrictMath.log(masses[s]) : 0;
            }
            double outside = after[after.length - 1];
            mass += outside;
            sum += outside > 0 ? outside * StrictMath.log(outside) : 0;
            doubt += mass > 0 ? mass * StrictMath.log(mass) - sum : 0;
        }
        return doubt;
    }
}
