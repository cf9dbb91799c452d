package org.benchtrail.core.bench.power;

import org.benchtrail.core.bench.Ask;

/** A load that wants an outlet of a UPS. */
public record OutletLoad(
        @Ask(label = "Name") String name,
        @Ask(label = "Kind") Kind kind,

        @Ask(label = "Draw", unit = "W", hint = "Measured, or the nameplate's watts")
        double watts,

        @Ask(label = "Must survive an outage") boolean mustSurvive) {
    public enum Kind {
        ROUTER,
        SWITCH,
        SERVER,
        DESKTOP,
        MONITOR,
        STORAGE,
        PHONE,
        LASER_PRINTER,
        INKJET_PRINTER,
        SCANNER,
        SPACE_HEATER,
        OTHER;

        boolean infrastructure() {
            return this == ROUTER || this == SWITCH || this == SERVER || this == STORAGE;
        }

        boolean keepOffUps() {
            return this == LASER_PRINTER || this == SPACE_HEATER;
        }

        boolean keepOffBattery() {
            return keepOffUps() || this == INKJET_PRINTER || this == SCANNER;
        }
    }
}
