package org.benchtrail.core.practice.desktop;

import static org.benchtrail.core.practice.desktop.DesktopPart.*;

import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Harm;
import org.benchtrail.core.practice.Parameters;

/**
 * A desktop at one moment of a practice job. Each act answers with the desktop after it.
 *
 * @param sink °C, the base of the sink
 * @param on whether it runs; a trip switches it off
 * @param trips how often it has switched itself off
 */
public record Desktop(Parameters<DesktopPart> parts, double sink, boolean on, int trips) {
    /** s, of the Runge-Kutta steps: held against the closed form in the tests. */
    private static final double STEP = 0.25;

    private static final double TRIP_MINUTES = 15;
    private static final int TRIPS_WITHOUT_RISK = 3;
    private static final double DEAD_BOARD = 0.02;
    private static final double BENT_CONTACTS = 1 / 6.0;
    private static final double BURNS = 60;
    private static final double PASTE_GRIPS_BELOW = 35;
    /** m² K/W: layer over what it conducts; fresh paste has an eighth of it. */
    private static final double DRY_ABOVE = 1e-4;

    /** Running at idle for long. */
    public static Desktop idle(Parameters<DesktopPart> parts) {
        return new Desktop(parts, new DesktopHeat(parts).settled(0).sink(), true, 0);
    }

    /**
     * The desktop after a time, how long it ran until it switched itself off or the time was over, and what that did.
     *
     * @param seconds until it tripped, or all that were asked for
     */
    public record Ran(Desktop after, double seconds, List<Harm> harm) {
        public Ran {
            harm = List.copyOf(harm);
        }
    }

    /** Runs it at a steady load; unsaved work is lost if it trips. */
    public Ran run(double seconds, double load, boolean workSaved, Chance chance) {
        DesktopHeat heat = new DesktopHeat(parts);
        double sinkNow = sink;
        double done = 0;
        while (on && done < seconds) {
            double step = Math.min(STEP, seconds - done);
            double before = heat.at(sinkNow, load).die();
            double next = advanced(heat, sinkNow, load, step);
            double after = heat.at(next, load).die();
            if (after >= heat.trip()) {
                double share = after > before ? Math.max(0, (heat.trip() - before) / (after - before)) : 0;
                return tripped(sinkNow + share * (next - sinkNow), done + share * step, workSaved, chance);
            }
            sinkNow = next;
            done += step;
        }
        return new Ran(new Desktop(parts, on ? sinkNow : cooled(heat, seconds), on, trips), seconds, List.of());
    }

    private static double advanced(DesktopHeat heat, double sink, double load, double step) {
        double a = heat.warming(sink, load);
        double b = heat.warming(sink + a * step / 2, load);
        double c = heat.warming(sink + b * step / 2, load);
        double d = heat.warming(sink + c * step, load);
        return sink + step * (a + 2 * b + 2 * c + d) / 6;
    }

    /** Off: no power, no fan, towards the room. */
    private double cooled(DesktopHeat heat, double seconds) {
        double room = parts.get(ROOM);
        return room + (sink - room) * Math.exp(-seconds / heat.timeConstant(0));
    }

    private Ran tripped(double sinkThen, double seconds, boolean workSaved, Chance chance) {
        List<Harm> harm = new ArrayList<>();
        if (!workSaved) {
            harm.add(new Harm(Harm.Kind.WORK, "It switched off in the middle: unsaved work is lost.", TRIP_MINUTES, 0));
        }
        int all = trips + 1;
        if (all > TRIPS_WITHOUT_RISK && chance.uniform("board|trip|" + all) < DEAD_BOARD) {
            harm.add(deadBoard("After so many trips the board is dead."));
        }
        return new Ran(new Desktop(parts, sinkThen, false, all), seconds, harm);
    }

    private static Harm deadBoard(String sentence) {
        return new Harm(Harm.Kind.DEVICE, sentence, 90, 180);
    }

    /** After a time at idle, with the fan as fast as it is when all is settled: a first-order approach to that. */
    public Desktop rested(double seconds) {
        if (!on) {
            return this;
        }
        DesktopHeat heat = new DesktopHeat(parts);
        DesktopHeat.Settled idle = heat.settled(0);
        double left = Math.exp(-seconds / heat.timeConstant(idle.speed()));
        return new Desktop(parts, idle.sink() + (sink - idle.sink()) * left, true, trips);
    }

