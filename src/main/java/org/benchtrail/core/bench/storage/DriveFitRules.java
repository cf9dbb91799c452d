package org.benchtrail.core.bench.storage;

import static org.benchtrail.core.bench.Numeral.of;

import org.benchtrail.core.bench.Citation;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.storage.DriveFit.Bay;
import org.benchtrail.core.bench.storage.DriveFit.FormFactor;
import org.benchtrail.core.bench.storage.DriveFit.Input;
import org.benchtrail.core.bench.storage.DriveFit.Interface;
import org.benchtrail.core.bench.storage.DriveFit.Media;
import org.benchtrail.core.bench.storage.DriveFit.SectorFormat;
import org.benchtrail.core.bench.storage.DriveFit.SiteList;

/** The rules of the drive fit, each giving one row: what it found, how it is to be taken, and where it comes from. */
final class DriveFitRules {
    private static final Citation SAS_SOURCE =
            Citation.seen("INCITS 376, Serial Attached SCSI; SFF-8482 and SFF-8680, receptacle");
    private static final Citation SATA_SOURCE =
            Citation.seen("INCITS 376, Serial Attached SCSI; Serial ATA Revision 3, key of the connector");
    private static final Citation PATA_SOURCE =
            Citation.fromMemory("INCITS 361, AT Attachment with Packet Interface 6");
    private static final Citation PCIE_SOURCE =
            Citation.fromMemory("PCI Express M.2 Specification; SFF-8639 and SFF-TA-1001, universal connector");
    private static final Citation FORM_SOURCE =
            Citation.fromMemory("SFF-8201 and SFF-8301, form factor of drives; PCI Express M.2 Specification");
    private static final Citation SECTOR_SOURCE = Citation.seen("ATA Command Set; SCSI Block Commands, READ CAPACITY");
    private static final Citation BLOCK_SOURCE = Citation.fromMemory("SNIA Common RAID Disk Data Format Specification");
    private static final Citation MEDIA_SOURCE =
            Citation.fromMemory("Zoned Block Commands; Zoned-device ATA Command Set");

    /** 2^28 blocks of 512 bytes. */
    private static final double BYTES_OF_28_BITS = 0x1p28 * 512;
    /** 2^32 blocks of 512 bytes. */
    private static final double BYTES_OF_MBR = 0x1p32 * 512;

    private final ResultDraft draft;
    private final Input in;

    private DriveFitRules(ResultDraft draft, Input in) {
        this.draft = draft;
        this.in = in;
    }

    static void apply(ResultDraft draft, Input in) {
        DriveFitRules rules = new DriveFitRules(draft, in);
        rules.plug();
        rules.mixing();
        rules.form();
        rules.height();
        rules.sectors();
        rules.blocks();
        rules.addressing();
        rules.media();
        rules.speed();
        rules.power();
        rules.list();
    }

    private void row(String name, Level outcome, String sentence, Citation source) {
        draft.rule(name, outcome, sentence, source);
    }

    private void plug() {
        switch (in.newInterface()) {
            case SAS -> sasDrive();
            case SATA -> sataDrive();
            case PATA -> plain(in.bay() == Bay.PATA, PATA_SOURCE, "PATA goes into a PATA bay only, short of a bridge.");
            case M2_SATA ->
                plain(
                        in.bay() == Bay.M2_SATA || in.bay() == Bay.M2_BOTH,
                        PCIE_SOURCE,
                        "An M.2 drive that speaks SATA needs an M.2 bay wired for SATA; the key of the edge alone does"
                                + " not tell.");
            case M2_NVME ->
                plain(
                        in.bay() == Bay.M2_PCIE || in.bay() == Bay.M2_BOTH,
                        PCIE_SOURCE,
                        "An M.2 drive that speaks NVMe needs an M.2 bay wired for PCIe; the key of the edge alone does"
                                + " not tell.");
            case U2_NVME -> u2Drive();
            case U3_NVME ->
                plain(in.bay() == Bay.U2 || in.bay() == Bay.U3, PCIE_SOURCE, "A U.3 drive works in a U.2 or U.3 bay.");
        }
    }

