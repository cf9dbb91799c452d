package org.benchtrail.platform.chart;

import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.bench.Numeral;

/**
 * One axis of a chart: from {@code low} to {@code high}, a tick every {@code step}, which is 1, 2 or 5 times a power of ten.
 * Low and high are ticks themselves.
 */
record Axis(double low, double high, double step) {
    private static final int DIGITS = 6;

    /** Covers every value with about {@code wanted} steps; values that are all alike get room on both sides. */
    static Axis over(double least, double most, int wanted) {
        double span = most - least;
        if (span <= 1e-12 * Math.max(Math.abs(least), Math.abs(most)) || span == 0) {
            double room = least == 0 ? 1 : Math.abs(least) / 2;
            return over(least - room, most + room, wanted);
        }
        double step = round(span / wanted);
        return new Axis(Math.floor(least / step + 1e-9) * step, Math.ceil(most / step - 1e-9) * step, step);
    }

    private static double round(double rough) {
        double power = Math.pow(10, Math.floor(Math.log10(rough)));
        double digit = rough / power;
        return power * (digit <= 1 ? 1 : digit <= 2 ? 2 : digit <= 5 ? 5 : 10);
    }

    List<Double> ticks() {
        List<Double> ticks = new ArrayList<>();
        long count = Math.round((high - low) / step);
        for (int i = 0; i <= count; i++) {
            double tick = low + i * step;
            ticks.add(Math.abs(tick) < step * 1e-9 ? 0 : tick);
        }
        return ticks;
    }

    /** Where a value lies, 0 at the low end and 1 at the high end. */
    double share(double value) {
        return (value - low) / (high - low);
    }

    static String text(double tick) {
        return Numeral.of(tick, DIGITS);
    }
}