    public Desktop switched(boolean running) {
        return new Desktop(parts, sink, running, trips);
    }

    /** What somebody may do to it. */
    public enum Act {
        CLEAN(20, 0),
        REPLACE_FAN(20, 18),
        PASTE_AND_MOUNT(30, 0),
        SET_FAN_CURVE(6, 0),
        DEFAULT_CLOCK(8, 0),
        CLEAR_VENTS(10, 0),
        FIRMWARE_DEFAULTS(5, 0);

        private final double minutes;
        private final double cost;

        Act(double minutes, double cost) {
            this.minutes = minutes;
            this.cost = cost;
        }

        /** Hands-on. */
        public double minutes() {
            return minutes;
        }

        public double cost() {
            return cost;
        }
    }

    /**
     * What was taken care of before an act.
     *
     * @param cautionTaken the caution about hot parts was read and kept
     * @param fanHeld the fan was held still while air was blown through
     * @param settingsNoted the settings of the firmware were written down
     */
    public record Care(boolean cautionTaken, boolean fanHeld, boolean settingsNoted) {}

    /** The desktop after an act, and what it did besides. */
    public record Done(Desktop after, List<Harm> harm) {
        public Done {
            harm = List.copyOf(harm);
        }
    }

    /** The wrong act changes nothing but time and parts: only what is put right gets better. */
    public Done act(Act act, Care care, Chance chance) {
        List<Harm> harm = new ArrayList<>();
        if ((act == Act.CLEAN || act == Act.PASTE_AND_MOUNT) && sink > BURNS && !care.cautionTaken()) {
            harm.add(new Harm(Harm.Kind.PERSON, "The sink was touched while hot: a burn.", 20, 0));
        }
        if (act == Act.FIRMWARE_DEFAULTS && !care.settingsNoted()) {
            harm.add(new Harm(Harm.Kind.WORK, "The boot order and the user's own settings are gone.", 15, 0));
        }
        boolean dry = parts.get(LAYER) / parts.get(PASTE) > DRY_ABOVE;
        if (act == Act.PASTE_AND_MOUNT && dry && sink < PASTE_GRIPS_BELOW) {
            if (chance.uniform("contacts") < BENT_CONTACTS) {
                harm.add(deadBoard("The chip came out of its socket with the sink, and contacts are bent."));
            } else {
                harm.add(new Harm(Harm.Kind.DEVICE, "The chip came out of its socket with the sink.", 10, 0));
            }
        }
        return new Done(new Desktop(changed(act, care), sink, on, trips), harm);
    }

    private Parameters<DesktopPart> changed(Act act, Care care) {
        return switch (act) {
            case CLEAN -> cleaned(care);
            case REPLACE_FAN -> parts.restored(FAN_HEALTH);
            case PASTE_AND_MOUNT -> parts.restored(PASTE, LAYER, CONTACT);
            case SET_FAN_CURVE -> parts.restored(FIXED_DUTY);
            case DEFAULT_CLOCK -> parts.restored(CLOCK, VOLTAGE);
            case CLEAR_VENTS -> parts.restored(CASE_AIR);
            case FIRMWARE_DEFAULTS -> parts.restored(CLOCK, VOLTAGE, FIXED_DUTY);
        };
    }

    /** Never quite as new; a fan that is free to spin in the air that is blown through suffers. */
    private Parameters<DesktopPart> cleaned(Care care) {
        Parameters<DesktopPart> clean = parts.with(AIR_PATH, Math.max(0.95, parts.get(AIR_PATH)));
        return care.fanHeld() ? clean : clean.with(FAN_HEALTH, 0.6 * parts.get(FAN_HEALTH));
    }

    /** What a radiation thermometer set to {@code set} shows of a body that gives off {@code gives} of what a black one does. */
    public static double radiated(double body, double room, double gives, double set) {
        double kelvin = 273.15;
        double share = gives / set;
        double fourth = share * Math.pow(body + kelvin, 4) + (1 - share) * Math.pow(room + kelvin, 4);
        return Math.pow(fourth, 0.25) - kelvin;
    }
}
