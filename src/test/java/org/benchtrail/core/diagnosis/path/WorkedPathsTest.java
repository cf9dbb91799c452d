package org.benchtrail.core.diagnosis.path;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.benchtrail.core.Published;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Advice;
import org.benchtrail.core.diagnosis.BenchSituation;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.NextTest;
import org.benchtrail.core.diagnosis.PlanSettings;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.RepairOrder;
import org.benchtrail.core.diagnosis.Risk;
import org.junit.jupiter.api.Test;

/** Examples that were computed apart from this program, to 1e-9. */
class WorkedPathsTest {
    private static final String SOURCE = "worked apart with the design's prototype: paths";
    private static final double TO = 2e-9;

    private static void check(double expected, double got) {
        Published.check(SOURCE, expected, got, TO);
    }

    /** Eight segments with nothing listed, a test of 4 min behind each but the last. */
    private static final class Line {
        private double[] p;
        private final Set<String> made = new HashSet<>();

        Line(double... p) {
            this.p = p;
        }

        Advice advise() {
            List<Segment> segments = new ArrayList<>();
            List<Point> points = new ArrayList<>();
            for (int k = 1; k <= 8; k++) {
                segments.add(Rig.segment("s" + k, p[k - 1], 40, List.of()));
                if (k < 8) {
                    points.add(Rig.point("s" + k, 4));
                }
            }
            CategoryPaths paths = Rig.paths(1, segments, points.toArray(Point[]::new));
            ModelSettings none = ModelSettings.STANDARD.withUnlisted(0);
            PlanSettings plan = PlanSettings.STANDARD.withPrune(false);
            Localiser localiser = new Localiser(Rig.category(List.of(), List.of()), paths, none, plan);
            Localisation at = localiser.locate(Known.of(Evidence.NONE));
            BenchSituation all = new BenchSituation(Set.of(), Set.of(), Set.of(), Map.of(), made);
            return new NextTest(at.model(), plan).advise(at.ranking(), all);
        }

        /** A result that is right for certain. */
        void result(int point, boolean bad) {
            made.add("point:way.s" + point);
            double[] w = IntStream.rangeClosed(1, 8)
                    .mapToDouble(k -> p[k - 1] * (bad == (k <= point) ? (bad ? 0.95 : 0.96) : (bad ? 0.04 : 0.05)))
                    .toArray();
            p = w;
        }

        void expect(double u, String first, double... q) {
            Advice advice = advise();
            check(u, advice.planMinutes());
            Map<String, Double> by = new TreeMap<>();
            advice.actions().forEach(a -> by.put(a.id(), a.expectedMinutes()));
            for (int k = 1; k <= q.length; k++) {
                if (!Double.isNaN(q[k - 1])) {
                    check(q[k - 1], by.get("point:way.s" + k));
                }
            }
            Published.check(SOURCE, first, advice.recommended().orElseThrow().id());
        }
    }

    private static final double X = Double.NaN;

    @Test
    void equalSegments_areHalved() {
        double e = 0.125;
        Line line = new Line(e, e, e, e, e, e, e, e);
        line.expect(218, "point:way.s4", 189.29, 165.305, 150.925, 146.15, 150.98, 165.415, 189.455);
        line.result(4, false);
        line.expect(
                143.366336634,
                "point:way.s6",
                145.184158416,
                143.479702970,
                142.252970297,
                X,
                118.678811881,
                111.592871287,
                121.095445545);
        line.result(6, true);
        line.expect(
                115.859957911,
                "point:way.s5",
                116.071111536,
                113.159202219,
                111.124229960,
                X,
                101.080279319,
                X,
                117.149768510);
        line.result(5, false);
        line.expect(87.305961679, "point:way.s7", 91.008886362, 90.803089168, 90.688570097, X, X, X, 85.162762867);
        line.result(7, true);
        line.expect(79.717805330, "segment:s6", 83.435420689, 83.247640360, 83.154464343);
    }