    private void plain(boolean holds, Citation source, String sentence) {
        row(
                "interface",
                holds ? Level.GOOD : Level.BAD,
                "Bay " + in.bay().words() + ", drive " + in.newInterface().words() + ". " + sentence,
                source);
    }

    private void sasDrive() {
        if (in.bay() == Bay.SAS) {
            plain(true, SAS_SOURCE, "Like in like.");
        } else if (universal()) {
            ifWired();
        } else {
            plain(
                    false,
                    SATA_SOURCE,
                    "A SAS drive never goes into such a bay: the plug is keyed and the protocol is another.");
        }
    }

    private void sataDrive() {
        if (universal()) {
            ifWired();
        } else if (in.bay() != Bay.SAS) {
            plain(in.bay() == Bay.SATA, SATA_SOURCE, "A SATA drive needs a SATA bay, or a SAS bay for its plug.");
        } else if (in.member() && in.oldInterface() == Interface.SAS) {
            row(
                    "interface",
                    Level.BAD,
                    "A SAS bay takes a SATA drive by its plug, but for a failed SAS drive in an array it is not like"
                            + " for like.",
                    SAS_SOURCE);
        } else {
            row(
                    "interface",
                    Level.CAREFUL,
                    "A SAS bay takes a SATA drive by its plug; the link runs at the lower speed, half duplex, on a"
                            + " single port.",
                    SAS_SOURCE);
        }
    }

    /** The receptacle of U.2 and U.3 also takes SAS and SATA plugs. */
    private boolean universal() {
        return in.bay() == Bay.U2 || in.bay() == Bay.U3;
    }

    private void ifWired() {
        row(
                "interface",
                Level.CAREFUL,
                "Bay " + in.bay().words() + " takes a " + in.newInterface().words()
                        + " drive by its plug and runs it only if a controller for it is wired to the bay: check.",
                PCIE_SOURCE);
    }

    private void u2Drive() {
        if (in.bay() == Bay.U3) {
            row(
                    "interface",
                    Level.CAREFUL,
                    "A U.2 drive works in a U.3 bay only if the bay is wired for it: check.",
                    PCIE_SOURCE);
        } else {
            plain(in.bay() == Bay.U2, PCIE_SOURCE, "A U.2 drive is PCIe: no use in a bay for SATA or SAS alone.");
        }
    }

    private void mixing() {
        String pair = "Failed " + in.oldInterface().words() + ", replacement "
                + in.newInterface().words() + ".";
        if (!in.member()) {
            row("mixing inside an array", Level.GOOD, "The drive goes into no array.", Citation.COMMON_PRACTICE);
        } else if (in.oldInterface() == in.newInterface()) {
            row("mixing inside an array", Level.GOOD, pair + " Like for like.", Citation.COMMON_PRACTICE);
        } else {
            row(
                    "mixing inside an array",
                    Level.BAD,
                    pair + " Members of one array speak one interface.",
                    Citation.COMMON_PRACTICE);
        }
    }

    private void form() {
        FormFactor bay = in.bayForm();
        FormFactor drive = in.newForm();
        String pair = "Bay " + bay + ", drive " + drive + ".";
        if (bay == drive) {
            row("form factor", Level.GOOD, pair, FORM_SOURCE);
        } else if (bay == FormFactor.INCH_3_5 && drive == FormFactor.INCH_2_5) {
            row(
                    "form factor",
                    in.carrier() ? Level.CAREFUL : Level.BAD,
                    pair
                            + (in.carrier()
                                    ? " With the carrier; see that it brings the plug to its place."
                                    : " A carrier is needed."),
                    FORM_SOURCE);
        } else {
            row("form factor", Level.BAD, pair, FORM_SOURCE);
        }
    }

    private void height() {
        boolean holds = in.newHeight() <= in.bayHeight();
        row(
                "height",
                holds ? Level.GOOD : Level.BAD,
                "Drive " + of(in.newHeight()) + " mm, bay up to " + of(in.bayHeight()) + " mm.",
                FORM_SOURCE);
    }

