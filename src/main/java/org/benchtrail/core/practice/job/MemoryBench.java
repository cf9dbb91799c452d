package org.benchtrail.core.practice.job;

import static org.benchtrail.core.practice.memory.MemoryPart.*;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Chance.Instrument;
import org.benchtrail.core.practice.Harm;
import org.benchtrail.core.practice.Parameters;
import org.benchtrail.core.practice.memory.Memory;
import org.benchtrail.core.practice.memory.MemoryPart;
import org.benchtrail.core.practice.memory.MemorySeed;

/**
 * A computer with its memory on the bench.
 *
 * @param first as it was found
 * @param saved whether the user's work is saved and nobody went on since
 * @param pulled whether its plug is out
 */
record MemoryBench(Chance chance, Memory first, Memory memory, TimesDone times, boolean saved, boolean pulled)
        implements BenchDevice<MemoryAct> {
    private static final double PASS = 1.5;
    private static final double LONG = 6;
    private static final double DAY = 8;
    private static final double MINUTES = 60;
    private static final double COLD = 30;
    private static final double STANDARD = 3200;
    private static final double STANDARD_VOLTS = 1.2;
    /** Share of the jobs in which the log kept enough stops; ours. */
    private static final double KEPT_IN_LOG = 0.85;

    private static final double MODULE_PRICE = 55;
    private static final Instrument SENSOR = new Instrument("own sensor", 1, 0.5, 1);

    static MemoryBench found(Chance chance, Memory memory) {
        return new MemoryBench(chance, memory, memory, TimesDone.NONE, false, false);
    }

    /** Switched on again and in use: whatever is open has to be saved once more. */
    private MemoryBench running(Memory after) {
        return new MemoryBench(chance, first, after, times, false, false);
    }

    @Override
    public boolean isWell() {
        return MemorySeed.isSound(memory);
    }

    @Override
    public Class<MemoryAct> acts() {
        return MemoryAct.class;
    }

    @Override
    public MemoryBench counted(MemoryAct act) {
        return new MemoryBench(chance, first, memory, times.once(act.name()), saved, pulled);
    }

    @Override
    public Answer asked(MemoryAct act) {
        boolean profile = first.parts().get(SPEED) > STANDARD;
        return switch (act) {
            case ASK_ADDED -> asked(act, false, "It began after memory was added.", "No memory was added.");
            case ASK_HARDWARE -> asked(act, false, "A card was changed.", "Nothing was changed inside.");
            default ->
                asked(act, profile, "A faster setting was chosen in the firmware.", "Nobody touched the settings.");
        };
    }

    private Answer asked(MemoryAct act, boolean isSo, String yes, String no) {
        return Answer.told(this, act, Reporter.asked(chance, act.name(), isSo), yes, no);
    }

    @Override
    public Answer looked(MemoryAct act) {
        boolean kept = !MemorySeed.isSound(first) && chance.uniform("codes") < KEPT_IN_LOG;
        return switch (act) {
            case LOOK_CODES ->
                Answer.told(
                        this,
                        act,
                        Seen.of(kept),
                        "Each stop has another code.",
                        "The log kept too few stops to differ.");
            case LOOK_START -> Answer.told(this, act, Seen.of(false), "", "It starts without any code.");
            case LOOK_MIXED -> Answer.told(this, act, Seen.of(false), "", "Both modules are of one kind.");
            case LOOK_FITTED -> Answer.told(this, act, Seen.of(false), "", "All of it is shown, on both channels.");
            default -> Answer.told(this, act, Seen.of(false), "", "The system manages it, on a drive with room.");
        };
    }

    /** A run of the test: errors by slot. */
    private record Run(int slot1, int slot2) {
        int all() {
            return slot1 + slot2;
        }
    }

    private Run run(MemoryAct act, String part, Memory which, double hours) {
        String label = "errors|" + act.name() + "|" + part + "|" + times.of(act.name()) + "|";
        return new Run(chance.count(which.rate(1) * hours, label + 1), chance.count(which.rate(2) * hours, label + 2));
    }

    @Override
    public Answer measured(MemoryAct act) {
        return switch (act) {
            case IN_USE ->
                number(act, chance.between("in use", 35, 70), 0, "%", "memory in use", "system", "system's own meter");
            case VOLTS ->
                number(act, memory.parts().get(MemoryPart.VOLTS), 2, "V", "module voltage", "board", "firmware's page")
                        .harming(interrupted());
            case WARMTH -> {
                double shown = chance.reading(
                        memory.parts().get(TEMPERATURE), "temperature", "modules", SENSOR, times.of(act.name()));
                yield number(act, shown, 0, "°C", "module temperature", "modules", "modules' own sensor");
            }
            case ONE_PASS -> tested(act, PASS);
            case LONG_TEST -> tested(act, LONG);
            default -> compared(act);
        };
    }

    private Answer number(
            MemoryAct act, double value, int places, String unit, String quantity, String point, String instrument) {
        String digits = String.format(Locale.ROOT, "%." + places + "f", value);
        return Answer.read(this, act, digits, new Seen.Gauge(quantity, point, instrument, unit));
    }

    /** The test starts the computer anew. */
    private List<Harm> interrupted() {
        return saved
                ? List.of()
                : List.of(new Harm(
                        Harm.Kind.WORK, "It was started anew with the user's work open: that work is lost.", 20, 0));
    }

    private Answer tested(MemoryAct act, double hours) {
        Run run = run(act, "as it is", memory, hours);
        String where = run.all() == 0
                ? "No error in this run."
                : "Errors in slot 1, module " + memory.module(1) + ": " + run.slot1() + "; in slot 2, module "
                        + memory.module(2) + ": " + run.slot2() + ".";
        Seen seen = new Seen(
                Integer.toString(run.all()),
                new Seen.Gauge(
                        "errors in " + (hours == PASS ? "one pass" : "six hours"), "memory", "memory test", "count"));
        return Answer.of(running(memory), act, where, seen)
                .waited(hours * MINUTES)
                .harming(interrupted());
    }

    private Answer compared(MemoryAct act) {
        return switch (act) {
            case STANDARD_RUN -> {
                Parameters<MemoryPart> standard = memory.parts().with(SPEED, STANDARD);
                boolean clean =
                        run(act, "standard", memory.with(standard), LONG).all() == 0;
                yield Answer.told(
                                running(memory),
                                act,
                                Seen.of(clean),
                                "Six hours without an error.",
                                "Errors come there too.")
                        .waited(LONG * MINUTES)
                        .harming(interrupted());
            }
            case COLD_AND_WARM -> {
                boolean cold = run(act, "cold", memory.with(memory.parts().with(TEMPERATURE, COLD)), LONG)
                                .all()
                        == 0;
                boolean warm = run(act, "warm", memory, LONG).all() > 0;
                yield Answer.told(
                                running(memory),
                                act,
                                Seen.of(cold && warm),
                                "None cold, and errors once it was warm.",
                                cold ? "No error, cold or warm." : "Errors come cold too.")
                        .waited(2 * LONG * MINUTES)
                        .harming(interrupted());
            }
            default -> changedOver(act);
        };
    }

    /** Six hours as it is, six hours with the modules changed over: what comes in neither run tells nothing. */
    private Answer changedOver(MemoryAct act) {
        Run before = run(act, "before", memory, LONG);
        Run after = run(act, "after", memory.changed(), LONG);
        List<Harm> harm = inCase();
        Answer answer;
        if (before.all() == 0 || after.all() == 0) {
            answer = Answer.of(
                    running(memory.changed()),
                    act,
                    "One of the runs showed no error, so nothing can be told.",
                    new Seen(Seen.UNKNOWN, null));
        } else {
            boolean one = isInOneSlot(before) && isInOneSlot(after);
            boolean went = one && (before.slot1() > 0) != (after.slot1() > 0);
            String words = went
                    ? "They went along with module " + memory.module(before.slot1() > 0 ? 1 : 2) + "."
                    : one ? "They stayed with slot " + (before.slot1() > 0 ? 1 : 2) + "." : "They come in both slots.";
            boolean isSo = act == MemoryAct.GOES_ALONG ? went : one && !went;
            answer = Answer.of(running(memory.changed()), act, words, Seen.of(isSo));
        }
        return answer.waited(2 * LONG * MINUTES).harming(harm);
    }

    private static boolean isInOneSlot(Run run) {
        return run.slot1() == 0 || run.slot2() == 0;
    }

    private List<Harm> inCase() {
        List<Harm> harm = new ArrayList<>(interrupted());
        harm.addAll(HandsInCase.harm(chance, pulled, times.any(MemoryAct.STRAP)));
        return harm;
    }

    @Override
    public Answer prepared(MemoryAct act) {
        boolean nowSaved = saved || act == MemoryAct.SAVE_WORK;
        boolean nowPulled = pulled || act == MemoryAct.PULL_PLUG;
        List<Harm> harm = act == MemoryAct.PULL_PLUG ? interrupted() : List.of();
        return Answer.of(new MemoryBench(chance, first, memory, times, nowSaved, nowPulled), act, "Done.", null)
                .harming(harm);
    }

    @Override
    public Answer mended(MemoryAct act) {
        Parameters<MemoryPart> parts = memory.parts();
        return switch (act) {
            case REPLACE_A ->
                done(act, parts.restored(MODULE_A)).costing(MODULE_PRICE).harming(inCase());
            case REPLACE_B ->
                done(act, parts.restored(MODULE_B)).costing(MODULE_PRICE).harming(inCase());
            case OTHER_SLOTS -> done(act, parts.restored(SLOT_1, SLOT_2)).harming(inCase());
            case FREE_AIR -> done(act, parts.restored(TEMPERATURE)).harming(inCase());
            case RESEAT -> done(act, parts).harming(inCase());
            case STANDARD_SPEED ->
                done(act, parts.with(SPEED, STANDARD).with(MemoryPart.VOLTS, STANDARD_VOLTS))
                        .harming(interrupted());
            default -> filesRepaired(act);
        };
    }

    private Answer done(MemoryAct act, Parameters<MemoryPart> after) {
        return Answer.of(running(memory.with(after)), act, "Done.", null);
    }

    /** What memory gets wrong is written to the drive. */
    private Answer filesRepaired(MemoryAct act) {
        List<Harm> harm = isWell()
                ? List.of()
                : List.of(new Harm(
                        Harm.Kind.DATA,
                        "The file system was written anew through memory that errs: folders are torn.",
                        60,
                        0));
        return Answer.of(this, act, "Done.", null).harming(harm);
    }

    @Override
    public Answer tried(MemoryAct act) {
        boolean gone = isWell();
        return Answer.of(
                        running(memory),
                        act,
                        gone ? "A day of work without a stop." : "It stopped again before the day was over.",
                        Seen.of(!gone))
                .waited(DAY * MINUTES)
                .harming(gone ? List.of() : interrupted());
    }
}