    @Test
    void unequalSegments_areCutWhereMinutesAreLeast() {
        Line line = new Line(0.40, 0.20, 0.10, 0.10, 0.05, 0.05, 0.05, 0.05);
        line.expect(156.8, "point:way.s3", 136.384, 127.296, 123.504, 127.396, 130.224, 136.762, 147.09);
        line.result(3, true);
        check(87.155096012, q(line, 1));
        line.result(1, false);
        check(88.571932132, q(line, 2));
        line.result(2, true);
        Published.check(
                SOURCE, "segment:s2", line.advise().recommended().orElseThrow().id());
        double sum = IntStream.range(0, 8).mapToDouble(k -> line.p[k]).sum();
        check(0.886620261688, line.p[1] / sum);
    }

    private static double q(Line line, int point) {
        Action best = line.advise().recommended().orElseThrow();
        assertEquals("point:way.s" + point, best.id());
        return best.expectedMinutes();
    }

    @Test
    void medianOfTheBelief_isTaken() {
        new Line(0.05, 0.05, 0.05, 0.05, 0.30, 0.20, 0.20, 0.10)
                .expect(164, "point:way.s5", 154.028, 143.53, 136.816, 133.892, 124.964, 129.804, 148.916);
        new Line(0.25, 0.25, 0.10, 0.10, 0.10, 0.10, 0.05, 0.05)
                .expect(174.8, "point:way.s3", 151.018, 139.848, 132.196, 132.228, 139.944, 155.08, 165.156);
    }

    private static final CauseCategory DEAD = Rig.category(
            List.of(Rig.answer("tester", 0.06, 8)),
            List.of(
                    Rig.cause("A", 24, Rig.repair(12, 0.95), "tester", 0.06),
                    Rig.cause("B", 22, Rig.repair(35, 0.95), "tester", 0.95),
                    Rig.cause("C", 9, Rig.repair(100, 0.95), "tester", 0.06),
                    Rig.cause("D", 14, Rig.repair(40, 0.95))));

    private static Localiser dead() {
        SegmentAct substitute = new SegmentAct(PathAct.SUBSTITUTE, 20, Risk.LOW, "", List.of(), List.of(), Set.of());
        List<Segment> segments = List.of(
                Rig.segment("outlet", 2, 12, List.of()),
                Rig.segment("strip", 2, 7, List.of()),
                Rig.with(
                        Rig.segment("ups", 4, 40, List.of("D")),
                        new Presence(Presence.Start.ABSENT, "Is it fed by a UPS?", "", Set.of())),
                Rig.segment("cord", 2, 6, List.of("A")),
                Rig.segment("supply", 4, 35, List.of("B"), substitute),
                Rig.segment("board", 4, 100, List.of("C")));
        CategoryPaths plain = Rig.paths(0.35, segments, Rig.point("cord", 3));
        CategoryPaths paths = new CategoryPaths(
                "c",
                0.35,
                segments,
                Map.of("A", Map.of("cord", 0.6, "strip", 0.4)),
                Map.of(),
                plain.paths(),
                List.of(),
                List.of(),
                List.of());
        PlanSettings plan = PlanSettings.STANDARD.withPrune(false).withPlannedReliability(0.95);
        return new Localiser(DEAD, paths, ModelSettings.STANDARD, plan);
    }

    private static void row(Localisation at, double... expected) {
        double[] p = at.ranking().partProbabilities();
        assertEquals(expected.length, p.length);
        for (int k = 0; k < p.length; k++) {
            check(expected[k], p[k]);
        }
    }

