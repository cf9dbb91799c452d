package org.benchtrail.core.diagnosis.path;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.benchtrail.BesideOthers;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Advice;
import org.benchtrail.core.diagnosis.BenchSituation;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.NextTest;
import org.benchtrail.core.diagnosis.PlanSettings;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Repair;
import org.benchtrail.core.diagnosis.RepairOrder;
import org.benchtrail.core.diagnosis.Report;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Laws of localisation on random structures. A failing seed is in the test's name. */
@BesideOthers
class PathPropertyTest {
    static LongStream seeds() {
        return LongStream.rangeClosed(1, 60);
    }

    private static RandomPaths random(long seed) {
        return RandomPaths.of(seed, 0.35, seed % 2 == 0);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void withoutResidualAndGenericTests_allIsAsInTheCatalogue(long seed) {
        RandomPaths w = RandomPaths.of(seed, 0, false);
        Evidence e = w.evidence(seed, false);
        Ranking flat = Ranking.of(new Model(w.category(), ModelSettings.STANDARD), e);
        Ranking placed = w.localiser().locate(Known.of(e)).ranking();
        for (Ranking.Ranked r : flat.all()) {
            assertEquals(r.probability(), placed.probability(r.cause()), 0.0, r.cause());
        }
        PlanSettings plan = PlanSettings.STANDARD;
        Advice a = new NextTest(flat.model(), plan).advise(flat, BenchSituation.PLAIN);
        Advice b = new NextTest(placed.model(), plan).advise(placed, BenchSituation.PLAIN);
        assertEquals(a.planMinutes(), b.planMinutes(), 0.0);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void beliefs_sumToOne_overCausesAndOverPlaces(long seed) {
        RandomPaths w = random(seed);
        Localisation at = w.localiser().locate(Known.of(w.evidence(seed, true)));
        double causes = at.ranking().all().stream()
                .mapToDouble(Ranking.Ranked::probability)
                .sum();
        double places = at.masses().values().stream().mapToDouble(x -> x).sum();
        assertEquals(1, causes, 1e-12);
        assertEquals(1, places + at.outside(), 1e-12);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void absentSegment_isOutOfEverything_andComesBackUnchanged(long seed) {
        RandomPaths w = random(seed);
        Localiser l = w.localiser();
        Evidence e = w.evidence(seed, true);
        Localisation with = l.locate(Known.of(e));
        Localisation without = l.locate(Known.of(e).withEquipment(Map.of(RandomPaths.OPTIONAL, false)));
        assertFalse(without.masses().containsKey(RandomPaths.OPTIONAL));
        assertTrue(without.tests().stream().noneMatch(t -> t.id().contains(RandomPaths.OPTIONAL)));
        assertTrue(without.model().category().causes().stream()
                .noneMatch(c -> c.id().equals("else:" + RandomPaths.OPTIONAL)));
        assertTrue(without.advice().actions().stream().noneMatch(a -> a.id().contains(RandomPaths.OPTIONAL)));
        Localisation again = l.locate(Known.of(e).withEquipment(Map.of(RandomPaths.OPTIONAL, true)));
        assertArrayEquals(with.ranking().partProbabilities(), again.ranking().partProbabilities(), 0.0);
        assertEquals(with.advice().actions(), again.advice().actions());
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void orderOfSegmentsAndPaths_changesNoResult(long seed) {
        RandomPaths w = random(seed);
        CategoryPaths p = w.paths();
        List<Segment> segments = new ArrayList<>(p.segments());
        Collections.shuffle(segments, new Random(seed));
        List<FaultPath> paths = new ArrayList<>(p.paths());
        Collections.reverse(paths);
        CategoryPaths other = new CategoryPaths(
                p.category(),
                p.residual(),
                segments,
                p.spread(),
                p.requires(),
                paths,
                p.whole(),
                p.changes(),
                p.stands());
        Known known = Known.of(w.evidence(seed, true));
        Localisation a = w.localiser().locate(known);
        Localisation b = new RandomPaths(w.category(), other).localiser().locate(known);
        a.masses().forEach((s, mass) -> assertEquals(mass, b.masses().get(s), 1e-12));
        assertEquals(
                a.advice().recommended().map(Action::id),
                b.advice().recommended().map(Action::id));
        assertEquals(a.advice().planMinutes(), b.advice().planMinutes(), 1e-9);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void causeInSeveralPlaces_hasThePriorOfTheCause(long seed) {
        RandomPaths spread = RandomPaths.of(seed, 0.35, true);
        RandomPaths plain = RandomPaths.of(seed, 0.35, false);
        Ranking a = spread.localiser().locate(Known.of(Evidence.NONE)).ranking();
        Ranking b = plain.localiser().locate(Known.of(Evidence.NONE)).ranking();
        assertEquals(b.probability("c0"), a.probability("c0"), 1e-12);
        assertEquals(b.decibans("c0"), a.decibans("c0"), 1e-9);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void badPoint_neverRaisesWhatLiesBehindIt(long seed) {
        RandomPaths w = random(seed);
        Evidence e = w.evidence(seed, true);
        Localisation before = w.localiser().locate(Known.of(e));
        Localisation after = w.localiser().locate(Known.of(e.with(Rig.seen("point:a.s2", "bad", 99))));
        for (String down : List.of("s3", "s4", "s5")) {
            for (String up : List.of("s1", "s2")) {
                double was = before.ranking().probability("else:" + down)
                        / before.ranking().probability("else:" + up);
                double is = after.ranking().probability("else:" + down)
                        / after.ranking().probability("else:" + up);
                assertTrue(is <= was * (1 + 1e-12), down + " against " + up);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void oppositeReportsOnOnePoint_cancel(long seed) {
        RandomPaths w = random(seed);
        Evidence e = w.evidence(seed, false);
        Evidence both = e.with(Rig.seen("point:b.s6", "bad", 98)).with(Rig.seen("point:b.s6", "good", 99));
        assertArrayEquals(
                w.localiser().locate(Known.of(e)).ranking().partProbabilities(),
                w.localiser().locate(Known.of(both)).ranking().partProbabilities(),
                1e-12);
    }

    private static Set<String> offered(Localisation at) {
        return at.advice().actions().stream()
                .filter(a -> a.type() == Action.Type.TEST)
                .map(Action::id)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void listedTest_andItsGenericTwin_areNeverBothOnOffer(long seed) {
        RandomPaths w = random(seed);
        Localisation at = w.localiser().locate(Known.of(w.evidence(seed, true)));
        Set<String> offered = offered(at);
        assertTrue(at.test("look:s1").isEmpty(), "the listed question is this test");
        boolean compound = offered.contains("f1");
        assertFalse(compound && (offered.contains("substitute:s2") || offered.contains("substitute:s3")));
        Localisation answered = w.localiser().locate(Known.of(Evidence.NONE.with(Rig.seen("f1", "no", 1))));
        assertTrue(offered(answered).contains("substitute:s2"), "once it is answered, each can be told apart");
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void heldRepair_isPrepared_andNothingBelowTheFloorIsAdvised(long seed) {
        RandomPaths w = random(seed);
        Localisation at = w.localiser().locate(Known.of(w.evidence(seed, true)));
        double[] p = at.ranking().partProbabilities();
        double most = at.ranking().all().get(0).probability();
        for (Action a : at.advice().actions()) {
            if (a.type() == Action.Type.REPAIR || a.type() == Action.Type.PREPARE) {
                double covered = covered(at, a.id(), p);
                boolean small = covered >= 0.02 && a.minutes() <= 5;
                assertTrue(covered >= Math.max(0.05, most / 10) || small, a.id() + " " + covered);
            }
            if (a.type() == Action.Type.REPAIR && a.id().startsWith("c")) {
                Repair repair = at.model().category().causes().stream()
                        .filter(c -> c.id().equals(a.id()))
                        .findFirst()
                        .orElseThrow()
                        .repair();
                assertTrue(repair.needs().isEmpty() || a.minutes() <= 5, "it waits for something");
            }
        }
        at.advice()
                .recommended()
                .filter(a -> a.type() == Action.Type.PREPARE)
                .ifPresent(a -> assertEquals(
                        a.id(), at.advice().preparation().orElseThrow().repair()));
    }

    private static double covered(Localisation at, String repair, double[] p) {
        if (!repair.startsWith("segment:")) {
            return at.ranking().probability(repair);
        }
        double sum = 0;
        for (int k = 0; k < p.length - 1; k++) {
            sum += at.places().get(k).segment().equals(repair.substring("segment:".length())) ? p[k] : 0;
        }
        return sum;
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void barredState_neverAddsAnOffer(long seed) {
        RandomPaths w = random(seed);
        Known known = Known.of(w.evidence(seed, true));
        Set<String> free = offered(w.localiser().locate(known));
        Known failing = new Known(
                known.evidence(),
                Map.of(),
                Set.of(),
                Set.of(),
                Set.of(Bar.UNSAVED_DATA),
                true,
                false,
                BenchSituation.PLAIN,
                Cues.NONE);
        Set<String> barred = offered(w.localiser().locate(failing));
        assertTrue(free.containsAll(barred));
        assertTrue(barred.stream().noneMatch(t -> t.equals("substitute:s4") || t.equals("substitute:s6")));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void freeTest_neverHurts_andIsWorthWhatSortingAfreshSays(long seed) {
        RandomPaths w = random(seed);
        Localisation at = w.localiser().locate(Known.of(w.evidence(seed, true)).withOpened(true));
        Model m = at.model();
        for (Action a : at.advice().actions()) {
            if (a.type() != Action.Type.TEST) {
                continue;
            }
            assertTrue(a.expectedMinutes() <= a.minutes() + at.advice().planMinutes() + 1e-9, a.id());
            assertEquals(afresh(at, a.id()) + a.minutes(), a.expectedMinutes(), 1e-9, a.id());
        }
        assertTrue(m.listed() <= 9);
    }

    /** Where most causes are too unlikely to be looked at, and some tests touch few places and some many. */
    @Test
    void everyTestOfALargeProblem_isWorthWhatSortingAfreshSays() {
        LargePaths large = new LargePaths(3);
        for (int k = 0; k < 3; k++) {
            Localisation at = large.locate(k);
            List<Action> tests = at.advice().actions().stream()
                    .filter(a -> a.type() == Action.Type.TEST)
                    .toList();
            assertTrue(tests.size() > 700, "tests on offer: " + tests.size());
            for (Action a : tests) {
                double afresh = afresh(at, a.id()) + a.minutes();
                assertEquals(afresh, a.expectedMinutes(), 1e-12 * afresh, a.id());
            }
        }
    }

    /** Every outcome sorted anew, causes in several places added up, cured ones at five minutes. */
    private static double afresh(Localisation at, String test) {
        Model m = at.model();
        List<double[]> after = m.after(test, at.ranking().partProbabilities(), 1);
        List<String> ids = new ArrayList<>();
        m.category().causes().forEach(c -> ids.add(c.id()));
        double sum = 0;
        for (int v = 0; v < after.size(); v++) {
            double[] weights = new double[ids.size() + 1];
            weights[ids.size()] = after.get(v)[at.places().size()];
            for (int k = 0; k < at.places().size(); k++) {
                weights[ids.indexOf(at.places().get(k).cause())] += after.get(v)[k];
            }
            Set<String> cured = new TreeSet<>(curedBefore(at));
            if (v == 1) {
                cured.addAll(cured(at, test));
            }
            double[] minutes = new double[ids.size()];
            double[] fix = new double[ids.size()];
            boolean[] done = new boolean[ids.size()];
            for (int i = 0; i < ids.size(); i++) {
                Repair r = m.category().causes().get(i).repair();
                double whole = r.minutes() + r.verifyMinutes() + (r.needs().isEmpty() ? 0 : 30);
                minutes[i] = cured.contains(ids.get(i)) ? Math.min(5, whole) : whole;
                fix[i] = r.fixProbability();
                done[i] = isDone(at, ids.get(i));
            }
            sum += new RepairOrder(minutes, fix, 240).planMinutes(weights, done);
        }
        return sum;
    }

    private static boolean isDone(Localisation at, String cause) {
        return at.ranking().evidence().failedRepairs().stream()
                .anyMatch(f -> f.repair().equals(cause) || f.repair().equals(cause.replace("else:", "segment:")));
    }

    private static Set<String> curedBefore(Localisation at) {
        Map<String, Report> latest = Equipment.latest(at.ranking().evidence());
        Set<String> cured = new TreeSet<>();
        latest.forEach((test, answer) -> {
            if (answer.value().equals("yes")) {
                cured.addAll(cured(at, test));
            }
        });
        return cured;
    }

    private static Set<String> cured(Localisation at, String test) {
        List<String> in = test.equals("f1")
                ? List.of("s2", "s3")
                : test.startsWith("substitute:") ? List.of(test.substring("substitute:".length())) : List.of();
        return at.places().stream()
                .filter(p -> in.contains(p.segment()))
                .map(PlacedPart::cause)
                .collect(Collectors.toSet());
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void everyListedCause_hasOneHome(long seed) {
        RandomPaths w = random(seed);
        Map<String, Integer> homes = new HashMap<>();
        w.paths().segments().forEach(s -> s.causes().forEach(c -> homes.merge(c, 1, Integer::sum)));
        assertEquals(9, homes.size());
        assertTrue(PathRules.problems(List.of(w.paths()), List.of(w.category())).isEmpty());
        List<Segment> fewer = new ArrayList<>(w.paths().segments());
        Segment first =
                fewer.stream().filter(s -> !s.causes().isEmpty()).findFirst().orElseThrow();
        fewer.set(
                fewer.indexOf(first),
                new Segment(
                        first.id(),
                        first.name(),
                        first.present(),
                        first.share(),
                        List.of(),
                        Set.of(),
                        Set.of(),
                        false,
                        first.acts(),
                        first.repair()));
        CategoryPaths p = w.paths();
        CategoryPaths homeless =
                new CategoryPaths("c", 0.35, fewer, Map.of(), Map.of(), p.paths(), p.whole(), p.changes(), p.stands());
        assertEquals(
                first.causes().size(),
                PathRules.problems(List.of(homeless), List.of(w.category())).size());
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void copyThatIsImpossible_leavesSomethingToDo(long seed) {
        RandomPaths w = random(seed);
        BenchSituation impossible = new BenchSituation(Set.of("copy-impossible"), Set.of(), Set.of(), Map.of());
        Localisation at = w.localiser().locate(Known.of(w.evidence(seed, true)).with(impossible));
        Action first = at.advice().recommended().orElseThrow();
        assertTrue(first.type() != Action.Type.PREPARE, "what can be undone does not wait for a copy");
    }
}
