package org.benchtrail.core.diagnosis.path;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.PlanSettings;
import org.benchtrail.core.diagnosis.Risk;

/** As large as a category may become: 300 causes in 60 segments on 10 paths, 500 findings, 270 tests made from the structure. */
public final class LargePaths {
    private static final int CAUSES = 300;
    private static final int FINDINGS = 500;
    private static final int SEGMENTS = 60;
    private static final int ON_A_PATH = 6;

    private final Localiser localiser;
    private final Known[] cases;

    /** @param count how many tickets, each with 12 answers */
    public LargePaths(int count) {
        Random r = new Random(1);
        List<Finding> findings = new ArrayList<>();
        for (int f = 0; f < FINDINGS; f++) {
            findings.add(Rig.answer("f" + f, 0.05 + 0.4 * r.nextDouble(), 1 + r.nextInt(8)));
        }
        List<Cause> causes = new ArrayList<>();
        Map<Integer, List<String>> homes = new HashMap<>();
        for (int c = 0; c < CAUSES; c++) {
            Map<String, Double> yes = new HashMap<>();
            for (int k = 0; k < 18; k++) {
                yes.put("f" + r.nextInt(FINDINGS), 0.02 + 0.96 * r.nextDouble());
            }
            Object[] pairs = yes.entrySet().stream()
                    .flatMap(e -> java.util.stream.Stream.of((Object) e.getKey(), e.getValue()))
                    .toArray();
            causes.add(Rig.cause("c" + c, 0.2 + 5 * r.nextDouble(), Rig.repair(4 + r.nextInt(80), 0.95), pairs));
            homes.computeIfAbsent(c % SEGMENTS, s -> new ArrayList<>()).add("c" + c);
        }
        localiser = new Localiser(
                Rig.category(findings, causes), paths(r, homes), ModelSettings.STANDARD, PlanSettings.STANDARD);
        cases = new Known[count];
        for (int k = 0; k < count; k++) {
            Evidence e = Evidence.NONE;
            for (int n = 0; n < 12; n++) {
                e = e.with(Rig.seen("f" + r.nextInt(FINDINGS), r.nextBoolean() ? "yes" : "no", n));
            }
            cases[k] = Known.of(e);
        }
    }

    private static CategoryPaths paths(Random r, Map<Integer, List<String>> homes) {
        List<Segment> segments = new ArrayList<>();
        for (int s = 0; s < SEGMENTS; s++) {
            segments.add(Rig.segment(
                    "s" + s,
                    1 + r.nextInt(6),
                    5 + r.nextInt(60),
                    homes.getOrDefault(s, List.of()),
                    Rig.act(PathAct.LOOK, 1),
                    Rig.act(PathAct.RESEAT, 3),
                    Rig.act(PathAct.SUBSTITUTE, 8)));
        }
        List<FaultPath> paths = new ArrayList<>();
        List<WholeTest> whole = new ArrayList<>();
        for (int p = 0; p < SEGMENTS / ON_A_PATH; p++) {
            List<String> order = new ArrayList<>();
            List<Point> points = new ArrayList<>();
            for (int s = p * ON_A_PATH; s < (p + 1) * ON_A_PATH; s++) {
                order.add("s" + s);
                if (order.size() < ON_A_PATH) {
                    points.add(point("s" + s));
                }
            }
            paths.add(new FaultPath("p" + p, "P", order, points));
            for (int k = 0; k < 4; k++) {
                whole.add(new WholeTest(
                        k % 2 == 0 ? PathAct.SISTER : PathAct.REPEAT,
                        "Another",
                        order.subList(k, k + 3),
                        2,
                        Risk.NONE,
                        List.of(),
                        List.of(),
                        ""));
            }
        }
        return new CategoryPaths("c", 0.35, segments, Map.of(), Map.of(), paths, whole, List.of(), List.of());
    }

    private static Point point(String after) {
        return new Point(
                after,
                after,
                "Measure.",
                "nothing",
                Point.Side.UPSTREAM,
                false,
                3,
                Risk.NONE,
                List.of(),
                Optional.empty());
    }

    /** The tests made from the structure. */
    public int tests() {
        return localiser.locate(cases[0]).tests().size();
    }

    public Localisation locate(int ticket) {
        return localiser.locate(cases[ticket % cases.length]);
    }
}
