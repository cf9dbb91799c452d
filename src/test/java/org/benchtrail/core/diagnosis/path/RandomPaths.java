package org.benchtrail.core.diagnosis.path;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.FailedRepair;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Repair;
import org.benchtrail.core.diagnosis.Risk;

/** Random categories on two paths that share a segment; the last segment of the second is optional. */
record RandomPaths(CauseCategory category, CategoryPaths paths) {
    static final String OPTIONAL = "s8";

    static RandomPaths of(long seed, double residual, boolean spread) {
        Random r = new Random(seed);
        List<Finding> findings = new ArrayList<>();
        for (int f = 0; f < 6; f++) {
            findings.add(Rig.answer("f" + f, 0.05 + 0.4 * r.nextDouble(), 1 + r.nextInt(8)));
        }
        List<Cause> causes = new ArrayList<>();
        Map<Integer, List<String>> homes = new HashMap<>();
        for (int c = 0; c < 9; c++) {
            List<Object> yes = new ArrayList<>();
            List<Integer> order = new ArrayList<>(List.of(0, 1, 2, 3, 4, 5));
            Collections.shuffle(order, r);
            for (int f : order.subList(0, 2)) {
                yes.add("f" + f);
                yes.add(0.02 + 0.96 * r.nextDouble());
            }
            String[] needs = r.nextInt(3) == 0 ? new String[] {"backup-done"} : new String[0];
            Repair repair = Rig.repair(4 + r.nextInt(80), 0.9 + 0.05 * r.nextDouble(), needs);
            causes.add(Rig.cause("c" + c, 0.2 + 5 * r.nextDouble(), repair, yes.toArray()));
            homes.computeIfAbsent(1 + r.nextInt(8), s -> new ArrayList<>()).add("c" + c);
        }
        List<Segment> segments = new ArrayList<>();
        for (int s = 1; s <= 8; s++) {
            segments.add(segment(r, s, homes.getOrDefault(s, List.of())));
        }
        FaultPath first =
                new FaultPath("a", "A", List.of("s1", "s2", "s3", "s4", "s5"), points("s1", "s2", "s3", "s4"));
        FaultPath second = new FaultPath("b", "B", List.of("s6", "s3", "s7", "s8"), points("s6", "s3"));
        Map<String, Map<String, Double>> parts = new HashMap<>();
        String home = segments.stream()
                .filter(x -> x.causes().contains("c0"))
                .map(Segment::id)
                .findFirst()
                .orElseThrow();
        if (spread) {
            parts.put("c0", Map.of(home, 0.6, home.equals("s1") ? "s2" : "s1", 0.4));
        }
        List<StandsFor> stands = List.of(
                new StandsFor("f0", PathAct.LOOK, List.of("s1"), "yes"),
                new StandsFor("f1", PathAct.SUBSTITUTE, List.of("s2", "s3"), "yes"));
        List<WholeTest> whole = List.of(
                new WholeTest(PathAct.SISTER, "Another", List.of("s1", "s2"), 2, Risk.NONE, List.of(), List.of(), ""),
                new WholeTest(PathAct.LOG, "Log", List.of("s2", "s4", "s7"), 3, Risk.NONE, List.of(), List.of(), ""));
        return new RandomPaths(
                Rig.category(findings, causes),
                new CategoryPaths(
                        "c", residual, segments, parts, Map.of(), List.of(first, second), whole, List.of(), stands));
    }

    private static Segment segment(Random r, int s, List<String> causes) {
        Segment plain = Rig.segment(
                "s" + s,
                1 + r.nextInt(6),
                5 + r.nextInt(60),
                causes,
                Rig.act(PathAct.LOOK, 1),
                Rig.act(PathAct.RESEAT, 3),
                new SegmentAct(
                        PathAct.SUBSTITUTE,
                        8,
                        Risk.NONE,
                        "spare",
                        List.of(),
                        List.of(),
                        s % 2 == 0 ? Set.of(Bar.UNSAVED_DATA) : Set.of()),
                Rig.act(PathAct.MOVE, 6));
        return s == 8 ? Rig.with(plain, new Presence(Presence.Start.THERE, "Is it there?", "", Set.of())) : plain;
    }

    private static List<Point> points(String... after) {
        List<Point> points = new ArrayList<>();
        for (String s : after) {
            points.add(new Point(
                    s,
                    "behind " + s,
                    "Measure.",
                    "nothing",
                    Point.Side.UPSTREAM,
                    false,
                    3,
                    Risk.NONE,
                    List.of(),
                    Optional.empty()));
        }
        return points;
    }

    Localiser localiser() {
        return new Localiser(
                category,
                paths,
                org.benchtrail.core.diagnosis.ModelSettings.STANDARD,
                org.benchtrail.core.diagnosis.PlanSettings.STANDARD.withPrune(false));
    }

    /** Some reports on findings and on tests made from the structure; at times a failed repair. */
    Evidence evidence(long seed, boolean generic) {
        Random r = new Random(seed * 17 + 3);
        Evidence e = Evidence.NONE;
        List<Finding> all = new ArrayList<>(category.findings());
        if (generic) {
            Localisation at = localiser().locate(Known.of(Evidence.NONE));
            at.tests().forEach(t -> all.add(t.finding("")));
        }
        for (int k = 0; k < r.nextInt(6); k++) {
            Finding f = all.get(r.nextInt(all.size()));
            e = e.with(Rig.seen(f.id(), f.values().get(r.nextInt(f.values().size())), k));
        }
        if (r.nextInt(3) == 0) {
            String id = generic && r.nextBoolean() ? "segment:s" + (1 + r.nextInt(7)) : "c" + r.nextInt(9);
            e = e.with(new FailedRepair(id, 0.4, Rig.T0));
        }
        return e;
    }
}
