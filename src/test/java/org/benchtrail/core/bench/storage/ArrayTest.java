package org.benchtrail.core.bench.storage;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.storage.Array.Input;
import org.benchtrail.core.bench.storage.Array.RaidLevel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ArrayTest {
    private static final String DDF = "SNIA DDF capacity and tolerance";
    private static final String PAPER = "Patterson, Gibson, Katz 1988";
    private static final String URE = "1 - (1 - p)^bits, recomputed table 4.5";

    private static Result of(RaidLevel level, List<Double> members) {
        return Array.calculate(new Input(level, members, 150, 100, 1e-15, 1_200_000, 0));
    }

    private static List<Double> members(int n, double tb) {
        return Collections.nCopies(n, tb);
    }

    @ParameterizedTest
    @CsvSource({"RAID0, 16, 0, 0", "RAID1, 4, 3, 3", "RAID5, 12, 1, 1", "RAID6, 8, 2, 2", "RAID10, 8, 1, 2"})
    void fourDrivesOfFourTerabytes(RaidLevel level, double usable, int sure, int best) {
        Result result = of(level, members(4, 4));
        check(DDF, usable, FigureOf.value(result, "Usable capacity"), 0);
        check(DDF, sure, FigureOf.value(result, "Failures survived for certain"), 0);
        check(DDF, best, FigureOf.value(result, "Failures survived at best"), 0);
    }

    @Test
    void smallestMember_counts() {
        check(DDF, 6, FigureOf.value(of(RaidLevel.RAID5, List.of(4.0, 4.0, 3.0)), "Usable capacity"), 0);
    }

    @Test
    void mirroredPairs_secondFailure() {
        double percent = FigureOf.value(of(RaidLevel.RAID10, members(8, 4)), "Chance that a second failure is fatal");
        check(DDF, 0.142857, percent / 100, 5e-7);
    }

    @ParameterizedTest
    @CsvSource({"RAID10, 5", "RAID10, 2", "RAID6, 3", "RAID5, 2", "RAID0, 1", "RAID1, 1"})
    void tooFewOrOddMembers_areRefused(RaidLevel level, int n) {
        Invalid refusal = assertThrows(Invalid.class, () -> of(level, members(n, 4)));
        assertEquals("members", refusal.problems().get(0).field());
    }

    @ParameterizedTest
    @CsvSource({"100, 1, 1, 4500000", "100, 10, 4, 494505.49", "100, 10, 1, 818181.82", "100, 25, 1, 346153.85"})
    void meanTimeToDataLoss_reproducesThePaper(int data, int group, int checks, double hours) {
        check(PAPER, hours, Array.meanTimeToDataLoss(30_000, 1, data, group, checks), 0.005);
    }

    @ParameterizedTest
    @CsvSource({"100, 300", "200, 150"})
    void withoutRedundancy_theMeanTimeIsDividedByTheMembers(int n, double hours) {
        Result result = Array.calculate(new Input(RaidLevel.RAID0, members(n, 1), 100, 100, 1e-15, 30_000, 0));
        check(PAPER, hours, 8760 * FigureOf.value(result, "Mean time to data loss, optimistic"), 1e-9);
    }

    @Test
    void annualFailureRate_ofTwoDatasheets() {
        check("1 - e^(-8760/MTTF), recomputed", 0.727342, 100 * Array.annualFailureRate(1.2e6), 5e-7);
        check("1 - e^(-8760/MTTF), recomputed", 0.872174, 100 * Array.annualFailureRate(1.0e6), 5e-7);
    }

    @ParameterizedTest
    @CsvSource({"12, 1e-14, 0.617107", "12, 1e-15, 0.091536", "14, 1e-15, 0.105956"})
    void unrecoverableRead(double terabytes, double perBit, double chance) {
        check(URE, chance, Array.unrecoverable(perBit, terabytes * 8e12), 5e-7);
    }

    @Test
    void rebuildOfEightDrives_readsTheSevenThatAreLeft() {
        Result result = of(RaidLevel.RAID5, members(8, 2));
        check(URE, 10.5956, FigureOf.value(result, "Chance of an unrecoverable read, at most about"), 5e-5);
    }

    @ParameterizedTest
    @CsvSource({"4, 150, 100, 7.407407", "18, 200, 100, 25.000", "4, 150, 30, 24.691358"})
    void rebuildTime(double tb, double rate, double share, double hours) {
        Result result = Array.calculate(new Input(RaidLevel.RAID1, members(2, tb), rate, share, 1e-15, 1.2e6, 0));
        check("capacity over rate, recomputed 4.6", hours, FigureOf.value(result, "Rebuild time, at least"), 5e-7);
    }

    /** Independent of exp and log: (1 - p)^n by repeated squaring in 60 decimal digits. */
    @ParameterizedTest
    @ValueSource(longs = {1, 1000, 123_456_789, 96_000_000_000_000L})
    void unrecoverable_agreesWithExactPowers(long bits) {
        MathContext context = new MathContext(60);
        BigDecimal left = BigDecimal.ONE.subtract(new BigDecimal(1e-14), context);
        BigDecimal power = BigDecimal.ONE;
        for (long n = bits; n > 0; n >>= 1) {
            power = (n & 1) == 1 ? power.multiply(left, context) : power;
            left = left.multiply(left, context);
        }
        double exact = BigDecimal.ONE.subtract(power, context).doubleValue();
        assertEquals(exact, Array.unrecoverable(1e-14, bits), 1e-12 * exact);
    }

    @Test
    void stripeWithoutRedundancy_isBad() {
        Result result = of(RaidLevel.RAID0, members(2, 4));
        assertEquals(Level.BAD, result.judgement().level());
        assertEquals(List.of("DATA_LOSS"), result.cautions());
        assertFalse(FigureOf.has(result, "Rebuild time, at least"));
    }

    @Test
    void slowRepair_givesNoMeanTime() {
        Result result = Array.calculate(new Input(RaidLevel.RAID5, members(4, 4), 150, 100, 1e-15, 1000, 500));
        assertFalse(FigureOf.has(result, "Mean time to data loss, optimistic"));
    }

    /** Two ways to write a mirror: as RAID1 of two, and as one pair of RAID10's formula. */
    @Test
    void mirrorOfTwo_agreesWithThePairFormula() {
        Result result = of(RaidLevel.RAID1, members(2, 4));
        double window = FigureOf.value(result, "Time exposed");
        assertEquals(
                Array.meanTimeToDataLoss(1.2e6, window, 1, 1, 1) / 8760,
                FigureOf.value(result, "Mean time to data loss, optimistic"),
                1e-3);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void moreCapacityOrErrors_neverMakeTheRebuildShorterOrSurer(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 200; i++) {
            int n = 4 + 2 * random.nextInt(5);
            RaidLevel level = RaidLevel.values()[1 + random.nextInt(4)];
            double tb = 1 + 20 * random.nextDouble();
            double p = Math.pow(10, -16 + 2 * random.nextDouble());
            Input small = new Input(level, members(n, tb), 100, 50, p, 1e6, 5);
            Input large = new Input(level, members(n, tb * 1.2), 100, 50, p * 1.5, 1e6, 5);
            for (String name : List.of(
                    "Rebuild time, at least", "Chance of an unrecoverable read, at most about", "Usable capacity")) {
                double before = FigureOf.value(Array.calculate(small), name);
                double after = FigureOf.value(Array.calculate(large), name);
                assertTrue(after > before || before == 100, "seed " + seed + " " + name + " " + small);
            }
        }
    }
}
