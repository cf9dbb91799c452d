package org.benchtrail.core.practice.desktop;

import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Chance.Instrument;
import org.benchtrail.core.practice.desktop.DesktopHeat.Settled;

/** What can be measured on a desktop, with what, and what it costs in minutes. */
public enum DesktopReading {
    DIE("processor temperature", "die sensor", 2, new Instrument("board", 1.5, 0.5, 1)),
    SPEED("fan speed", "fan", 1, new Instrument("board", 0, 15, 30)),
    SINK("temperature", "sink base", 5, new Instrument("contact probe", 0.8, 0.2, 0.1)),
    INLET("temperature", "case inlet", 2, new Instrument("air probe", 0.3, 0, 0.1)),
    ROOM("temperature", "room", 2, new Instrument("air probe", 0.3, 0, 0.1)),
    /** The share of its clock, 1 unless it slows down. */
    CLOCK("clock share", "board", 3, new Instrument("board", 0, 0, 0.01));

    private final String quantity;
    private final String point;
    private final double minutes;
    private final Instrument instrument;

    DesktopReading(String quantity, String point, double minutes, Instrument instrument) {
        this.quantity = quantity;
        this.point = point;
        this.minutes = minutes;
        this.instrument = instrument;
    }

    /** Hands-on, without the time until it has settled. */
    public double minutes() {
        return minutes;
    }

    /**
     * What the instrument shows at this moment under that load.
     *
     * @param time the how manieth reading of it, from 1 on
     */
    public double of(Desktop desktop, double load, Chance chance, int time) {
        return chance.reading(truth(desktop, load), quantity, point, instrument, time);
    }

    private double truth(Desktop desktop, double load) {
        Settled now = new DesktopHeat(desktop.parts()).at(desktop.sink(), load);
        return switch (this) {
            case DIE -> now.die() + desktop.parts().get(DesktopPart.SENSOR_OFFSET);
            case SPEED -> now.speed();
            case SINK -> now.sink();
            case INLET -> now.inlet();
            case ROOM -> desktop.parts().get(DesktopPart.ROOM);
            case CLOCK -> now.clock();
        };
    }
}
