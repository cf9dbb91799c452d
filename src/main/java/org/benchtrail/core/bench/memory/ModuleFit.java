package org.benchtrail.core.bench.memory;

import static org.benchtrail.core.bench.Numeral.beside;
import static org.benchtrail.core.bench.Numeral.of;

import java.util.List;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Choice;
import org.benchtrail.core.bench.Citation;
import org.benchtrail.core.bench.FitVerdict;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Side;
import org.benchtrail.core.bench.Trade;
import org.jspecify.annotations.Nullable;

/**
 * Does this memory module fit the board and the modules that are in it?
 *
 * <p>Sources: JEDEC device standards JESD79 (DDR), 79-2, 79-3 with 79-3-1 (DDR3L), 79-4 and 79-5 and module standard JESD21-C
 * for generation, key, pins and supply voltage, from memory; pin counts and voltages seen in public teaching material.
 */
public final class ModuleFit {
    /** Generation with its module supply voltages; each has its key in another place. */
    public enum Generation implements Choice {
        DDR("DDR", 2.5, 2.5),
        DDR2("DDR2", 1.8, 1.8),
        DDR3("DDR3", 1.35, 1.5),
        DDR4("DDR4", 1.2, 1.2),
        DDR5("DDR5", 1.1, 1.1);

        private final String words;

        private final double lowest;
        private final double highest;

        Generation(String words, double lowest, double highest) {
            this.words = words;
            this.lowest = lowest;
            this.highest = highest;
        }

        @Override
        public String words() {
            return words;
        }

        boolean allows(double volts) {
            return Math.abs(volts - lowest) < 0.001 || Math.abs(volts - highest) < 0.001;
        }

        String voltages() {
            return lowest == highest ? of(highest) + " V" : of(lowest) + " or " + of(highest) + " V";
        }

        /** Contacts of the full-size and of the small module. */
        int pins(Form form) {
            int[] counts = switch (this) {
                case DDR -> new int[] {184, 200};
                case DDR2 -> new int[] {240, 200};
                case DDR3 -> new int[] {240, 204};
                case DDR4 -> new int[] {288, 260};
                case DDR5 -> new int[] {288, 262};
            };
            return counts[form.ordinal()];
        }
    }

    public enum Form implements Choice {
        DIMM("DIMM"),
        SO_DIMM("SO-DIMM");

        private final String words;

        Form(String words) {
            this.words = words;
        }

        @Override
        public String words() {
            return words;
        }
    }

    /** What stands between the memory controller and the chips. */
    public enum Buffering implements Choice {
        UNBUFFERED("unbuffered"),
        REGISTERED("registered"),
        LOAD_REDUCED("load-reduced");

        private final String words;

        Buffering(String words) {
            this.words = words;
        }

        @Override
        public String words() {
            return words;
        }
    }

    /** What the board does with error correction. */
    public enum Correction implements Choice {
        NOT_SUPPORTED("not supported"),
        SUPPORTED("supported"),
        REQUIRED("required");

        private final String words;

        Correction(String words) {
            this.words = words;
        }

        @Override
        public String words() {
            return words;
        }
    }

    /** A module that is in the board already. */
    public record Installed(
            @Ask(label = "Size", unit = "GB") double size,
            @Ask(label = "Buffering") Buffering buffering,
            @Ask(label = "With error correction") boolean corrects,
            @Ask(label = "Speed", unit = "MT/s") int speed) {}

