package org.benchtrail.core.practice.job;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Chance.Instrument;
import org.benchtrail.core.practice.power.Battery;
import org.benchtrail.core.practice.power.Outlets;
import org.benchtrail.core.practice.power.PowerPart;
import org.benchtrail.core.practice.power.PowerSeed;
import org.benchtrail.core.practice.power.Ups;
import org.benchtrail.core.practice.power.Ups.Care;
import org.benchtrail.core.practice.power.Ups.Group;

/**
 * A UPS on the bench.
 *
 * @param first as it was found
 * @param heater whether the heater is on the same circuit
 */
record PowerBench(Chance chance, Ups first, Ups ups, boolean heater, TimesDone times) implements BenchDevice<PowerAct> {
    private static final double OLD = 0.85;
    private static final double OLD_BY_CHANCE = 0.3;
    private static final double BROWN = 0.02;
    private static final double LOADED = 100;
    private static final Instrument PANEL = new Instrument("panel", 1, 1, 1);
    private static final Instrument PLUG_METER = new Instrument("plug-in meter", 0.5, 0.2, 0.1);

    static PowerBench found(Chance chance, Ups ups) {
        return new PowerBench(chance, ups, ups, true, TimesDone.NONE);
    }

    private PowerBench with(Ups after) {
        return new PowerBench(chance, first, after, heater, times);
    }

    @Override
    public boolean isWell() {
        return PowerSeed.isSound(ups, heater);
    }

    @Override
    public Class<PowerAct> acts() {
        return PowerAct.class;
    }

    @Override
    public PowerBench counted(PowerAct act) {
        return new PowerBench(chance, first, ups, heater, times.once(act.name()));
    }

    @Override
    public Answer prepared(PowerAct act) {
        return Answer.of(this, act, "Done.", null);
    }

    private Set<Care> care() {
        Set<Care> care = EnumSet.noneOf(Care.class);
        if (times.any(PowerAct.SAVE_WORK)) {
            care.add(Care.WORK_SAVED);
        }
        if (times.any(PowerAct.SET_SHUTDOWN)) {
            care.add(Care.SHUTDOWN_SET);
        }
        if (times.any(PowerAct.INSULATE)) {
            care.add(Care.CAUTION_TAKEN);
        }
        if (!times.any(PowerAct.OPEN_CASE)) {
            care.add(Care.CASES_CLOSED);
        }
        return care;
    }

    private Answer told(PowerAct act, Seen seen, String yes, String no) {
        return Answer.told(this, act, seen, yes, no);
    }

    private boolean overloads(Ups which) {
        return new Outlets(which.parts()).isOverloaded(which.protectedWatts());
    }

    private boolean goesOver(Ups which) {
        return heater && new Outlets(which.parts()).onBattery(PowerSeed.OFFICE + PowerSeed.HEATER, false);
    }

    private static boolean isOn(Ups which, String load, Group group) {
        return which.loads().stream().anyMatch(l -> l.name().equals(load) && l.group() == group);
    }

    @Override
    public Answer asked(PowerAct act) {
        boolean dark = isOn(first, PowerSeed.SERVER, Group.SURGE_ONLY)
                || !new Battery(first.parts()).passesSelfTest(first.protectedWatts(), 1);
        return switch (act) {
            case ASK_SWITCHES ->
                told(
                        act,
                        Reporter.asked(chance, "switches", goesOver(first) || overloads(first)),
                        "Yes: the heater, or the printer.",
                        "Not that anybody saw.");
            case ASK_DARK ->
                told(
                        act,
                        Reporter.asked(chance, "dark", dark),
                        "The server was dark at once.",
                        "All stayed on at first.");
            case ASK_OFF ->
                told(
                        act,
                        Reporter.asked(chance, "off", overloads(first)),
                        "They go off while they run.",
                        "They stay on.");
            default ->
                told(
                        act,
                        Reporter.asked(chance, "wiring", false),
                        "The wiring was worked on.",
                        "Nobody worked on the wiring.");
        };
    }

    @Override
    public Answer looked(PowerAct act) {
        boolean worn = first.parts().get(PowerPart.AGE) < OLD || first.parts().get(PowerPart.RESISTANCE) > 0.1;
        boolean renewed = times.any(PowerAct.NEW_BATTERY);
        boolean old = !renewed && (worn || chance.uniform("old") < OLD_BY_CHANCE);
        return switch (act) {
            case LOOK_FED -> told(act, Seen.of(true), "They are on a UPS.", "");
            case LOOK_LAMP ->
                told(
                        act,
                        Seen.of(!new Battery(ups.parts()).passesSelfTest(ups.protectedWatts(), 1)),
                        "Its lamp says that the battery is bad.",
                        "No lamp complains.");
            case LOOK_AGE -> told(act, Seen.of(old), "Older than four years.", "Less than four years old.");
            case LOOK_LOG ->
                told(
                        act,
                        Seen.of(goesOver(ups)),
                        "It goes over to battery several times a day.",
                        "It has hardly been on battery.");
            default -> lookedAtLeads(act);
        };
    }

