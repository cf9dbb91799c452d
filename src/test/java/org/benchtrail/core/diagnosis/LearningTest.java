package org.benchtrail.core.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class LearningTest {
    private static final Instant NOW = Instant.parse("2026-06-01T00:00:00Z");
    private static final LearningSettings UNCAPPED = new LearningSettings(20, 10, 1, 1, 1, 365);
    private static final CauseCategory CATEGORY = Invented.category(
            240,
            List.of(Invented.answer("f", 0.2, 1), Invented.answer("g", 0.1, 1)),
            List.of(
                    Invented.cause("a", 1, Invented.repair(5, 0.9), Invented.yes("f", 0.8)),
                    Invented.cause("b", 3, Invented.repair(5, 0.9))));

    private static ClosedCase closed(int id, String technician, String cause, double days) {
        return closed(id, technician, null, "chief", cause, days, ClosedCase.Confirmation.MEASURED, List.of());
    }

    private static ClosedCase closed(
            int id,
            String technician,
            @Nullable String site,
            @Nullable String acceptedBy,
            String cause,
            double days,
            ClosedCase.Confirmation confirmation,
            List<ClosedCase.CaseFinding> observations) {
        Instant at = NOW.minus(Duration.ofSeconds(Math.round(86_400 * days)));
        String name = String.format(java.util.Locale.ROOT, "%06d", id);
        return new ClosedCase(name, technician, site, acceptedBy, true, cause, confirmation, at, observations);
    }

    private static ClosedCase saw(int id, String cause, String value, boolean intake, boolean before) {
        return closed(
                id,
                "t" + id,
                null,
                "chief",
                cause,
                0,
                ClosedCase.Confirmation.MEASURED,
                List.of(new ClosedCase.CaseFinding("f", value, intake, before)));
    }

    private static List<ClosedCase> many(int n, String technician, String cause, int from) {
        List<ClosedCase> all = new ArrayList<>();
        for (int k = 0; k < n; k++) {
            all.add(closed(from + k, technician, cause, 0));
        }
        return all;
    }

    private static double share(Learned l, String cause) {
        Model m = new Model(l.category(), ModelSettings.STANDARD.withUnlisted(l.unlisted()));
        return m.prior(m.index(cause)) / (1 - l.unlisted());
    }

    private static Learned learn(List<ClosedCase> cases, LearningSettings settings) {
        return Learning.learn(CATEGORY, cases, NOW, settings);
    }

    @Test
    void shareCap_publishedFigures() {
        String source = "worked with the design's prototype: share cap";
        Published.check(source, 12.5, ShareCap.level(new double[] {1000, 10, 10, 10}, 20, 0.2), 1e-12);
        double[] e = ShareCap.effective(new double[] {1000, 10, 10, 10}, 20, 0.2);
        Published.check(source, 0.2, e[0] / (20 + Arrays.stream(e).sum()), 1e-12);
        Published.check(source, 5, ShareCap.level(new double[] {50}, 20, 0.2), 1e-12);
        double[] six = {40, 40, 40, 40, 40, 40};
        Published.check(
                source, 240, Arrays.stream(ShareCap.effective(six, 20, 0.2)).sum(), 1e-12);
    }

    static java.util.stream.LongStream seeds() {
        return java.util.stream.LongStream.rangeClosed(1, 100);
    }

    /** The closed form is the limit of iterating from below, as the definition says. */
    @ParameterizedTest
    @MethodSource("seeds")
    void shareCap_isTheLeastFixedPoint(long seed) {
        Random r = new Random(seed);
        double[] raw = r.doubles(1 + r.nextInt(12)).map(x -> 200 * x * x * x).toArray();
        double share = 0.05 + 0.9 * r.nextDouble();
        double m = share * 20;
        double last = 0;
        while (m - last >= 1e-12 && m < 1e6) {
            last = m;
            m = share * 20;
            for (double x : raw) {
                m += share * Math.min(x, last);
            }
        }
        assertEquals(
                Math.min(m, Arrays.stream(raw).max().orElseThrow()),
                Math.min(
                        ShareCap.level(raw, 20, share), Arrays.stream(raw).max().orElseThrow()),
                1e-9);
        double[] e = ShareCap.effective(raw, 20, share);
        double most = Arrays.stream(e).max().orElseThrow();
        assertTrue(most <= share * (20 + Arrays.stream(e).sum()) + 1e-9);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void allCapsHoldAtOnce(long seed) {
        Random r = new Random(seed);
        List<ClosedCase> cases = new ArrayList<>();
        double[] raw = new double[60];
        for (int k = 0; k < raw.length; k++) {
            String site = r.nextInt(3) == 0 ? null : "s" + r.nextInt(4);
            raw[k] = r.nextDouble();
            cases.add(closed(
                    k,
                    "t" + r.nextInt(1 + r.nextInt(5)),
                    site,
                    "v" + r.nextInt(2),
                    "a",
                    0,
                    ClosedCase.Confirmation.MEASURED,
                    List.of()));
        }
        List<ShareCap.Cap> rules = List.of(
                new ShareCap.Cap(ClosedCase::technician, 0.2),
                new ShareCap.Cap(ClosedCase::site, 0.2),
                new ShareCap.Cap(ClosedCase::acceptedBy, 0.5));
        double[] w = ShareCap.weights(cases, raw, 20, rules);
        double all = 20 + Arrays.stream(w).sum();
        for (ShareCap.Cap rule : rules) {
            Map<String, Double> sums = new java.util.TreeMap<>();
            for (int k = 0; k < w.length; k++) {
                String owner = rule.owner().apply(cases.get(k));
                if (owner != null) {
                    sums.merge(owner, w[k], Double::sum);
                }
                assertTrue(w[k] <= raw[k]);
            }
            sums.values().forEach(x -> assertTrue(x <= rule.share() * all + 1e-9));
        }
    }

    /** Pseudo-counts 20 x (1/4, 3/4) and ten measured cases of a: (5 + 10) / 30. */
    @Test
    void priors_arePseudoCountsPlusCases() {
        Learned l = learn(many(10, "t", "a", 0), UNCAPPED);
        assertEquals(0.5, share(l, "a"), 1e-12);
        assertEquals(10, l.cases(), 1e-12);
        assertEquals(0.25, share(learn(List.of(), UNCAPPED), "a"), 1e-12);
    }

    @Test
    void halfLife_countsHalf() {
        assertEquals(0.5, learn(List.of(closed(1, "t", "a", 365)), UNCAPPED).cases(), 1e-12);
        assertEquals(0.25, learn(List.of(closed(1, "t", "a", 730)), UNCAPPED).cases(), 1e-12);
        assertEquals(1, learn(List.of(closed(1, "t", "a", -3)), UNCAPPED).cases(), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"MEASURED, 1", "REPAIRED, .8", "PRESUMED, 0"})
    void confirmation_weighs(ClosedCase.Confirmation how, double weight) {
        ClosedCase c = closed(1, "t", null, "chief", "a", 0, how, List.of());
        assertEquals(weight, learn(List.of(c), UNCAPPED).cases(), 1e-12);
    }

    @Test
    void ownAcceptance_noAcceptance_orNoVerification_teachNothing() {
        var how = ClosedCase.Confirmation.MEASURED;
        ClosedCase own = closed(1, "t", null, "t", "a", 0, how, List.of());
        ClosedCase open = closed(2, "t", null, null, "a", 0, how, List.of());
        ClosedCase unverified = new ClosedCase("3", "t", null, "chief", false, "a", how, NOW, List.of());
        assertEquals(0, learn(List.of(own, open, unverified), UNCAPPED).cases());
    }

    /** However many cases one technician has, the mix moves by no more than the share. */
    @Test
    void oneTechnician_movesNoPriorBeyondTheShare() {
        List<ClosedCase> others = new ArrayList<>();
        for (int u = 0; u < 5; u++) {
            others.addAll(many(10, "t" + u, u % 2 == 0 ? "a" : "b", 100 * u));
        }
        LearningSettings settings = new LearningSettings(20, 10, 0.2, 1, 1, 365);
        double before = share(learn(others, settings), "a");
        double last = 0;
        for (int n : new int[] {50, 500, 5000}) {
            List<ClosedCase> all = new ArrayList<>(others);
            all.addAll(many(n, "eager", "a", 10_000));
            double after = share(learn(all, settings), "a");
            assertTrue(Math.abs(after - before) <= 0.2 + 1e-9, "moved " + (after - before));
            assertTrue(last == 0 || Math.abs(after - last) < 1e-9, "more cases of a capped technician change nothing");
            last = after;
        }
    }

    /** Beta(1, 19): four cases out of the list and six in it give (1 + 4) / (20 + 10). */
    @Test
    void unlistedCases_raiseTheUnlistedPrior_withinItsBounds() {
        List<ClosedCase> cases = new ArrayList<>(many(4, "t", Model.UNLISTED, 0));
        cases.addAll(many(6, "t", "b", 10));
        assertEquals(5 / 30.0, learn(cases, UNCAPPED).unlisted(), 1e-12);
        assertEquals(0.05, learn(List.of(), UNCAPPED).unlisted(), 1e-12);
        assertEquals(0.30, learn(many(500, "t", Model.UNLISTED, 0), UNCAPPED).unlisted());
        assertEquals(0.01, learn(many(500, "t", "a", 0), UNCAPPED).unlisted());
    }

    private static double yes(Learned l, String cause) {
        Model m = new Model(l.category(), ModelSettings.STANDARD);
        return Belief.p(m, 0, m.index(cause), 1);
    }

    /** Ten at .8, and five answers no: 8 / 15. A cause that did not name the finding starts from its background. */
    @Test
    void tables_arePseudoCountsPlusAnswers() {
        List<ClosedCase> cases = new ArrayList<>();
        for (int k = 0; k < 5; k++) {
            cases.add(saw(k, "a", "no", false, true));
            cases.add(saw(100 + k, "b", "yes", false, true));
        }
        assertEquals(8 / 15.0, yes(learn(cases, UNCAPPED), "a"), 1e-12);
        assertEquals(7 / 15.0, yes(learn(cases, UNCAPPED), "b"), 1e-12);
    }

    @Test
    void answersAfterTheCauseWasSettled_teachNothing() {
        Learned l = learn(List.of(saw(1, "a", "no", true, false)), UNCAPPED);
        assertEquals(0.8, yes(l, "a"), 1e-12);
        assertEquals(1, l.cases());
    }

    @Test
    void background_learnsOnlyFromIntakeQuestions() {
        double asked = learn(List.of(saw(1, "b", "yes", false, true)), UNCAPPED)
                .category()
                .findings()
                .get(0)
                .background()
                .get("yes");
        double intake = learn(List.of(saw(1, "b", "yes", true, true)), UNCAPPED)
                .category()
                .findings()
                .get(0)
                .background()
                .get("yes");
        assertEquals(0.2, asked, 1e-12);
        assertEquals(3 / 11.0, intake, 1e-12);
    }

    @Test
    void orderOfTheCases_doesNotMatter() {
        List<ClosedCase> cases = new ArrayList<>();
        for (int k = 0; k < 40; k++) {
            cases.add(closed(k, "t" + k % 3, k % 4 == 0 ? "a" : "b", 13.7 * k));
        }
        Learned one = learn(cases, LearningSettings.STANDARD);
        Collections.shuffle(cases, new Random(5));
        assertEquals(one, learn(cases, LearningSettings.STANDARD));
    }

    @Test
    void bigShifts_waitForASupervisor() {
        Learned before = learn(List.of(), UNCAPPED);
        Learned small = learn(many(1, "t", "a", 0), UNCAPPED);
        Learned big = learn(many(10, "t", "a", 0), UNCAPPED);
        assertFalse(small.shiftsFrom(before).isEmpty());
        assertTrue(small.shiftsFrom(before).stream().noneMatch(Learned.Shift::needsApproval));
        assertTrue(big.shiftsFrom(before).stream().anyMatch(s -> s.cause().equals("a") && s.needsApproval()));
        List<ClosedCase> no = new ArrayList<>();
        for (int k = 0; k < 10; k++) {
            no.add(saw(k, "a", "no", false, true));
        }
        assertTrue(learn(no, UNCAPPED).shiftsFrom(before).stream()
                .anyMatch(s -> s.finding().equals("f") && s.value().equals("yes") && s.needsApproval()));
        assertEquals(List.of(), before.shiftsFrom(before));
    }

    @Test
    void noCaseThatCounts_leavesTheCategoryAsItIs() {
        assertEquals(Learned.practice(CATEGORY), learn(List.of(), LearningSettings.STANDARD));
        ClosedCase own = closed(1, "t", null, "t", "a", 0, ClosedCase.Confirmation.MEASURED, List.of());
        assertEquals(Learned.practice(CATEGORY), learn(List.of(own), LearningSettings.STANDARD));
    }

    /** Cause a is worth 20 x 1/4 = 5 cases, and 4 more were accepted; two of them answered f. */
    @Test
    void support_tellsTheCasesBehindEachFigure() {
        List<ClosedCase> cases = new ArrayList<>(many(2, "t", "a", 10));
        cases.add(saw(1, "a", "yes", true, true));
        cases.add(saw(2, "a", "no", true, true));
        Learned l = learn(cases, UNCAPPED);
        assertEquals(new Backing(5, 4), l.support().prior("a"));
        assertEquals(new Backing(10, 2), l.support().table("a", "f"));
        assertEquals(Backing.Origin.BOTH, l.support().table("a", "f").origin());
        assertEquals(0, l.support().table("a", "g").cases());
        assertEquals(0, l.support().background("f").cases(), "a touches f: its answers say nothing of the background");
        assertEquals(new Backing(15, 0), l.support().prior("b"));
        assertEquals(Backing.Origin.BOTH, l.priorOrigin("b"), "a share moves with the others");
        assertEquals(Backing.Origin.PRACTICE, Learned.practice(CATEGORY).priorOrigin("b"));
        assertEquals(new Backing(20, 4), l.support().prior(Model.UNLISTED));
    }

    /** 5 of 105 is less than one in twenty, 5 of 99 is more. */
    @ParameterizedTest
    @CsvSource({"5, 0, PRACTICE", "5, 94, BOTH", "5, 100, CASES", "0, 1, CASES"})
    void origin_namesPracticeUntilItIsNegligible(double practice, double cases, Backing.Origin origin) {
        assertEquals(origin, new Backing(practice, cases).origin());
    }

    @Test
    void support_sumsToTheCases() {
        List<ClosedCase> cases = new ArrayList<>();
        for (int k = 0; k < 40; k++) {
            cases.add(closed(k, "t" + k % 3, k % 4 == 0 ? "a" : "b", 13.7 * k));
        }
        Learned l = learn(cases, LearningSettings.STANDARD);
        assertEquals(
                l.cases(),
                l.support().prior("a").cases() + l.support().prior("b").cases(),
                1e-12);
    }

    @Test
    void label_saysWhereTheFiguresComeFrom() {
        assertEquals(
                "starter figures, not yet learned here",
                learn(many(19, "t", "a", 0), UNCAPPED).label());
        assertEquals(
                "learned from 20 accepted cases",
                learn(many(20, "t", "a", 0), UNCAPPED).label());
    }

    @Test
    void newCause_startsAtHalfTheMedianWeight() {
        assertEquals(1, Learning.newCauseWeight(CATEGORY));
        CauseCategory power = StarterJson.catalogue().category("power").orElseThrow();
        assertEquals((9 + 13) / 4.0, Learning.newCauseWeight(power));
    }

    @Test
    void casesOfUnknownCauses_areRefused_allAtOnce() {
        List<ClosedCase> cases = List.of(closed(1, "t", "x", 0), closed(2, "t", "a", 0), closed(3, "t", "y", 0));
        Invalid thrown = assertThrows(Invalid.class, () -> learn(cases, UNCAPPED));
        assertEquals(2, thrown.problems().size());
    }

    /** With many cases drawn from known figures, learning finds them: nothing in the way of it is biased. */
    @Test
    void manyCases_findTheFiguresTheyWereDrawnFrom() {
        Random r = new Random(11);
        List<ClosedCase> cases = new ArrayList<>();
        for (int k = 0; k < 6000; k++) {
            String cause = r.nextDouble() < 0.7 ? "a" : "b";
            boolean yes = r.nextDouble() < (cause.equals("a") ? 0.4 : 0.1);
            cases.add(saw(k, cause, yes ? "yes" : "no", false, true));
        }
        Learned l = learn(cases, UNCAPPED);
        assertEquals(0.7, share(l, "a"), 0.03);
        assertEquals(0.4, yes(l, "a"), 0.03);
        assertEquals(0.1, yes(l, "b"), 0.03);
    }
}