    @Test
    void deadComputer_stepByStep() {
        Localiser dead = dead();
        Evidence e = Evidence.NONE;
        row(
                dead.locate(Known.of(e)),
                0.104727272727,
                0.157090909091,
                0.240000000000,
                0.098181818182,
                0.05,
                0.05,
                0.05,
                0.10,
                0.10,
                0.05);
        e = e.with(Rig.seen("point:way.cord", "good", 1));
        row(
                dead.locate(Known.of(e)),
                0.013541772648,
                0.020312658971,
                0.401077731834,
                0.164077253932,
                0.006465256038,
                0.006465256038,
                0.006465256038,
                0.167115721598,
                0.167115721598,
                0.047363371305);
        e = e.with(Rig.seen("tester", "yes", 2));
        Localisation tested = dead.locate(Known.of(e));
        row(
                tested,
                0.001922435033,
                0.002883652549,
                0.644028030823,
                0.023292952058,
                0.004926616265,
                0.003033873313,
                0.003033873313,
                0.200730749229,
                0.078420394319,
                0.037727423098);
        Map<String, Double> masses = new LinkedHashMap<>(tested.masses());
        check(0.844758780052, masses.get("supply"));
        check(0.101713346377, masses.get("board"));
        check(0.005917525862, masses.get("cord"));
        check(0.004956308346, masses.get("strip"));
        check(0.004926616265, masses.get("outlet"));
        decision(tested);
        e = e.with(Rig.seen("substitute:supply", "yes", 3));
        Localisation gone = dead.locate(Known.of(e));
        row(
                gone,
                0.000171203217,
                0.000425056264,
                0.733737865432,
                0.003433428616,
                0.000438741774,
                0.000270182796,
                0.000447199111,
                0.228691523377,
                0.011559325981,
                0.020825473432);
        check(29.825142771172, gone.advice().planMinutes());
    }

    private static void decision(Localisation at) {
        Advice advice = at.advice();
        Map<String, Double> by = new TreeMap<>();
        advice.actions().forEach(a -> by.put(a.id(), a.expectedMinutes()));
        check(98.389835114041, advice.planMinutes());
        check(98.389835114041, by.get("B"));
        check(92.532103508763, by.get("segment:supply"));
        check(84.749907545432, by.get("substitute:supply"));
        Published.check(
                SOURCE, "substitute:supply", advice.recommended().orElseThrow().id());
    }

    @Test
    void uninterruptibleSupply_thatIsThere_takesItsShare() {
        Localisation at = dead().locate(Known.of(Evidence.NONE).withEquipment(Map.of("ups", true)));
        row(
                at,
                0.083478260870,
                0.125217391304,
                0.191304347826,
                0.078260869565,
                0.121739130435,
                0.038888888889,
                0.038888888889,
                0.077777777778,
                0.038888888889,
                0.077777777778,
                0.077777777778,
                0.05);
    }

    @Test
    void rowsOfResiduals_areThoseOfTheirPlace() {
        Model m = dead().locate(Known.of(Evidence.NONE)).model();
        check(0.437, m.likelihood("tester", "yes", "else:outlet"));
        check(0.259, m.likelihood("tester", "yes", "else:strip"));
        check(0.259, m.likelihood("tester", "yes", "else:cord"));
        check(0.704, m.likelihood("tester", "yes", "else:supply"));
        check(0.259, m.likelihood("tester", "yes", "else:board"));
        check(0.458, m.likelihood("tester", "yes", Model.UNLISTED));
        check(0.467239234450, m.likelihood("point:way.cord", "bad", Model.UNLISTED));
        check(0.446717703349, m.likelihood("substitute:supply", "yes", Model.UNLISTED));
        check(0.10, m.likelihood("substitute:supply", "yes", "C"));
        check(0.10, m.likelihood("substitute:supply", "yes", "else:cord"));
        check(0.05, m.likelihood("substitute:supply", "yes", "else:strip"));
    }

