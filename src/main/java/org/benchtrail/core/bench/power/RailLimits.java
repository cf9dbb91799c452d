package org.benchtrail.core.bench.power;

import org.benchtrail.core.bench.power.Rails.Edition;
import org.benchtrail.core.bench.power.Rails.Rail;

/**
 * Regulation limits of one rail in volts, in the order of magnitude: {@code weak} is the end nearer to zero, {@code strong}
 * the end further from it. Both ends conform.
 *
 * <p>Source: ATX12V Power Supply Design Guide 2.0, table 2, with the limits as printed (3.14 V and 3.47 V on +3.3 V, not the
 * unrounded 3.135 V and 3.465 V). The older text's 4 % on +3.3 V and the newer guide's wider low side on +12 V are known
 * second-hand only.
 */
record RailLimits(double weak, double nominal, double strong, String source) {
    private static final String GUIDE_2 = "ATX12V Power Supply Design Guide 2.0, table 2";
    private static final String OLDER = "ATX specification 2.1 as tabulated in a handbook";
    private static final String NEWER = "ATX design guide, edition 3, known second-hand";

    static RailLimits of(Edition edition, Rail rail, boolean peak) {
        String source = source(edition);
        return switch (rail) {
            case PLUS_12 -> twelve(edition, peak, source);
            case PLUS_12_GRAPHICS ->
                edition == Edition.ATX_3 ? new RailLimits(11.04, 12, 12.60, source) : twelve(edition, peak, source);
            case PLUS_5, STANDBY_5 -> new RailLimits(4.75, 5, 5.25, source);
            case PLUS_3_3 ->
                edition == Edition.ATX_2_1
                        ? new RailLimits(3.168, 3.3, 3.432, source)
                        : new RailLimits(3.14, 3.3, 3.47, source);
            case MINUS_12 -> new RailLimits(-10.80, -12, -13.20, source);
        };
    }

    private static RailLimits twelve(Edition edition, boolean peak, String source) {
        if (peak) {
            return new RailLimits(10.80, 12, 13.20, source + ", note 1 (peak load)");
        }
        return new RailLimits(edition == Edition.ATX_3 ? 11.16 : 11.40, 12, 12.60, source);
    }

    private static String source(Edition edition) {
        return switch (edition) {
            case ATX12V_2_0 -> GUIDE_2;
            case ATX_2_1 -> OLDER;
            case ATX_3 -> NEWER;
        };
    }

    double low() {
        return Math.min(weak, strong);
    }

    double high() {
        return Math.max(weak, strong);
    }
}
