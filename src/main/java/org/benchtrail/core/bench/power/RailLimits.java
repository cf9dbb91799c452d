package org.benchtrail.core.bench.power;

import org.benchtrail.core.bench.Citation;
import org.benchtrail.core.bench.power.Rails.Edition;
import org.benchtrail.core.bench.power.Rails.Rail;

/**
 * Regulation limits of one rail in volts, in the order of magnitude: {@code weak} is the end nearer to zero, {@code strong}
 * the end further from it. Both ends conform.
 *
 * <p>Source: ATX12V Power Supply Design Guide 2.0, table 2, with the limits as printed (3.14 V and 3.47 V on +3.3 V, not the
 * unrounded 3.135 V and 3.465 V). The newer guide's wider low side on +12 V is known
 * from memory only.
 */
record RailLimits(double weak, double nominal, double strong, Citation source) {
    private static final Citation GUIDE_2 = Citation.seen("ATX12V Power Supply Design Guide 2.0, table 2");
    private static final Citation OLDER = Citation.seen("ATX Specification 2.1, DC voltage regulation");
    private static final Citation NEWER =
            Citation.fromMemory("ATX Version 3 Multi Rail Desktop Platform Power Supply Design Guide");

    static RailLimits of(Edition edition, Rail rail, boolean peak) {
        Citation source = source(edition);
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

    private static RailLimits twelve(Edition edition, boolean peak, Citation source) {
        if (peak) {
            return new RailLimits(
                    10.80, 12, 13.20, new Citation(source.title() + ", note 1 on peak load", source.provenance()));
        }
        return new RailLimits(edition == Edition.ATX_3 ? 11.16 : 11.40, 12, 12.60, source);
    }

    private static Citation source(Edition edition) {
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
