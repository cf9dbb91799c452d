package org.benchtrail.core.bench.storage;

import static org.benchtrail.core.bench.Numeral.of;

import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Choice;
import org.benchtrail.core.bench.FitVerdict;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Trade;
import org.jspecify.annotations.Nullable;

/**
 * Does this replacement drive fit the bay, and the array it goes into?
 *
 * <p>Sources: the decision table of reference section 4.7; each rule names its own, with the mark it has there.
 */
public final class DriveFit {
    /** What the bay is wired for. */
    public enum Bay implements Choice {
        SATA("SATA"),
        SAS("SAS"),
        PATA("parallel ATA"),
        M2_SATA("M.2, SATA only"),
        M2_PCIE("M.2, PCIe only"),
        M2_BOTH("M.2, SATA and PCIe"),
        U2("U.2"),
        U3("U.3");

        private final String words;

        Bay(String words) {
            this.words = words;
        }

        @Override
        public String words() {
            return words;
        }
    }

    /** What the drive speaks, with its plug. */
    public enum Interface implements Choice {
        SATA("SATA"),
        SAS("SAS"),
        PATA("parallel ATA"),
        M2_SATA("M.2, SATA"),
        M2_NVME("M.2, NVMe"),
        U2_NVME("U.2, NVMe"),
        U3_NVME("U.3, NVMe");

        private final String words;

        Interface(String words) {
            this.words = words;
        }

        @Override
        public String words() {
            return words;
        }
    }

    public enum FormFactor implements Choice {
        INCH_2_5("2.5 inch"),
        INCH_3_5("3.5 inch"),
        M2_2242("M.2 2242"),
        M2_2260("M.2 2260"),
        M2_2280("M.2 2280"),
        M2_22110("M.2 22110");

        private final String words;

        FormFactor(String words) {
            this.words = words;
        }

        @Override
        public String words() {
            return words;
        }

        /** As sentences name it. */
        @Override
        public String toString() {
            return words;
        }
    }

    /** Logical and physical block size. */
    public enum SectorFormat implements Choice {
        F512N("512n: 512 bytes throughout", 512, 512),
        F512E("512e: 512 bytes, 4096 inside", 512, 4096),
        F4KN("4Kn: 4096 bytes throughout", 4096, 4096);

        private final String words;

        private final int logical;
        private final int physical;

        SectorFormat(String words, int logical, int physical) {
            this.words = words;
            this.logical = logical;
            this.physical = physical;
        }

        @Override
        public String words() {
            return words;
        }

        public int logical() {
            return logical;
        }

        public int physical() {
            return physical;
        }
    }

    public enum Media implements Choice {
        DISK_CMR("disk, conventional tracks (CMR)"),
        DISK_SMR("disk, shingled tracks (SMR)"),
        FLASH("flash");

        private final String words;

        Media(String words) {
            this.words = words;
        }

        @Override
        public String words() {
            return words;
        }

        /** As sentences name it. */
        @Override
        public String toString() {
            return words;
        }
    }

    /** Whether the site keeps a list of drives it has certified, and whether this one is on it. */
    public enum SiteList implements Choice {
        NO_LIST("the site keeps none"),
        LISTED("this drive is on it"),
        NOT_LISTED("this drive is not on it");

        private final String words;

        SiteList(String words) {
            this.words = words;
        }

        @Override
        public String words() {
            return words;
        }
    }

