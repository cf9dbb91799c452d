package org.benchtrail.core.diagnosis.path;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;

/** Which causes can be on a ticket, and where. */
final class Places {
    private Places() {}

    /** Id of what nobody listed in a segment. */
    static String residual(String segment) {
        return Localiser.SOMETHING_ELSE + segment;
    }

    /** Id of the repair of a segment as a whole. */
    static String repair(String segment) {
        return "segment:" + segment;
    }

    /** Mending what nobody listed in a segment is mending the segment. */
    static String repairOf(String id) {
        return id.startsWith(Localiser.SOMETHING_ELSE) ? repair(id.substring(Localiser.SOMETHING_ELSE.length())) : id;
    }

    /** Whatever nobody listed in a segment, as a cause. */
    static Cause somethingElse(Segment s, double weight) {
        return new Cause(
                residual(s.id()),
                "something else: " + s.name(),
                weight,
                List.of(),
                "look at it again: " + s.name(),
                1,
                s.repair(),
                "");
    }

    /** Parts of the listed causes in the order of the catalogue, then one residual for each segment if there are any. */
    static List<PlacedPart> of(Layout layout, List<Cause> causes) {
        List<PlacedPart> places = new ArrayList<>();
        causes.forEach(c -> listed(layout, c, places));
        if (layout.paths().residual() > 0) {
            for (Segment s : layout.segments()) {
                String id = residual(s.id());
                places.add(new PlacedPart(id, id, s.id(), false, 1, false, false));
            }
        }
        return places;
    }

    private static void listed(Layout layout, Cause c, List<PlacedPart> places) {
        Map<String, Double> parts = new LinkedHashMap<>(layout.paths().parts(c.id()));
        if (parts.isEmpty()) {
            places.add(new PlacedPart(c.id(), c.id(), "", true, 1, false, false));
            return;
        }
        parts.keySet().removeIf(s -> !layout.has(s));
        double sum = parts.values().stream().mapToDouble(x -> x).sum();
        parts.forEach((id, share) -> {
            Segment s = layout.paths().segment(id).orElseThrow();
            String part = parts.size() == 1 ? c.id() : c.id() + "@" + id;
            boolean seating = s.seating().contains(c.id());
            boolean survives = s.survives().contains(c.id());
            places.add(new PlacedPart(part, c.id(), id, true, share / sum, seating, survives));
        });
    }

    /** The causes of the catalogue that can be on this ticket. */
    static List<Cause> left(Layout layout, CauseCategory category) {
        return category.causes().stream()
                .filter(c -> {
                    String required = layout.paths().requires().get(c.id());
                    Map<String, Double> parts = layout.paths().parts(c.id());
                    return (required == null || layout.has(required))
                            && (parts.isEmpty() || parts.keySet().stream().anyMatch(layout::has));
                })
                .toList();
    }
}