    private static Advice held(double drive, double cable, double files, double port, double outside) {
        CauseCategory c = Rig.category(
                List.of(),
                List.of(
                        Rig.cause("drive", drive, Rig.repair(100, 0.95, "backup-done")),
                        Rig.cause("cable", cable, Rig.repair(15, 0.95)),
                        Rig.cause("files", files, Rig.repair(55, 0.95, "backup-done")),
                        Rig.cause("port", port, Rig.repair(45, 0.95))));
        Model m = new Model(c, ModelSettings.STANDARD.withUnlisted(outside));
        return new NextTest(m, PlanSettings.STANDARD).advise(Ranking.of(m, Evidence.NONE), BenchSituation.PLAIN);
    }

    @Test
    void heldRepair_isPreparedAndNotSkipped() {
        Advice a = held(0.90, 0.02, 0.03, 0.02, 0.03);
        check(162.415, a.planMinutes());
        Action first = a.recommended().orElseThrow();
        Published.check(SOURCE, "drive", first.id());
        Published.check(SOURCE, Action.Type.PREPARE, first.type());
        check(162.415, first.expectedMinutes());
        assertEquals(List.of("backup-done"), a.preparation().orElseThrow().needs());
        assertEquals(
                List.of("drive", "escalate"),
                a.actions().stream().map(Action::id).toList(),
                "the rest is too improbable");
        RepairOrder order = new RepairOrder(new double[] {130, 15, 85, 45}, new double[] {.95, .95, .95, .95}, 240);
        double[] p = {0.90, 0.02, 0.03, 0.02, 0.03};
        RepairOrder endless = new RepairOrder(new double[] {130, 15, 85, 45}, new double[] {.95, .95, .95, .95}, 1e9);
        Published.check(
                SOURCE, List.of(0, 1, 3, 2), endless.plan(p, new boolean[4]).repairs());
        check(172.77, 15 + order.planMinutes(new double[] {0.90, 0.001, 0.03, 0.02, 0.03}, done(1)));
        check(200.1, 45 + order.planMinutes(new double[] {0.90, 0.02, 0.03, 0.001, 0.03}, done(3)));
    }

    private static boolean[] done(int i) {
        boolean[] done = new boolean[4];
        done[i] = true;
        return done;
    }

    @Test
    void cheapRepair_thatIsLikelyEnough_comesFirst() {
        Advice a = held(0.62, 0.20, 0.03, 0.10, 0.05);
        check(160.485, a.planMinutes());
        Published.check(SOURCE, "cable", a.recommended().orElseThrow().id());
    }

    private static Localisation cable(boolean grouped) {
        List<Segment> segments = List.of(
                Rig.segment("drive", 40, 60, List.of()),
                Rig.segment("cable", 30, 15, List.of(), Rig.act(PathAct.RESEAT, 2), Rig.act(PathAct.SUBSTITUTE, 5)),
                Rig.segment("port", 25, 45, List.of()));
        Evidence reseated = Evidence.NONE.with(Rig.seen("reseat:cable", "no", 1));
        Localiser localiser = new Localiser(
                Rig.category(List.of(), List.of()),
                Rig.paths(0.95, segments),
                ModelSettings.STANDARD,
                PlanSettings.STANDARD);
        Evidence both = reseated.with(Rig.seen("substitute:cable", "yes", 2));
        return localiser.locate(Known.of(grouped ? both : reseated));
    }

    @Test
    void twoActsOnOneSegment_areWeighedAsAGroup() {
        double[] p = cable(true).ranking().partProbabilities();
        check(0.568229253517, p[1]);
        check(0.144497708982, p[2]);
        check(0.231196334371, p[0]);
        check(0.056076703130, p[3]);
    }

    @Test
    void rowsOfActs_areThoseOfTheRules() {
        Model m = cable(false).model();
        check(0.30, m.likelihood("reseat:cable", "yes", "else:cable"));
        check(0.08, m.likelihood("reseat:cable", "yes", "else:drive"));
        check(0.08, m.likelihood("reseat:cable", "yes", "else:port"));
        check(0.324736842105, m.likelihood("reseat:cable", "yes", Model.UNLISTED));
        check(0.434210526316, m.likelihood("substitute:cable", "yes", Model.UNLISTED));
    }
}