    public record Input(
            @Ask(label = "Board's generation") Generation boardGeneration,
            @Ask(label = "Board's slot form") Form boardForm,

            @Ask(label = "Board's module voltage", unit = "V")
            double boardVoltage,

            @Ask(label = "Board's buffering") Buffering boardBuffering,
            @Ask(label = "Board and error correction") Correction boardCorrection,

            @Ask(label = "Board's highest speed", unit = "MT/s")
            int boardSpeed,

            @Ask(label = "Slots", unit = "1") int slots,

            @Ask(label = "Largest module for a slot", unit = "GB", hint = "Board manual")
            double largest,

            @Ask(label = "Most memory in all", unit = "GB", hint = "The smaller of board's and processor's limit")
            double most,

            @Ask(label = "Modules that stay") List<Installed> installed,
            @Ask(label = "Module's generation") Generation generation,
            @Ask(label = "Module's form") Form form,

            @Ask(label = "Module's voltage", unit = "V", hint = "The lowest it is marked for; 1.35 for DDR3L")
            double voltage,

            @Ask(label = "Module's buffering") Buffering buffering,

            @Ask(label = "Module with error correction", hint = "Chips beside the data chips, not on-die")
            boolean corrects,

            @Ask(label = "Module's speed", unit = "MT/s") int speed,
            @Ask(label = "Module's size", unit = "GB") double size) {
        private static final double SMALLEST = 0.001;
        private static final double LARGEST = 65_536;

        public Input {
            InputCheck check = new InputCheck();
            check.present("boardGeneration", boardGeneration);
            check.present("boardForm", boardForm);
            voltage(check, "boardVoltage", boardVoltage, boardGeneration);
            check.present("boardBuffering", boardBuffering);
            check.present("boardCorrection", boardCorrection);
            speed(check, "boardSpeed", boardSpeed);
            check.rule(slots >= 1 && slots <= 64, "slots", "give 1 to 64 slots");
            check.within("largest", largest, SMALLEST, LARGEST, "GB");
            check.within("most", most, SMALLEST, LARGEST, "GB");
            installed = check.list("installed", installed, 0, 64, (path, module) -> {
                check.within(path + ".size", module.size(), SMALLEST, LARGEST, "GB");
                check.present(path + ".buffering", module.buffering());
                speed(check, path + ".speed", module.speed());
            });
            check.rule(installed.size() <= slots, "installed", "there are more modules than slots");
            check.present("generation", generation);
            check.present("form", form);
            voltage(check, "voltage", voltage, generation);
            check.present("buffering", buffering);
            speed(check, "speed", speed);
            check.within("size", size, SMALLEST, LARGEST, "GB");
            check.done();
        }

        private static void speed(InputCheck check, String field, int value) {
            check.rule(value >= 100 && value <= 20_000, field, "give a speed from 100 to 20000 MT/s");
        }

        private static void voltage(InputCheck check, String field, double value, @Nullable Generation generation) {
            if (check.within(field, value, 0.5, 4, "V") && generation != null) {
                check.rule(
                        generation.allows(value),
                        field,
                        generation + " modules run at " + generation.voltages() + ", not " + of(value));
            }
        }

        double inPlace() {
            return installed.stream().mapToDouble(Installed::size).sum();
        }
    }