    private Answer lookedAtLeads(PowerAct act) {
        return switch (act) {
            case LOOK_LEADS ->
                told(
                        act,
                        Seen.of(isOn(ups, PowerSeed.SERVER, Group.SURGE_ONLY)),
                        "The server hangs on an outlet without battery.",
                        "All that must stay up is on battery.");
            case LOOK_PRINTER ->
                told(
                        act,
                        Seen.of(isOn(ups, PowerSeed.PRINTER, Group.BATTERY)),
                        "The printer is on a battery outlet.",
                        "No printer and no heater is.");
            case LOOK_PLUG ->
                told(
                        act,
                        Seen.of(chance.uniform("brown") < BROWN),
                        "The plug is browned.",
                        "Outlet and plug look new.");
            case OPEN_CASE ->
                told(act, Seen.of(false), "", "Nothing to see in it.").withoutSeen();
            default -> told(act, Seen.of(false), "", "No.");
        };
    }

    @Override
    public Answer measured(PowerAct act) {
        Outlets outlets = new Outlets(ups.parts());
        return switch (act) {
            case PANEL ->
                number(
                        act,
                        chance.reading(ups.panel(), "load", "panel", PANEL, times.of(act.name())),
                        "%",
                        "load of the UPS",
                        "UPS",
                        "UPS's own display");
            case OUTLET ->
                number(
                        act,
                        chance.reading(
                                outlets.mains(PowerSeed.OFFICE + (heater ? PowerSeed.HEATER : 0)),
                                "voltage",
                                "outlet",
                                PLUG_METER,
                                times.of(act.name())),
                        "V",
                        "outlet voltage under load",
                        "outlet",
                        "plug-in meter with its own display");
            case SELF_TEST -> selfTest(act);
            default -> timedRun(act);
        };
    }

    /** What it reckons its runtime to be, against that of a new set; nothing if the test fails. */
    private Answer selfTest(PowerAct act) {
        Ups.Done done = ups.selfTest(care());
        double share = done.passed() ? runtimeShare() : 0;
        return with(done.after())
                .number(act, share, "%", "runtime by self-test", "UPS", "UPS's own display")
                .harming(done.harm());
    }

    private double runtimeShare() {
        double now = new Battery(ups.parts()).runtime(ups.protectedWatts());
        double fresh = new Battery(ups.parts().restored(PowerPart.AGE)).runtime(ups.protectedWatts());
        return LOADED * now / fresh;
    }

    private Answer timedRun(PowerAct act) {
        Ups.Done done = ups.timedRun(care(), chance);
        Ups charged = new Ups(done.after().parts(), done.after().loads(), 1, true);
        return with(charged)
                .number(
                        act,
                        new Battery(ups.parts()).runtime(ups.protectedWatts()),
                        "min",
                        "runtime on battery",
                        "UPS",
                        "watch")
                .waited(done.elapsed())
                .harming(done.harm());
    }

    private Answer number(PowerAct act, double value, String unit, String quantity, String point, String instrument) {
        String digits = String.format(Locale.ROOT, "%.1f", value);
        return Answer.read(this, act, digits, new Seen.Gauge(quantity, point, instrument, unit));
    }

    @Override
    public Answer mended(PowerAct act) {
        Set<Care> care = care();
        Ups.Done done = switch (act) {
            case PULL_MAINS -> ups.mainsPulled(care);
            case NEW_BATTERY -> ups.newBattery(care);
            case MOVE_SERVER -> ups.moved(PowerSeed.SERVER, Group.BATTERY, care);
            case MOVE_PRINTER -> ups.moved(PowerSeed.PRINTER, Group.SURGE_ONLY, care);
            case PRINTER_ON_BATTERY -> ups.moved(PowerSeed.PRINTER, Group.BATTERY, care);
            case OPEN_WIRING -> ups.wiringOpened();
            case SET_TRANSFER -> ups.sensitivitySet();
            default -> null;
        };
        PowerBench after = done == null
                ? new PowerBench(chance, first, ups, false, times)
                : with(new Ups(done.after().parts(), done.after().loads(), 1, true));
        Answer answer = Answer.of(after, act, "Done.", null);
        return done == null
                ? answer
                : answer.waited(done.elapsed())
                        .costing(done.cost())
                        .harming(done.harm())
                        .ending(done.over());
    }

    @Override
    public Answer tried(PowerAct act) {
        boolean gone = isWell();
        return Answer.of(
                        this,
                        act,
                        gone ? "Ten minutes on battery, heater on: all stays up." : "It is as it was reported.",
                        Seen.of(!gone))
                .waited(15);
    }
}