    public record Input(
            @Ask(label = "Bay wired for") Bay bay,
            @Ask(label = "Bay's form factor") FormFactor bayForm,

            @Ask(label = "Bay's height", unit = "mm", hint = "Highest drive that goes in; for M.2 the clearance")
            double bayHeight,

            @Ask(label = "A carrier from 2.5 to 3.5 inch is at hand")
            boolean carrier,

            @Ask(label = "Power the bay can give", unit = "W")
            double bayPower,

            @Ask(label = "Member of an array", hint = "The drive takes the place of a failed member")
            boolean member,

            @Ask(label = "Interface of the failed drive") Interface oldInterface,
            @Ask(label = "Sector format of the set") SectorFormat oldSectors,
            @Ask(label = "Media of the failed drive") Media oldMedia,

            @Ask(label = "Speed of the failed drive", unit = "1/min", hint = "0 for flash")
            int oldSpeed,

            @Ask(
                    label = "Blocks of the smallest member",
                    unit = "1",
                    hint = "Logical blocks, as the controller or the label says")
            double oldBlocks,

            @Ask(label = "Interface of the replacement") Interface newInterface,
            @Ask(label = "Form factor of the replacement") FormFactor newForm,

            @Ask(label = "Height of the replacement", unit = "mm")
            double newHeight,

            @Ask(label = "Sector format of the replacement") SectorFormat newSectors,
            @Ask(label = "Media of the replacement") Media newMedia,

            @Ask(label = "Speed of the replacement", unit = "1/min", hint = "0 for flash")
            int newSpeed,

            @Ask(label = "Capacity on its label", unit = "GB", hint = "Decimal gigabytes")
            double newLabel,

            @Ask(
                    label = "Blocks of the replacement",
                    unit = "1",
                    hint = "Logical blocks; empty: the published count for its label")
            @Nullable
            Double newBlocks,

            @Ask(label = "Highest power of the replacement", unit = "W", hint = "Datasheet, at start for a disk")
            double newPower,

            @Ask(label = "Site's list of certified drives") SiteList siteList) {
        private static final double MOST_BLOCKS = 1e13;

        public Input {
            InputCheck check = new InputCheck();
            check.present("bay", bay);
            check.present("bayForm", bayForm);
            check.within("bayHeight", bayHeight, 1, 50, "mm");
            check.within("bayPower", bayPower, 0.1, 200, "W");
            check.present("oldInterface", oldInterface);
            check.present("oldSectors", oldSectors);
            media(check, "old", oldMedia, oldSpeed);
            check.within("oldBlocks", oldBlocks, 1, MOST_BLOCKS, "1");
            check.rule(oldBlocks == Math.rint(oldBlocks), "oldBlocks", "give a whole number of blocks");
            check.present("newInterface", newInterface);
            check.present("newForm", newForm);
            check.within("newHeight", newHeight, 1, 50, "mm");
            check.present("newSectors", newSectors);
            media(check, "new", newMedia, newSpeed);
            check.within("newLabel", newLabel, 50.001, 1e6, "GB");
            check.optional("newBlocks", newBlocks, 1, MOST_BLOCKS, "1");
            check.rule(
                    newBlocks == null || newBlocks == Math.rint(newBlocks),
                    "newBlocks",
                    "give a whole number of blocks");
            check.within("newPower", newPower, 0.1, 200, "W");
            check.present("siteList", siteList);
            shapes(check, bay, bayForm, newInterface, newForm);
            check.done();
        }

        private static void media(InputCheck check, String prefix, @Nullable Media media, int speed) {
            check.present(prefix + "Media", media);
            check.rule(speed >= 0 && speed <= 20_000, prefix + "Speed", "give a speed from 0 to 20000 1/min");
            check.rule(
                    media == null || (media == Media.FLASH) == (speed == 0),
                    prefix + "Speed",
                    "give 0 for flash and the speed for a disk");
        }

        private static void shapes(
                InputCheck check,
                @Nullable Bay bay,
                @Nullable FormFactor bayForm,
                @Nullable Interface drive,
                @Nullable FormFactor driveForm) {
            if (bay != null && bayForm != null) {
                check.rule(
                        bay.name().startsWith("M2") == bayForm.name().startsWith("M2"),
                        "bayForm",
                        "an M.2 bay has an M.2 length, any other bay does not");
            }
            if (drive != null && driveForm != null) {
                check.rule(
                        drive.name().startsWith("M2") == driveForm.name().startsWith("M2"),
                        "newForm",
                        "an M.2 drive has an M.2 length, any other drive does not");
            }
        }

        double blocks() {
            Double given = newBlocks;
            return given == null ? nominalBlocks(newLabel, newSectors) : given;
        }
    }

    /**
     * Logical blocks for the capacity on the label: SFF-8447 / IDEMA LBA1-03.
     *
     * @param label decimal gigabytes, above 50; a broken number is rounded down
     */
    static double nominalBlocks(double label, SectorFormat format) {
        double beyond = Math.floor(label) - 50;
        return format.logical() == 512 ? 97_696_368 + 1_953_504 * beyond : 12_212_046 + 244_188 * beyond;
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "drive-fit",
            2,
            Trade.STORAGE,
            "Drive fit",
            "Does this replacement drive fit the bay and the array it goes into?",
            new Input(
                    Bay.SAS,
                    FormFactor.INCH_3_5,
                    26.1,
                    false,
                    25,
                    true,
                    Interface.SAS,
                    SectorFormat.F512E,
                    Media.DISK_CMR,
                    7200,
                    7_814_037_168.0,
                    Interface.SAS,
                    FormFactor.INCH_3_5,
                    26.1,
                    SectorFormat.F512E,
                    Media.DISK_CMR,
                    7200,
                    4000,
                    null,
                    12,
                    SiteList.LISTED),
            DriveFit::calculate);

    private DriveFit() {}

    public static Result calculate(Input in) {
        ResultDraft draft = new ResultDraft();
        DriveFitRules.apply(draft, in);
        blocks(draft, in);
        draft.caution("STATIC");
        if (in.member()) {
            draft.caution("DATA_LOSS");
            draft.assume("The drive that is pulled is the failed one: check bay and serial number twice.");
        }
        draft.assume("The list of the maker of the array or machine goes before every rule here.");
        return FitVerdict.judge(draft);
    }

    private static void blocks(ResultDraft draft, Input in) {
        double need = in.oldBlocks() * in.oldSectors().logical();
        double have = in.blocks() * in.newSectors().logical();
        if (in.newBlocks() == null) {
            boolean small = in.newSectors().logical() == 512;
            draft.step(
                    "Blocks for the label",
                    small ? "97696368 + 1953504 × (GB - 50)" : "12212046 + 244188 × (GB - 50)",
                    (small ? "97696368 + 1953504 × (" : "12212046 + 244188 × (") + of(Math.floor(in.newLabel()))
                            + " - 50)",
                    in.blocks(),
                    "blocks",
                    15);
            draft.assume("The replacement has the block count published for its label in SFF-8447; the formula is from"
                    + " memory, not checked.");
        }
        draft.figure(
                "Needed",
                "blocks × logical size",
                of(in.oldBlocks(), 15) + " × " + in.oldSectors().logical(),
                need,
                "B",
                15);
        draft.figure(
                "Offered",
                "blocks × logical size",
                of(in.blocks(), 15) + " × " + in.newSectors().logical(),
                have,
                "B",
                15);
        draft.figure("Left over", "offered - needed", of(have, 15) + " - " + of(need, 15), have - need, "B", 15);
    }
}
