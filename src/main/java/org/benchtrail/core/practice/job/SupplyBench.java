package org.benchtrail.core.practice.job;

import static org.benchtrail.core.practice.supply.SupplyPart.*;

import java.util.List;
import java.util.Locale;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Chance.Instrument;
import org.benchtrail.core.practice.Harm;
import org.benchtrail.core.practice.Parameters;
import org.benchtrail.core.practice.supply.Supply;
import org.benchtrail.core.practice.supply.SupplyPart;
import org.benchtrail.core.practice.supply.SupplySeed;

/**
 * A desk computer with its supply on the bench.
 *
 * @param first as it was found
 * @param pulled whether its plug is out
 */
record SupplyBench(Chance chance, Supply first, Supply supply, TimesDone times, boolean pulled)
        implements BenchDevice<SupplyAct> {
    /** F: a capacitor that has dried out so far starts badly when cold, and now and then is seen to bulge; ours. */
    private static final double DRIED_OUT = 250e-6;

    private static final double BULGES = 0.4;
    /** W: plug and outlet get brown; ours. */
    private static final double BROWNS = 10;

    private static final double BROWN_IS_SEEN = 0.85;
    private static final double SHARED = 0.5;
    private static final double SHORT_BELOW = 10;
    /** What a tester draws; ours. */
    private static final double TESTER_WATTS = 12;

    private static final double SUPPLY_PRICE = 85;
    private static final double TRYING = 60;
    private static final Instrument PLUG_METER = new Instrument("plug-in meter", 0.5, 0.3, 0.1);
    private static final Instrument METER = new Instrument("meter", 0.02, 0.01, 0.01);
    private static final Instrument SCOPE = new Instrument("storage meter", 0.1, 0.2, 0.1);

    static SupplyBench found(Chance chance, Supply supply) {
        return new SupplyBench(chance, supply, supply, TimesDone.NONE, false);
    }

    private SupplyBench with(Supply after, boolean nowPulled) {
        return new SupplyBench(chance, first, after, times, nowPulled);
    }

    private SupplyBench plugged() {
        return with(supply, false);
    }

    @Override
    public boolean isWell() {
        return SupplySeed.isSound(supply);
    }

    @Override
    public Class<SupplyAct> acts() {
        return SupplyAct.class;
    }

    @Override
    public SupplyBench counted(SupplyAct act) {
        return new SupplyBench(chance, first, supply, times.once(act.name()), pulled);
    }

    private static boolean starts(Supply which) {
        return which.carries(which.idle());
    }

    private static boolean goesOff(Supply which) {
        return starts(which) && !SupplySeed.isSound(which);
    }

    @Override
    public Answer asked(SupplyAct act) {
        boolean cold = first.parts().get(CAPACITANCE) < DRIED_OUT;
        return switch (act) {
            case ASK_RAN ->
                asked(act, goesOff(first), "It went off before, while it ran.", "It never went off before.");
            case ASK_HARD -> asked(act, goesOff(first), "Yes, always while it works hard.", "Not that anybody saw.");
            case ASK_COLD ->
                asked(act, cold, "In the morning it takes several tries.", "In the morning it starts like any other.");
            case ASK_CHANGED ->
                asked(
                        act,
                        first.parts().get(SHORT_OHM) < SHORT_BELOW,
                        "The board was moved to another case.",
                        "Nothing was changed.");
            default -> asked(act, false, "There was a storm.", "There was no storm.");
        };
    }

    private Answer asked(SupplyAct act, boolean isSo, String yes, String no) {
        return Answer.told(this, act, Reporter.asked(chance, act.name(), isSo), yes, no);
    }

    @Override
    public Answer looked(SupplyAct act) {
        boolean brown = supply.feedHeat(supply.full()) > BROWNS && chance.uniform("brown") < BROWN_IS_SEEN;
        boolean dark = !supply.isFed() && chance.uniform("shared") < SHARED;
        boolean bulged = supply.parts().get(CAPACITANCE) < DRIED_OUT && chance.uniform("bulges") < BULGES;
        return switch (act) {
            case LOOK_DARK ->
                Answer.told(
                        plugged(),
                        act,
                        Seen.of(!starts(supply)),
                        "No light, no fan.",
                        "It starts, and stays on at rest.");
            case LOOK_STANDBY ->
                Answer.told(plugged(), act, Seen.of(supply.isFed()), "The light is on.", "The light is off.");
            case LOOK_BROWN ->
                Answer.told(this, act, Seen.of(brown), "The plug is browned and warm.", "Outlet and plug look new.");
            case LOOK_OTHERS ->
                Answer.told(
                        this,
                        act,
                        Seen.of(dark),
                        "The desk lamp on it is dark as well.",
                        "Nothing else on it is dark.");
            case LOOK_INSIDE ->
                Answer.told(
                        this,
                        act,
                        Seen.of(bulged),
                        "A capacitor behind the grille bulges.",
                        "Nothing to see or to smell.");
            case LOOK_STRIP -> Answer.told(this, act, Seen.of(false), "", "No strip, and the breaker is on.");
            case LOOK_REAR -> Answer.told(this, act, Seen.of(false), "", "The rear switch is on.");
            default -> Answer.told(this, act, Seen.of(false), "", "The lead is whole and sits fast at both ends.");
        };
    }

    @Override
    public Answer measured(SupplyAct act) {
        return switch (act) {
            case OUTLET -> outlet(act);
            case RAIL_IDLE -> rail(act, supply.idle(), "+12 V at rest");
            case RAIL_LOAD -> rail(act, supply.full(), "+12 V under load");
            case LABEL ->
                Answer.told(
                        this,
                        act,
                        Seen.of(!supply.isRatedFor(supply.full())),
                        "The label is below the sum.",
                        "The label is well above the sum.");
            case OTHER_CORD -> {
                Supply there = new Supply(supply.parts().restored(MAINS, FEED_OHM));
                yield Answer.told(
                        plugged(), act, Seen.of(starts(there)), "It comes up there.", "It stays dark there too.");
            }
            default -> onTheBench(act);
        };
    }

    private Answer outlet(SupplyAct act) {
        double watts = supply.carries(supply.full()) ? supply.full() : 0;
        double volts = supply.parts().get(MAINS) == 0
                ? 0
                : chance.reading(supply.inlet(watts), "voltage", "outlet", PLUG_METER, times.of(act.name()));
        return number(
                        act,
                        volts,
                        1,
                        new Seen.Gauge(
                                "outlet voltage under load", "outlet", "plug-in meter with its own display", "V"))
                .harming(lostWork(act));
    }

    private Answer rail(SupplyAct act, double watts, String quantity) {
        if (!starts(supply)) {
            return Answer.of(plugged(), act, "It does not run: there is nothing to measure.", null);
        }
        if (!supply.carries(watts)) {
            return Answer.of(plugged(), act, "It goes off before the meter settles.", null)
                    .harming(lostWork(act));
        }
        double volts = chance.reading(supply.rail(watts), "voltage", quantity, METER, times.of(act.name()));
        return number(act, volts, 2, new Seen.Gauge(quantity, "drive plug", "multimeter", "V"))
                .harming(lostWork(act));
    }

    private Answer number(SupplyAct act, double value, int places, Seen.Gauge gauge) {
        return Answer.read(plugged(), act, String.format(Locale.ROOT, "%." + places + "f", value), gauge);
    }

    /** Full load over a time in which the mains dip ends the work of who did not save it. */
    private List<Harm> lostWork(SupplyAct act) {
        boolean full = act != SupplyAct.RAIL_IDLE;
        return full && goesOff(supply) && !times.any(SupplyAct.SAVE_WORK)
                ? List.of(new Harm(Harm.Kind.WORK, "It went off under load, and what was open is lost.", 20, 0))
                : List.of();
    }

    /** Plugs of the supply come off the board, and its own mains lead goes to a sound outlet. */
    private Answer onTheBench(SupplyAct act) {
        List<Harm> harm = handled();
        Supply bench = new Supply(supply.parts().restored(MAINS, FEED_OHM, SHORT_OHM));
        Answer answer = switch (act) {
            case ALONE ->
                Answer.told(
                        plugged(),
                        act,
                        Seen.of(bench.rail(TESTER_WATTS) < SupplySeed.LOWEST_RAIL),
                        "It fails on the tester.",
                        "The tester shows all its voltages, at next to no load.");
            case FEWEST ->
                Answer.told(plugged(), act, Seen.of(starts(bench)), "It starts on the card.", "It stays dark.");
            default -> {
                double held = bench.holdUp(bench.full());
                double shown = chance.reading(held, "hold-up", "test load", SCOPE, times.of(act.name()));
                yield number(
                        act, shown, 1, new Seen.Gauge("hold-up time at full load", "supply", "storage meter", "ms"));
            }
        };
        return answer.harming(harm);
    }

    private List<Harm> handled() {
        return HandsInCase.harm(chance, pulled, times.any(SupplyAct.STRAP));
    }

    @Override
    public Answer prepared(SupplyAct act) {
        boolean nowPulled = pulled || act == SupplyAct.PULL_PLUG;
        return Answer.of(
                with(supply, nowPulled), act, act == SupplyAct.PULL_PLUG ? "It is off and unplugged." : "Done.", null);
    }

    @Override
    public Answer mended(SupplyAct act) {
        Parameters<SupplyPart> parts = supply.parts();
        return switch (act) {
            case NEW_SUPPLY ->
                done(act, parts.restored(CAPACITANCE, GIVES_UP, EFFICIENCY, RAIL, RAIL_OHM, MOST_AMPS))
                        .costing(SUPPLY_PRICE)
                        .harming(handled());
            case LIFT_BOARD -> done(act, parts.restored(SHORT_OHM)).harming(handled());
            case PRESS_PLUGS -> done(act, parts).harming(handled());
            case OTHER_OUTLET -> done(act, parts.restored(MAINS, FEED_OHM));
            default -> opened(act);
        };
    }

    private Answer done(SupplyAct act, Parameters<SupplyPart> after) {
        return Answer.of(with(new Supply(after), false), act, "Done.", null);
    }

    /** Its capacitor keeps its charge for minutes: only its maker's bench opens a supply. */
    private Answer opened(SupplyAct act) {
        String joules = String.format(Locale.ROOT, "%.0f", supply.stored());
        Harm shock = new Harm(
                Harm.Kind.PERSON,
                "The capacitor held up to " + joules
                        + " J at more than 300 V, plug out or not: a supply is replaced, never opened.",
                120,
                0);
        return Answer.of(this, act, "The job ends here.", null)
                .harming(List.of(shock))
                .ending(true);
    }

    @Override
    public Answer tried(SupplyAct act) {
        boolean gone = isWell();
        return Answer.of(
                        plugged(),
                        act,
                        gone
                                ? "An hour at full load, a dip of the mains among it: it stays on."
                                : starts(supply) ? "It goes off again." : "It does not come on.",
                        Seen.of(!gone))
                .waited(TRYING)
                .harming(lostWork(act));
    }
}
