package org.benchtrail.core.practice.job;

import static org.benchtrail.core.practice.desktop.DesktopPart.*;

import java.util.Locale;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Parameters;
import org.benchtrail.core.practice.desktop.Desktop;
import org.benchtrail.core.practice.desktop.DesktopHeat;
import org.benchtrail.core.practice.desktop.DesktopHeat.Settled;
import org.benchtrail.core.practice.desktop.DesktopPart;
import org.benchtrail.core.practice.desktop.DesktopReading;
import org.benchtrail.core.practice.desktop.DesktopSeed;

/**
 * A desktop on the bench.
 *
 * @param first the parts as it was brought in: what changed before it began does not change any more
 */
record DesktopBench(Chance chance, Parameters<DesktopPart> first, Desktop desktop, TimesDone times)
        implements BenchDevice<DesktopAct> {
    private static final double SETTLING = 12 * 60;
    private static final double SOON = 2 * 60;
    private static final double TRYING = 20 * 60;
    private static final double COOLING = 15 * 60;
    /** °C: nobody is burnt, and dry paste lets go. */
    private static final double HAND_WARM = 42;

    private static final double DUST_IS_SEEN_BELOW = 0.6;
    private static final double ROCKS_BELOW = 0.3;
    private static final double SLOW_SHARE = 0.6;
    private static final double LOUD_SHARE = 0.85;
    private static final double HOT = 85;
    private static final double LOG_HOT = 95;
    private static final double JUMPS_BY = 35;
    private static final double NOTICEABLY = 10;

    /** K above what sits on it, at rest and from cold: no chip of these warms so fast; ours. */
    private static final double CANNOT_BE = 18;
    /** K/W from chip to air, of a sound desktop with some margin. */
    private static final double RATED = 0.58;

    private static final double OPEN_AIR = 0.05;
    private static final double POOR_AIR = 0.009;
    private static final double WARM_ROOM = 30;

    static DesktopBench broughtIn(Chance chance, Parameters<DesktopPart> parts) {
        return new DesktopBench(chance, parts, Desktop.idle(parts), TimesDone.NONE);
    }

    private DesktopBench with(Desktop after) {
        return new DesktopBench(chance, first, after, times);
    }

    @Override
    public boolean isWell() {
        return !DesktopSeed.isTooHot(desktop.parts());
    }

    @Override
    public Class<DesktopAct> acts() {
        return DesktopAct.class;
    }

    @Override
    public DesktopBench counted(DesktopAct act) {
        return new DesktopBench(chance, first, desktop, times.once(act.name()));
    }

    private boolean isSaved() {
        return times.any(DesktopAct.SAVE_WORK);
    }

    private Settled full() {
        return new DesktopHeat(desktop.parts()).settled(1);
    }

    private Answer told(DesktopAct act, Seen seen, String yes, String no) {
        return Answer.told(with(desktop.rested(60 * act.minutes())), act, seen, yes, no);
    }

    @Override
    public Answer asked(DesktopAct act) {
        boolean settings = first.get(CLOCK) > 1 || first.get(FIXED_DUTY) > 0;
        boolean moved = first.get(CASE_AIR) < POOR_AIR || first.get(ROOM) > WARM_ROOM;
        return switch (act) {
            case ASK_SETTINGS ->
                told(
                        act,
                        Reporter.asked(chance, "settings", settings),
                        "Settings were changed.",
                        "No settings were changed.");
            case ASK_PLACE ->
                told(
                        act,
                        Reporter.asked(chance, "place", moved),
                        "It was moved the week before.",
                        "It has not been moved.");
            case ASK_NOISE -> told(act, Reporter.asked(chance, "noise", isLoud()), "It is loud.", "It is not loud.");
            default ->
                told(act, Reporter.asked(chance, "off", full().trips()), "It goes off by itself.", "It stays on.");
        };
    }

    private boolean isLoud() {
        return full().speed() >= LOUD_SHARE * desktop.parts().get(FAN_RATED);
    }

    @Override
    public Answer looked(DesktopAct act) {
        Parameters<DesktopPart> parts = desktop.parts();
        Settled full = full();
        return switch (act) {
            case LOOK_PLACE ->
                told(
                        act,
                        Seen.of(parts.get(CASE_AIR) < POOR_AIR || parts.get(ROOM) > WARM_ROOM),
                        "It stands in a closed corner, or the room is hot.",
                        "It stands free, in a cool room.");
            case LOOK_DUST ->
                told(
                        act,
                        Seen.of(parts.get(AIR_PATH) < DUST_IS_SEEN_BELOW),
                        "A grey mat lies between fan and fins.",
                        "Fins and filter are clear.");
            case LOOK_FAN ->
                told(
                        act,
                        Seen.of(full.die() > HOT && full.speed() < SLOW_SHARE * parts.get(FAN_RATED)),
                        "It is hot, and the fan goes slowly.",
                        "The fan goes as fast as it should.");
            case LOOK_SINK ->
                told(act, Seen.of(parts.get(CONTACT) < ROCKS_BELOW), "The sink can be rocked.", "The sink sits fast.");
            default -> lookedOnward(act);
        };
    }

    private Answer lookedOnward(DesktopAct act) {
        Parameters<DesktopPart> parts = desktop.parts();
        Settled full = full();
        boolean worn = parts.get(FAN_HEALTH) > 0 && parts.get(FAN_HEALTH) < SLOW_SHARE;
        return switch (act) {
            case LOOK_CABLE -> told(act, Seen.of(false), "", "No cable comes near the fan.");
            case LISTEN ->
                told(act, Seen.of(worn && chance.uniform("grinds") < SLOW_SHARE), "It grinds.", "Only air is heard.");
            case LOOK_LOG ->
                told(
                        act,
                        Seen.of(full.die() >= LOG_HOT || full.trips()),
                        "The log names heat several times.",
                        "The log names no heat.");
            default ->
                told(
                        act,
                        Seen.of(parts.get(CLOCK) > 1),
                        "The clock is set above its default.",
                        "The clock is at its default.");
        };
    }

    @Override
    public Answer prepared(DesktopAct act) {
        if (act == DesktopAct.HAND_WARM) {
            Desktop warm = new Desktop(desktop.parts(), HAND_WARM, false, desktop.trips());
            return Answer.of(with(warm), act, "The sink is hand-warm, and it is off.", null)
                    .waited(10);
        }
        return act == DesktopAct.LET_COOL
                ? Answer.of(
                                with(desktop.switched(false)
                                        .run(COOLING, 0, true, chance)
                                        .after()),
                                act,
                                "It is off and cool enough to touch.",
                                null)
                        .waited(15)
                : told(act, Seen.of(true), "Done.", "").withoutSeen();
    }

    /** Under full load for a time, then what can be read. */
    @Override
    public Answer measured(DesktopAct act) {
        if (act == DesktopAct.FROM_COLD) {
            return fromCold();
        }
        double seconds = switch (act) {
            case DIE_IDLE, USE_AT_REST, JUMP -> 0;
            case DIE_SOON -> SOON;
            default -> SETTLING;
        };
        Desktop.Ran ran = desktop.switched(true).run(seconds, seconds > 0 ? 1 : 0, isSaved(), chance);
        DesktopBench then = new DesktopBench(chance, first, ran.after(), times.once(about(act)));
        if (!ran.after().on()) {
            Answer off = act == DesktopAct.DIE_LOAD || act == DesktopAct.DIE_SOON
                    ? then.number(
                            act,
                            then.desktop.parts().get(TRIP),
                            "°C",
                            "processor temperature",
                            "die sensor",
                            "board's own sensor")
                    : Answer.of(then, act, "It switched itself off before anything could be read.", null);
            return off.waited(ran.seconds() / 60).harming(ran.harm());
        }
        return then.shown(act, seconds > 0 ? 1 : 0).waited(seconds / 60);
    }

    /** Off until it is as cold as the room, then on: what sits on the sink tells how warm the chip can be. */
    private Answer fromCold() {
        Desktop cold = new Desktop(desktop.parts(), desktop.parts().get(ROOM), true, desktop.trips());
        DesktopBench then = with(cold);
        double shown = DesktopReading.DIE.of(cold, 0, chance, times.of(about(DesktopAct.FROM_COLD)));
        double beside = DesktopReading.SINK.of(cold, 0, chance, times.of(about(DesktopAct.FROM_COLD)));
        return Answer.told(
                        then,
                        DesktopAct.FROM_COLD,
                        Seen.of(shown - beside > CANNOT_BE),
                        "From cold it shows far more than the thermometer beside it.",
                        "From cold it shows what the thermometer beside it shows, or little more.")
                .waited(60);
    }

    private static String about(DesktopAct act) {
        return switch (act) {
            case DIE_IDLE, DIE_SOON, DIE_LOAD -> "die";
            default -> "of " + act.name();
        };
    }

    private Answer shown(DesktopAct act, double load) {
        return switch (act) {
            case DIE_IDLE, DIE_SOON, DIE_LOAD ->
                read(act, DesktopReading.DIE, load, "°C", "processor temperature", "die sensor", "board's own sensor");
            case FAN_SPEED ->
                read(act, DesktopReading.SPEED, load, "r/min", "fan speed", "processor fan", "board's own sensor");
            case SINK -> read(act, DesktopReading.SINK, load, "°C", "sink temperature", "sink base", "contact probe");
            case INLET -> read(act, DesktopReading.INLET, load, "°C", "air temperature", "case inlet", "air probe");
            case CLOCK_SHARE ->
                number(
                        act,
                        100 * full().clock() * Math.min(1, desktop.parts().get(CLOCK)),
                        "%",
                        "clock under load",
                        "board",
                        "board's own meter");
            case CLOCK_RATED ->
                number(
                        act,
                        100 * full().clock() * desktop.parts().get(CLOCK),
                        "%",
                        "clock against the rated one",
                        "board",
                        "board's own meter");
            case USE_AT_REST -> number(act, 4, "%", "processor use at rest", "board", "system's own meter");
            case COVER_OPEN ->
                told(
                        act,
                        Seen.of(full().die() - open() > NOTICEABLY),
                        "It gets cooler by more than 10 K.",
                        "It stays as hot, or nearly.");
            case JUMP -> told(act, Seen.of(jump() > JUMPS_BY), "It jumps at once.", "It rises slowly.");
            default ->
                told(
                        act,
                        Seen.of((full().die() - full().inlet()) / full().watts() > RATED),
                        "Worse than rated.",
                        "As rated.");
        };
    }

    private double open() {
        return new DesktopHeat(desktop.parts().with(CASE_AIR, OPEN_AIR))
                .settled(1)
                .die();
    }

    /** K by which the die is above the sink at once, from rest. */
    private double jump() {
        DesktopHeat heat = new DesktopHeat(desktop.parts());
        double rest = heat.settled(0).sink();
        return heat.at(rest, 1).die() - rest;
    }

    private Answer read(
            DesktopAct act,
            DesktopReading what,
            double load,
            String unit,
            String quantity,
            String point,
            String instrument) {
        double shown = Math.max(0, what.of(desktop, load, chance, times.of(about(act))));
        return number(act, shown, unit, quantity, point, instrument);
    }

    private Answer number(DesktopAct act, double value, String unit, String quantity, String point, String instrument) {
        String digits = String.format(Locale.ROOT, value >= 100 ? "%.0f" : "%.1f", value);
        return Answer.read(with(desktop), act, digits, new Seen.Gauge(quantity, point, instrument, unit));
    }

    @Override
    public Answer mended(DesktopAct act) {
        if (act == DesktopAct.SENSOR_TABLE) {
            return Answer.of(
                    with(new Desktop(desktop.parts().restored(SENSOR_OFFSET), desktop.sink(), true, desktop.trips())),
                    act,
                    "The firmware is loaded.",
                    null);
        }
        Desktop.Care care = new Desktop.Care(false, act != DesktopAct.BLOW, times.any(DesktopAct.NOTE_SETTINGS));
        Desktop.Act deed = deed(act);
        Desktop.Done done = desktop.act(deed, care, chance);
        Parameters<DesktopPart> after = act == DesktopAct.CLEAR_VENTS
                ? done.after()
                        .parts()
                        .with(ROOM, Math.min(24, done.after().parts().get(ROOM)))
                : done.after().parts();
        Desktop now = new Desktop(after, done.after().sink(), true, done.after().trips());
        return Answer.of(with(now), act, "Done.", null).costing(deed.cost()).harming(done.harm());
    }

    private static Desktop.Act deed(DesktopAct act) {
        return switch (act) {
            case CLEAN, BLOW -> Desktop.Act.CLEAN;
            case REPLACE_FAN -> Desktop.Act.REPLACE_FAN;
            case PASTE -> Desktop.Act.PASTE_AND_MOUNT;
            case FAN_CURVE -> Desktop.Act.SET_FAN_CURVE;
            case DEFAULT_CLOCK -> Desktop.Act.DEFAULT_CLOCK;
            case CLEAR_VENTS -> Desktop.Act.CLEAR_VENTS;
            default -> Desktop.Act.FIRMWARE_DEFAULTS;
        };
    }

    @Override
    public Answer tried(DesktopAct act) {
        Desktop.Ran ran = desktop.switched(true).run(TRYING, 1, isSaved(), chance);
        boolean gone = isWell();
        String words = gone ? "Twenty minutes at full load: it stays cool." : "It is as hot as it was reported.";
        return Answer.of(with(ran.after()), act, words, Seen.of(!gone))
                .waited(ran.seconds() / 60)
                .harming(ran.harm());
    }
}
