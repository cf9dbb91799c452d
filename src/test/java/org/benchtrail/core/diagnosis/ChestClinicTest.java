package org.benchtrail.core.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The chest clinic: S. L. Lauritzen, D. J. Spiegelhalter, "Local computations with probabilities on graphical structures",
 * JRSS-B 50(2), 1988. Inputs as published; the printed posteriors were recomputed from them by enumeration.
 *
 * <p>The eight combinations of tuberculosis, lung cancer and bronchitis are the causes; asia, smoke, xray and dyspnoea are
 * independent given them.
 */
class ChestClinicTest {
    private static final String SOURCE = "Lauritzen & Spiegelhalter 1988, chest clinic";
    private static final double ASIA = 0.01;
    private static final double SMOKE = 0.5;
    private static final List<String> FINDINGS = List.of("asia", "smoke", "xray", "dysp");
    private static final ModelSettings PLAIN =
            ModelSettings.STANDARD.withoutClamp().withUnlisted(0);
    private static final Model MODEL = new Model(clinic(), PLAIN);

    private static double tub(boolean asia) {
        return asia ? 0.05 : 0.01;
    }

    private static double lung(boolean smoke) {
        return smoke ? 0.10 : 0.01;
    }

    private static double bronc(boolean smoke) {
        return smoke ? 0.60 : 0.30;
    }

    private static double xray(boolean either) {
        return either ? 0.98 : 0.05;
    }

    private static double dysp(boolean either, boolean bronc) {
        if (either) {
            return bronc ? 0.9 : 0.7;
        }
        return bronc ? 0.8 : 0.1;
    }

    private static double is(double p, boolean yes) {
        return yes ? p : 1 - p;
    }

    /** The published network, summed over everything that is not fixed; null is unknown. */
    private static double joint(Boolean[] fixed) {
        double sum = 0;
        for (int bits = 0; bits < 128; bits++) {
            boolean[] x = new boolean[7];
            boolean fits = true;
            for (int k = 0; k < 7; k++) {
                x[k] = ((bits >> k) & 1) == 1;
                fits &= fixed[k] == null || fixed[k] == x[k];
            }
            boolean either = x[2] || x[3];
            sum += fits
                    ? is(ASIA, x[0])
                            * is(SMOKE, x[1])
                            * is(tub(x[0]), x[2])
                            * is(lung(x[1]), x[3])
                            * is(bronc(x[1]), x[4])
                            * is(xray(either), x[5])
                            * is(dysp(either, x[4]), x[6])
                    : 0;
        }
        return sum;
    }

    private static CauseCategory clinic() {
        List<Finding> findings =
                FINDINGS.stream().map(f -> Invented.answer(f, 0.5, 1)).toList();
        List<Cause> causes = new ArrayList<>();
        for (int k = 0; k < 8; k++) {
            causes.add(combination((k & 4) > 0, (k & 2) > 0, (k & 1) > 0));
        }
        return Invented.category(240, findings, causes);
    }

    private static Cause combination(boolean t, boolean l, boolean b) {
        double pTub = ASIA * tub(true) + (1 - ASIA) * tub(false);
        double asia = ASIA * is(tub(true), t) / is(pTub, t);
        double smoking = SMOKE * is(lung(true), l) * is(bronc(true), b);
        double not = (1 - SMOKE) * is(lung(false), l) * is(bronc(false), b);
        return Invented.cause(
                (t ? "1" : "0") + (l ? "1" : "0") + (b ? "1" : "0"),
                is(pTub, t) * (smoking + not),
                Invented.repair(10, 0.9),
                Invented.yes("asia", asia),
                Invented.yes("smoke", smoking / (smoking + not)),
                Invented.yes("xray", xray(t || l)),
                Invented.yes("dysp", dysp(t || l, b)));
    }

    /** Certain reports: reliability 1 is beyond what a report may claim, so the tables are asked directly. */
    private static double[] posterior(Map<String, Boolean> evidence) {
        double[] score = MODEL.logPriors();
        evidence.forEach((f, yes) -> {
            int index = MODEL.findingIndex(f);
            double[] certain = LikelihoodTable.channel(yes ? 1 : 0, 1, 2);
            new Observed(index, List.of(), certain, 1).addTo(score, MODEL.table(index));
        });
        return Ranking.normalised(score);
    }

    private static double sum(double[] p, int position) {
        double sum = 0;
        for (int i = 0; i < MODEL.size(); i++) {
            sum += MODEL.id(i).charAt(position) == '1' ? p[i] : 0;
        }
        return sum;
    }

    @Test
    void all81EvidenceSets_agreeWithTheNetworkTo1e12() {
        for (int code = 0; code < 81; code++) {
            Boolean[] fixed = new Boolean[7];
            Map<String, Boolean> evidence = new LinkedHashMap<>();
            int[] node = {0, 1, 5, 6};
            int rest = code;
            for (int f = 0; f < 4; f++) {
                if (rest % 3 != 2) {
                    fixed[node[f]] = rest % 3 == 1;
                    evidence.put(FINDINGS.get(f), rest % 3 == 1);
                }
                rest /= 3;
            }
            double[] p = posterior(evidence);
            double all = joint(fixed);
            for (int i = 0; i < 8; i++) {
                Boolean[] both = fixed.clone();
                for (int d = 0; d < 3; d++) {
                    both[2 + d] = MODEL.id(i).charAt(d) == '1';
                }
                Published.check(SOURCE, joint(both) / all, p[i], 1e-12);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({
        "'', .010400, .055000, .450000",
        "dysp=y, .018845, .102759, .833967",
        "asia=y dysp=y, .087751, .099525, .811402",
        "asia=y smoke=y, .050000, .100000, .600000",
        "asia=y smoke=n xray=y, .465183, .093037, .300000",
        "asia=y smoke=y xray=y dysp=y, .289581, .579163, .700920",
        "xray=y dysp=y, .113933, .621253, .681869",
        "xray=n dysp=y, .000450, .002453, .863392",
        "smoke=y dysp=y, .015427, .148334, .880164"
    })
    void printedPosteriors(String evidence, double tub, double lung, double bronc) {
        Map<String, Boolean> known = new LinkedHashMap<>();
        for (String e : evidence.isEmpty() ? new String[0] : evidence.split(" ")) {
            known.put(e.substring(0, e.indexOf('=')), e.endsWith("y"));
        }
        double[] p = posterior(known);
        Published.check(SOURCE, tub, sum(p, 0), 5e-7);
        Published.check(SOURCE, lung, sum(p, 1), 5e-7);
        Published.check(SOURCE, bronc, sum(p, 2), 5e-7);
    }

    @Test
    void theRankingItself_withTheMostReliableReports_agreesWithTheNetworkBehindItsChannel() {
        Report seen = Invented.report("xray", "yes", Report.MOST_RELIABLE, 1);
        Ranking ranking = Ranking.of(MODEL, Evidence.NONE.with(seen));
        double no = joint(new Boolean[] {null, null, true, null, null, false, null});
        double yes = joint(new Boolean[] {null, null, true, null, null, true, null});
        double allNo = joint(new Boolean[] {null, null, null, null, null, false, null});
        double allYes = joint(new Boolean[] {null, null, null, null, null, true, null});
        double expected = (0.99 * yes + 0.01 * no) / (0.99 * allYes + 0.01 * allNo);
        double actual = 0;
        for (String id : List.of("100", "101", "110", "111")) {
            actual += ranking.probability(id);
        }
        Published.check(SOURCE, expected, actual, 1e-12);
        assertEquals(0, ranking.probability(Model.UNLISTED));
    }
}