    private void sectors() {
        SectorFormat old = in.oldSectors();
        SectorFormat replacement = in.newSectors();
        String pair = "Set " + words(old) + ", replacement " + words(replacement) + ".";
        if (old == replacement) {
            boolean native4k = replacement == SectorFormat.F4KN && !in.member();
            row(
                    "sector format",
                    native4k ? Level.CAREFUL : Level.GOOD,
                    pair + (native4k ? " 4Kn needs firmware and drivers that know it." : ""),
                    SECTOR_SOURCE);
        } else if (old.logical() == replacement.logical()) {
            row(
                    "sector format",
                    Level.CAREFUL,
                    pair + " Same logical size; writes that do not line up cost a read, change and write.",
                    SECTOR_SOURCE);
        } else {
            row(
                    "sector format",
                    in.member() ? Level.BAD : Level.CAREFUL,
                    pair
                            + (in.member()
                                    ? " Another logical size cannot join the set."
                                    : " The content cannot be copied block by block, and firmware must know the size."),
                    SECTOR_SOURCE);
        }
    }

    private static String words(SectorFormat format) {
        return format.logical() + " logical on " + format.physical() + " physical bytes";
    }

    private void blocks() {
        double need = in.oldBlocks() * in.oldSectors().logical();
        double have = in.blocks() * in.newSectors().logical();
        row(
                "blocks",
                have >= need ? Level.GOOD : Level.BAD,
                of(in.blocks(), 15) + " blocks make " + of(have, 15) + " B; " + of(need, 15) + " B are needed"
                        + (have >= need ? "." : ": the label may be the same, the drive is too small."),
                BLOCK_SOURCE);
    }

    private void addressing() {
        double have = in.blocks() * in.newSectors().logical();
        boolean beyond = in.bay() == Bay.PATA && have > BYTES_OF_28_BITS;
        row(
                "addressing",
                beyond ? Level.CAREFUL : Level.GOOD,
                beyond
                        ? of(have, 15) + " B; a controller that counts blocks in 28 bits ends at "
                                + of(BYTES_OF_28_BITS, 15) + " B: check that it counts in 48."
                        : of(have, 15) + " B can be addressed in bay "
                                + in.bay().words() + ".",
                PATA_SOURCE);
        if (have > BYTES_OF_MBR && in.newSectors().logical() == 512) {
            draft.assume("A partition table of the MBR kind ends at " + of(BYTES_OF_MBR, 15)
                    + " B on blocks of 512 bytes; the rest needs a GPT.");
        }
    }

    private void media() {
        Media old = in.oldMedia();
        Media replacement = in.newMedia();
        boolean same = old == replacement;
        boolean shingled = in.member() && replacement == Media.DISK_SMR;
        String advice = shingled
                ? " Shingled recording may be too slow for a rebuild."
                : same ? "" : " Match the media in a set.";
        row(
                "media class",
                same && !shingled ? Level.GOOD : Level.CAREFUL,
                "Failed " + old + ", replacement " + replacement + "." + advice,
                MEDIA_SOURCE);
    }

    private void speed() {
        boolean same = in.oldSpeed() == in.newSpeed();
        row(
                "speed",
                same || !in.member() ? Level.GOOD : Level.CAREFUL,
                "Failed " + in.oldSpeed() + " 1/min, replacement " + in.newSpeed() + " 1/min."
                        + (same || !in.member() ? "" : " The set runs at the pace of its slowest member."),
                MEDIA_SOURCE);
    }

    private void power() {
        boolean holds = in.newPower() <= in.bayPower();
        row(
                "power",
                holds ? Level.GOOD : Level.BAD,
                "Drive up to " + of(in.newPower()) + " W, bay " + of(in.bayPower()) + " W.",
                Citation.given("datasheets of drive and bay"));
    }

    private void list() {
        Level outcome = in.siteList() == SiteList.NOT_LISTED ? Level.CAREFUL : Level.GOOD;
        String sentence = switch (in.siteList()) {
            case NO_LIST -> "The site keeps no list.";
            case LISTED -> "The drive is on the site's list.";
            case NOT_LISTED -> "The drive is not on the site's list: have it approved first.";
        };
        row("certified list", outcome, sentence, Citation.COMMON_PRACTICE);
    }
}