    private static final Citation GENERATION_SOURCE = Citation.fromMemory(
            "JEDEC JESD79, DDR SDRAM standards; JESD21-C, Configurations for Solid State Memories, key of the module");
    private static final Citation VOLTAGE_SOURCE =
            Citation.fromMemory("JEDEC JESD79-3, DDR3 SDRAM Standard, and its addendum 1 on 1.35 V");
    private static final Citation MODULE_SOURCE =
            Citation.fromMemory("JEDEC JESD21-C, Configurations for Solid State Memories");
    private static final Citation MANUAL = Citation.given("manual of the board");

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "module-fit",
            2,
            Trade.MEMORY,
            "Memory module fit",
            "Does this memory module fit the board and the modules that stay in it?",
            new Input(
                    Generation.DDR4,
                    Form.DIMM,
                    1.2,
                    Buffering.UNBUFFERED,
                    Correction.NOT_SUPPORTED,
                    3200,
                    4,
                    32,
                    128,
                    List.of(new Installed(16, Buffering.UNBUFFERED, false, 2666)),
                    Generation.DDR4,
                    Form.DIMM,
                    1.2,
                    Buffering.UNBUFFERED,
                    false,
                    3200,
                    16),
            ModuleFit::calculate);

    private ModuleFit() {}

    public static Result calculate(Input in) {
        ResultDraft draft = new ResultDraft();
        generation(draft, in);
        form(draft, in);
        voltage(draft, in);
        buffering(draft, in);
        correction(draft, in);
        slot(draft, in);
        sizes(draft, in);
        speed(draft, in);
        draft.assume("The board's manual and its maker's list of modules go before every rule here.");
        draft.assume("The machine is off and unplugged while modules are changed.");
        draft.caution("STATIC");
        return FitVerdict.judge(draft);
    }

    private static void generation(ResultDraft draft, Input in) {
        boolean same = in.generation() == in.boardGeneration();
        draft.rule(
                "generation",
                same ? Level.GOOD : Level.BAD,
                "Board " + in.boardGeneration().words() + " with "
                        + in.boardGeneration().pins(in.boardForm()) + " contacts, module "
                        + in.generation().words() + " with " + in.generation().pins(in.form()) + "."
                        + (same ? "" : " The key is in another place: never force it."),
                GENERATION_SOURCE);
    }

    private static void form(ResultDraft draft, Input in) {
        draft.rule(
                "form factor",
                in.form() == in.boardForm() ? Level.GOOD : Level.BAD,
                "Slot " + in.boardForm().words() + ", module " + in.form().words() + ".",
                MODULE_SOURCE);
    }

    private static void voltage(ResultDraft draft, Input in) {
        String pair = "Board " + of(in.boardVoltage()) + " V, module " + of(in.voltage()) + " V.";
        if (in.boardVoltage() == in.voltage()) {
            draft.rule("voltage", Level.GOOD, pair, VOLTAGE_SOURCE);
        } else if (in.generation() == Generation.DDR3
                && in.boardGeneration() == Generation.DDR3
                && in.voltage() < in.boardVoltage()) {
            draft.rule("voltage", Level.GOOD, pair + " A DDR3L module also runs at 1.5 V.", VOLTAGE_SOURCE);
        } else {
            draft.rule("voltage", Level.BAD, pair + " The module is not made for the board's voltage.", VOLTAGE_SOURCE);
        }
    }

    private static void buffering(ResultDraft draft, Input in) {
        boolean same = in.buffering() == in.boardBuffering();
        draft.rule(
                "buffering",
                same ? Level.GOOD : Level.BAD,
                "Board for " + in.boardBuffering().words() + ", module "
                        + in.buffering().words() + ".",
                MODULE_SOURCE);
        boolean mixed = in.installed().stream().anyMatch(m -> m.buffering() != in.buffering());
        draft.rule(
                "mixing of buffering",
                mixed ? Level.BAD : Level.GOOD,
                mixed
                        ? "A module that stays is buffered otherwise: kinds are never mixed in one board."
                        : "No other kind stays in the board.",
                MODULE_SOURCE);
    }

    private static void correction(ResultDraft draft, Input in) {
        String pair = "Board: error correction " + in.boardCorrection().words() + "; module "
                + (in.corrects() ? "with" : "without") + ".";
        boolean mixed = in.installed().stream().anyMatch(m -> m.corrects() != in.corrects());
        if (!in.corrects() && in.boardCorrection() == Correction.REQUIRED) {
            draft.rule("error correction", Level.BAD, pair, MANUAL);
        } else if (in.corrects() && in.boardCorrection() == Correction.NOT_SUPPORTED) {
            draft.rule(
                    "error correction",
                    Level.CAREFUL,
                    pair + " If it starts, errors are not corrected.",
                    Citation.COMMON_PRACTICE);
        } else if (mixed) {
            draft.rule(
                    "error correction",
                    Level.CAREFUL,
                    pair + " One module without switches it off for all, if the board starts.",
                    Citation.COMMON_PRACTICE);
        } else {
            draft.rule("error correction", Level.GOOD, pair, MANUAL);
        }
    }

    private static void slot(ResultDraft draft, Input in) {
        int free = in.slots() - in.installed().size();
        draft.figure(
                "Slots free",
                "slots - modules that stay",
                in.slots() + " - " + in.installed().size(),
                free,
                "1",
                3);
        draft.rule(
                "free slot",
                free > 0 ? Level.GOOD : Level.BAD,
                free + " of " + in.slots() + " slots are free.",
                MANUAL);
    }

    private static void sizes(ResultDraft draft, Input in) {
        double total = in.inPlace() + in.size();
        draft.figure(
                "Memory in all",
                "modules that stay + new module",
                of(in.inPlace()) + " + " + of(in.size()),
                total,
                "GB",
                6);
        draft.figure(
                "Room to the limit",
                "limit - memory in all",
                of(in.most()) + " - " + of(total),
                in.most() - total,
                "GB",
                6);
        draft.rule(
                "size for a slot",
                in.size() <= in.largest() ? Level.GOOD : Level.BAD,
                "Module " + of(in.size()) + " GB, a slot takes up to " + of(in.largest()) + " GB.",
                MANUAL);
        draft.rule(
                "size in all",
                !Side.above(total, in.most()) ? Level.GOOD : Level.BAD,
                "In all " + beside(total, 9, in.most()) + " GB, the limit is " + of(in.most()) + " GB.",
                MANUAL);
    }

    private static void speed(ResultDraft draft, Input in) {
        int others = in.installed().stream().mapToInt(Installed::speed).min().orElse(in.boardSpeed());
        int common = Math.min(Math.min(others, in.speed()), in.boardSpeed());
        draft.figure(
                "Speed they run at, at most",
                "least of board, module and those that stay",
                "min(" + in.boardSpeed() + ", " + in.speed() + ", " + others + ")",
                common,
                "MT/s",
                5);
        boolean slowed = in.speed() < Math.min(others, in.boardSpeed());
        draft.rule(
                "speed",
                slowed ? Level.CAREFUL : Level.GOOD,
                slowed
                        ? "The new module slows the others down to " + common + " MT/s."
                        : "All run at " + common + " MT/s at most.",
                Citation.COMMON_PRACTICE);
    }
}
