package org.benchtrail.core.bench.wireless;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.Result.Point;
import org.benchtrail.core.bench.wireless.RadioLink.Input;
import org.benchtrail.core.bench.wireless.RadioLink.Wall;
import org.benchtrail.core.measure.TypedNumber;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RadioLinkTest {
    private static final String ITU = "ITU-R P.525 free-space loss";

    private static Result of(double frequency, double distance, double sensitivity, Wall... walls) {
        return RadioLink.calculate(new Input(17, 3, 2, 1, frequency, distance, List.of(walls), sensitivity, 5));
    }

    /** Centres of the channels: 5 MHz apart from 2407 and 5000 MHz on, but for channel 14. */
    @Test
    void everyChannel_isTakenInMegahertzAndAskedAboutInGigahertz() {
        String source = "IEEE 802.11 channel centre frequencies, from memory";
        List<Double> centres = new ArrayList<>(List.of(2484.0));
        IntStream.rangeClosed(1, 13).forEach(n -> centres.add(2407.0 + 5 * n));
        IntStream.concat(
                        IntStream.of(36, 40, 44, 48, 52, 56, 60, 64),
                        IntStream.concat(
                                IntStream.iterate(100, n -> n <= 144, n -> n + 4),
                                IntStream.of(149, 153, 157, 161, 165)))
                .forEach(n -> centres.add(5000.0 + 5 * n));
        check(source, 14 + 25, centres.size());
        for (double megahertz : centres) {
            check(
                    source,
                    megahertz,
                    TypedNumber.in("MHz", "frequency", megahertz / 1000 + " GHz")
                            .doubleValue(),
                    0);
            assertDoesNotThrow(() -> of(megahertz, 30, -64));
            Invalid asked = assertThrows(Invalid.class, () -> of(megahertz / 1000, 30, -64));
            assertTrue(asked.getMessage().contains(Numeral.of(megahertz / 1000) + " GHz meant?"), asked.getMessage());
        }
    }

    @ParameterizedTest
    @CsvSource({"1000, 1000, 92.4478", "10000, 10000, 132.4478", "2437, 100, 80.184894", "5500, 30, 76.797462"})
    void freeSpaceLoss(double megahertz, double metres, double loss) {
        check(ITU, loss, RadioLink.freeSpaceLoss(metres, megahertz), loss > 90 ? 5e-5 : 5e-7);
    }

    @ParameterizedTest
    @CsvSource({"1000, 1000", "2437, 100", "5500, 30", "60000, 7"})
    void freeSpaceLoss_agreesWithTheRoundedConstant(double megahertz, double metres) {
        double rounded = 32.4 + 20 * Math.log10(megahertz) + 20 * Math.log10(metres / 1000);
        check(ITU, rounded, RadioLink.freeSpaceLoss(metres, megahertz), 0.05);
    }

    /** The power form of Friis: received over sent is (lambda / 4 pi d)^2, added up in milliwatts instead of decibels. */
    @Test
    void received_agreesWithFriisInMilliwatts() {
        double lambda = 299_792_458 / 5.5e9;
        double spread = lambda / (4 * Math.PI * 30);
        double milliwatts = Math.pow(10, 1.7)
                * Math.pow(10, 0.3)
                * Math.pow(10, 0.2)
                / Math.pow(10, 0.1)
                / Math.pow(10, 1.2)
                * spread
                * spread;
        double received = FigureOf.value(of(5500, 30, -64, new Wall(2, 6)), "Received");
        check("Friis transmission equation", 10 * Math.log10(milliwatts), received, 1e-9);
    }

    @Test
    void margin_decides() {
        double received = FigureOf.value(of(5500, 30, -64), "Received");
        assertEquals(Level.GOOD, of(5500, 30, received - 5.01).judgement().level());
        assertEquals(Level.CAREFUL, of(5500, 30, received - 4.9).judgement().level());
        assertEquals(Level.CAREFUL, of(5500, 30, received).judgement().level());
        assertEquals(Level.BAD, of(5500, 30, received + 0.1).judgement().level());
    }

    @Test
    void nearerThanTheFormulaHolds_isRefused() {
        Invalid refusal = assertThrows(Invalid.class, () -> of(100, 0.2, -64));
        assertEquals("distance", refusal.problems().get(0).field());
        Invalid both = assertThrows(Invalid.class, () -> of(0, 0, -64));
        assertEquals(
                Set.of("frequency", "distance"),
                both.problems().stream().map(Invalid.Problem::field).collect(Collectors.toSet()));
    }

    @Test
    void curve_passesThroughTheDistanceAskedFor() {
        Result result = of(5500, 30, -64);
        double received = FigureOf.value(result, "Received");
        List<Point> points = result.curves().get(0).points();
        assertTrue(points.get(0).y() > received && points.get(points.size() - 1).y() < received);
        assertEquals(
                received - 20 * Math.log10(2), points.get(points.size() - 1).y(), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void fartherHigherOrMoreWalls_neverStronger(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 500; i++) {
            double f = 1000 + 60_000 * random.nextDouble();
            double d = 1 + 1000 * random.nextDouble();
            double here = FigureOf.value(of(f, d, -64), "Received");
            assertTrue(FigureOf.value(of(f, d * 1.01, -64), "Received") < here, "seed " + seed);
            assertTrue(FigureOf.value(of(f * 1.01, d, -64), "Received") < here, "seed " + seed);
            assertTrue(FigureOf.value(of(f, d, -64, new Wall(1, 3)), "Received") < here, "seed " + seed);
            assertEquals(
                    here - 20 * Math.log10(2), FigureOf.value(of(f, 2 * d, -64), "Received"), 1e-9, "seed " + seed);
        }
    }
}
