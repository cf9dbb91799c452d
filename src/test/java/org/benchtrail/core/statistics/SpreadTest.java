package org.benchtrail.core.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.benchtrail.core.Published;
import org.benchtrail.core.statistics.KaplanMeier.Observation;
import org.junit.jupiter.api.Test;

/** Charts where groups differ by more than chance, and quantiles of what lasts. */
class SpreadTest {
    private static final String LANEY = "Laney (2002), formula from memory, on the data of NIST 6.3.3.2, recomputed";
    private static final String RANK = "nearest rank: item ceil(q n) of the sorted, by hand";

    private static List<Proportion> ofFifty(int... hits) {
        return Arrays.stream(hits).mapToObj(h -> new Proportion(h, 50)).toList();
    }

    @Test
    void laney_handbookData() {
        SpreadChart chart = SpreadChart.of(ofFifty(
                12, 15, 8, 10, 4, 7, 16, 9, 14, 10, 5, 6, 17, 12, 22, 8, 10, 5, 13, 11, 20, 18, 24, 15, 9, 12, 7, 13, 9,
                6));
        Published.check(LANEY, 2.846977, chart.dispersion().phi(), 5e-7);
        Published.check(LANEY, 1.516398, chart.dispersion().bound(), 5e-7);
        Published.check(LANEY, 1.660867, chart.sigmaZ(), 5e-7);
        Published.check(LANEY, 1.873458, chart.sigmaZ() * 1.128, 5e-7);
        Published.check(LANEY, 0.528472, chart.limits().get(0).upper(), 5e-7);
        Published.check(LANEY, 0.0, chart.limits().get(0).lower(), 0);
        double reach = chart.limits().get(0).upper() - chart.plain().meanShare();
        Published.check(LANEY, -0.065805, chart.plain().meanShare() - reach, 5e-7);
        Published.check(LANEY, List.of(), chart.outside());
        Published.check(LANEY, List.of(14, 22), chart.plain().outside());
        assertTrue(chart.dispersion().isMoreThanChance());
    }

    @Test
    void bound_isTwoDeviationsOfAMeanOfSquares_andMetIsNotOver() {
        assertEquals(
                1 + 2 * Math.sqrt(2 / 8.0),
                Dispersion.of(0, 0, 0, 0, 0, 0, 0, 0).bound(),
                1e-12);
        double[] twice = {Math.sqrt(2), Math.sqrt(2), Math.sqrt(2), Math.sqrt(2), Math.sqrt(2), Math.sqrt(2), 0, 0};
        assertFalse(Dispersion.of(twice).isMoreThanChance());
        assertFalse(new Dispersion(2, 2).isMoreThanChance());
        assertTrue(new Dispersion(2.000001, 2).isMoreThanChance());
        assertEquals(1, new Dispersion(2, 2).factor());
        assertEquals(1.5, new Dispersion(2.25, 2).factor());
    }

    /** Of units that differ by themselves, one far out by chance alone is none; where they do not, it is. */
    @Test
    void funnel_ofUnitsThatDiffer_isWider() {
        List<Proportion> apart = new ArrayList<>();
        IntStream.range(0, 20).forEach(i -> apart.add(new Proportion(i % 2 == 0 ? 30 : 70, 100)));
        Funnel wide = Funnel.of(apart);
        assertTrue(wide.dispersion().isMoreThanChance());
        assertTrue(wide.units().stream().noneMatch(Funnel.Unit::out));
        assertTrue(wide.drawn(100, 0.999) > Funnel.limit(0.5, 100, 0.999));
        List<Proportion> alike = new ArrayList<>(Collections.nCopies(20, new Proportion(50, 100)));
        alike.add(new Proportion(70, 100));
        Funnel narrow = Funnel.of(alike);
        assertFalse(narrow.dispersion().isMoreThanChance());
        assertTrue(narrow.units().get(20).out());
        assertEquals(
                0,
                Funnel.of(List.of(new Proportion(1, 20), new Proportion(0, 20))).drawn(20, 0.001));
    }

    /** With nothing open, the quantile of survival is that of nearest rank, for every size: rounding of the product loses none. */
    @Test
    void quantiles_withNothingOpen_areThoseOfNearestRank() {
        for (int n = 1; n <= 300; n++) {
            List<Observation> all = new ArrayList<>();
            for (int i = 1; i <= n; i++) {
                all.add(Observation.failed(i));
            }
            KaplanMeier curve = KaplanMeier.of(all);
            Published.check(RANK, (n + 1) / 2, curve.median().orElseThrow(), 0);
            Published.check(RANK, (9 * n + 9) / 10, curve.whenLeft(0.1).orElseThrow(), 0);
        }
    }
}
