package org.benchtrail.core.diagnosis.path;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Deviation;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Repair;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Risk;
import org.benchtrail.core.diagnosis.Source;

/** Small invented structures. */
final class Rig {
    static final Instant T0 = Instant.parse("2026-01-05T08:00:00Z");

    private Rig() {}

    /** Two minutes of it to verify. */
    static Repair repair(double minutes, double fix, String... needs) {
        return new Repair("repair", minutes - 2, 2, fix, 0, Risk.NONE, true, List.of(needs));
    }

    static SegmentAct act(PathAct act, double minutes) {
        return new SegmentAct(act, minutes, Risk.NONE, "", List.of(), List.of(), Set.of());
    }

    static Segment segment(String id, double share, double minutes, List<String> causes, SegmentAct... acts) {
        return new Segment(
                id,
                "the " + id,
                Presence.ALWAYS,
                share,
                causes,
                Set.of(),
                Set.of(),
                false,
                List.of(acts),
                repair(minutes, 0.9));
    }

    static Segment with(Segment s, Presence p) {
        return new Segment(
                s.id(),
                s.name(),
                p,
                s.share(),
                s.causes(),
                s.seating(),
                s.survives(),
                s.inside(),
                s.acts(),
                s.repair());
    }

    static Point point(String after, double minutes) {
        return new Point(
                after,
                "behind the " + after,
                "Measure behind the " + after + ".",
                "nothing there",
                Point.Side.UPSTREAM,
                false,
                minutes,
                Risk.NONE,
                List.of(),
                Optional.empty());
    }

    static CategoryPaths paths(double residual, List<Segment> segments, Point... points) {
        FaultPath path =
                new FaultPath("way", "Way", segments.stream().map(Segment::id).toList(), Arrays.asList(points));
        return new CategoryPaths(
                "c", residual, segments, Map.of(), Map.of(), List.of(path), List.of(), List.of(), List.of());
    }

    static Finding answer(String id, double yes, double minutes) {
        return new Finding(
                id,
                id + "?",
                Finding.Kind.ANSWER,
                GenericTest.NO_YES,
                Map.of("no", 1 - yes, "yes", yes),
                minutes,
                Risk.NONE,
                List.of(),
                null,
                null);
    }

    /** @param yes pairs of a finding and the probability of yes */
    static Cause cause(String id, double weight, Repair repair, Object... yes) {
        List<Deviation> deviations = new ArrayList<>();
        for (int k = 0; k < yes.length; k += 2) {
            double p = (Double) yes[k + 1];
            deviations.add(new Deviation((String) yes[k], Map.of("no", 1 - p, "yes", p)));
        }
        return new Cause(id, "cause " + id, weight, deviations, "look at it", 5, repair, "");
    }

    static CauseCategory category(List<Finding> findings, List<Cause> causes) {
        return new CauseCategory("c", "c", 240, List.of(), findings, causes, List.of());
    }

    static Report seen(String test, String value, int number) {
        return Report.of("r" + number, test, value, Source.SEEN, T0.plusSeconds(60L * number));
    }
}
