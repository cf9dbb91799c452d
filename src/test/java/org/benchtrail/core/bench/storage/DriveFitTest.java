package org.benchtrail.core.bench.storage;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.storage.DriveFit.Bay;
import org.benchtrail.core.bench.storage.DriveFit.FormFactor;
import org.benchtrail.core.bench.storage.DriveFit.Input;
import org.benchtrail.core.bench.storage.DriveFit.Interface;
import org.benchtrail.core.bench.storage.DriveFit.Media;
import org.benchtrail.core.bench.storage.DriveFit.SectorFormat;
import org.benchtrail.core.bench.storage.DriveFit.SiteList;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DriveFitTest {
    private static final String LBA = "SFF-8447 / IDEMA LBA1-03 block counts";
    private static final String PLUGS = "T10 SAS and SATA-IO connectors";
    private static final String FORMATS = "T13 ACS / T10 SBC sector formats";

    /** A case that fits in every respect until something is set otherwise. */
    private static final class Case {
        private Bay bay = Bay.SAS;
        private FormFactor bayForm = FormFactor.INCH_3_5;
        private boolean carrier;
        private boolean member = true;
        private Interface old = Interface.SAS;
        private SectorFormat oldSectors = SectorFormat.F512E;
        private double oldBlocks = 7_814_037_168.0;
        private Interface drive = Interface.SAS;
        private FormFactor form = FormFactor.INCH_3_5;
        private double height = 26.1;
        private SectorFormat sectors = SectorFormat.F512E;
        private Media media = Media.DISK_CMR;
        private int speed = 7200;
        private double label = 4000;
        private @Nullable Double blocks;
        private double power = 12;
        private SiteList list = SiteList.LISTED;

        Result result() {
            return DriveFit.calculate(new Input(
                    bay,
                    bayForm,
                    26.1,
                    carrier,
                    25,
                    member,
                    old,
                    oldSectors,
                    Media.DISK_CMR,
                    7200,
                    oldBlocks,
                    drive,
                    form,
                    height,
                    sectors,
                    media,
                    speed,
                    label,
                    blocks,
                    power,
                    list));
        }

        Level rule(String name) {
            return FigureOf.rule(result(), name).outcome();
        }
    }

    @Test
    void likeForLike_fits() {
        Result result = new Case().result();
        assertEquals("fits", result.judgement().words());
        assertEquals(List.of("STATIC", "DATA_LOSS"), result.cautions());
    }

    @Test
    void sataForFailedSas_isRefusedWithEveryRuleNamed() {
        Case c = new Case();
        c.drive = Interface.SATA;
        c.form = FormFactor.INCH_2_5;
        c.height = 7;
        c.sectors = SectorFormat.F4KN;
        c.label = 2000;
        Result result = c.result();
        assertEquals("does not fit", result.judgement().words());
        String reason = result.judgement().reason();
        String refused = reason.substring(reason.indexOf("Not met"), reason.indexOf("Met:"));
        for (String rule : List.of("interface", "mixing inside an array", "form factor", "sector format", "blocks")) {
            assertEquals(Level.BAD, FigureOf.rule(result, rule).outcome(), rule);
            assertTrue(refused.contains(rule), reason);
        }
    }

    @Test
    void sataForFailedSas_isRefusedThoughAllElseIsAlike() {
        Case c = new Case();
        c.drive = Interface.SATA;
        check(PLUGS, Level.BAD, c.result().judgement().level());
        assertEquals(Level.BAD, c.rule("mixing inside an array"));
        assertEquals(Level.GOOD, c.rule("blocks"));
    }

    @Test
    void sataAloneInASasBay_goesInWithAWarning() {
        Case c = new Case();
        c.drive = Interface.SATA;
        c.member = false;
        check(PLUGS, Level.CAREFUL, c.rule("interface"));
        assertEquals("fits with a warning", c.result().judgement().words());
    }

    @ParameterizedTest
    @CsvSource({
        "SAS, SATA, BAD",
        "SAS, SAS, GOOD",
        "SATA, SATA, GOOD",
        "SATA, SAS, CAREFUL",
        "PATA, SATA, BAD",
        "SATA, PATA, BAD",
        "U2_NVME, SATA, BAD",
        "U2_NVME, SAS, BAD",
        "U2_NVME, U2, GOOD",
        "U2_NVME, U3, CAREFUL",
        "U3_NVME, U2, GOOD",
        "SATA, U2, CAREFUL",
        "SAS, U3, CAREFUL",
        "SAS, PATA, BAD"
    })
    void plug(Interface drive, Bay bay, Level outcome) {
        Case c = new Case();
        c.bay = bay;
        c.drive = drive;
        c.member = false;
        check(PLUGS, outcome, c.rule("interface"));
    }

    @ParameterizedTest
    @CsvSource({
        "M2_NVME, M2_SATA, BAD",
        "M2_NVME, M2_PCIE, GOOD",
        "M2_SATA, M2_PCIE, BAD",
        "M2_SATA, M2_BOTH, GOOD",
        "M2_NVME, M2_BOTH, GOOD"
    })
    void cardEdge_doesNotTellTheProtocol(Interface drive, Bay bay, Level outcome) {
        Case c = new Case();
        c.bay = bay;
        c.bayForm = FormFactor.M2_2280;
        c.form = FormFactor.M2_2280;
        c.drive = drive;
        c.member = false;
        assertEquals(outcome, c.rule("interface"));
    }

    @Test
    void sasBayWithSasDrive_neverWarnsAboutTheInterface() {
        for (SectorFormat format : SectorFormat.values()) {
            Case c = new Case();
            c.sectors = format;
            assertEquals(Level.GOOD, c.rule("interface"));
        }
    }

    @ParameterizedTest
    @CsvSource({
        "F512N, F512E, CAREFUL",
        "F512E, F512N, CAREFUL",
        "F512E, F512E, GOOD",
        "F512E, F4KN, BAD",
        "F4KN, F512N, BAD",
        "F4KN, F4KN, GOOD"
    })
    void sectorFormats(SectorFormat old, SectorFormat replacement, Level outcome) {
        Case c = new Case();
        c.oldSectors = old;
        c.sectors = replacement;
        check(FORMATS, outcome, c.rule("sector format"));
    }

    @ParameterizedTest
    @CsvSource({"F512N, 512, 512", "F512E, 512, 4096", "F4KN, 4096, 4096"})
    void sectorSizes(SectorFormat format, int logical, int physical) {
        check(FORMATS, logical, format.logical(), 0);
        check(FORMATS, physical, format.physical(), 0);
    }

    @ParameterizedTest
    @CsvSource({"1000, 1953525168, 1000204886016", "3000, 5860533168, 3000592982016", "4000, 7814037168, 4000787030016"
    })
    void nominalBlocks_areThePublishedOnes(double label, double blocks, double bytes) {
        check(LBA, blocks, DriveFit.nominalBlocks(label, SectorFormat.F512N), 0);
        Case c = new Case();
        c.label = label;
        check(LBA, bytes, FigureOf.value(c.result(), "Offered"), 0);
    }

    /** The 4 KiB count is an eighth of the 512-byte count for the same label: both describe the same bytes. */
    @Test
    void nominalBlocks_ofBothFormatsAgreeInBytes() {
        for (double label : new double[] {100, 1000, 4000, 18_000}) {
            assertEquals(
                    DriveFit.nominalBlocks(label, SectorFormat.F512N) / 8,
                    DriveFit.nominalBlocks(label, SectorFormat.F4KN),
                    0);
        }
    }

    @Test
    void sameLabelButOneBlockLess_doesNotFit() {
        Case c = new Case();
        c.blocks = 7_814_037_167.0;
        assertEquals(Level.BAD, c.rule("blocks"));
        c.blocks = 7_814_037_168.0;
        assertEquals(Level.GOOD, c.rule("blocks"));
    }

    @Test
    void oldAddressing_endsAtThePublishedSizes() {
        Case c = new Case();
        c.member = false;
        c.bay = Bay.PATA;
        c.drive = Interface.PATA;
        c.blocks = 0x1p28;
        check(
                "ATA-6 28-bit limit and MBR limit, recomputed",
                137_438_953_472.0,
                FigureOf.value(c.result(), "Offered"),
                0);
        assertEquals(Level.GOOD, c.rule("addressing"));
        c.blocks = 0x1p28 + 1;
        assertEquals(Level.CAREFUL, c.rule("addressing"));
        c.blocks = 0x1p32;
        check(
                "ATA-6 28-bit limit and MBR limit, recomputed",
                2_199_023_255_552.0,
                FigureOf.value(c.result(), "Offered"),
                0);
        assertTrue(c.result().assumptions().stream().noneMatch(a -> a.contains("MBR")));
        c.blocks = 0x1p32 + 1;
        assertTrue(c.result().assumptions().stream().anyMatch(a -> a.contains("2199023255552")));
    }

    @Test
    void warningsAndRefusals_ofTheOtherRules() {
        Case c = new Case();
        c.form = FormFactor.INCH_2_5;
        assertEquals(Level.BAD, c.rule("form factor"));
        c.carrier = true;
        assertEquals(Level.CAREFUL, c.rule("form factor"));
        c.height = 26.2;
        assertEquals(Level.BAD, c.rule("height"));
        c.media = Media.DISK_SMR;
        assertEquals(Level.CAREFUL, c.rule("media class"));
        c.speed = 5400;
        assertEquals(Level.CAREFUL, c.rule("speed"));
        c.power = 25.1;
        assertEquals(Level.BAD, c.rule("power"));
        c.list = SiteList.NOT_LISTED;
        assertEquals(Level.CAREFUL, c.rule("certified list"));
    }

    @Test
    void impossibleDrives_areRefused() {
        Case flashThatTurns = new Case();
        flashThatTurns.media = Media.FLASH;
        assertEquals(
                "newSpeed",
                assertThrows(Invalid.class, flashThatTurns::result)
                        .problems()
                        .get(0)
                        .field());
        Case halfBlock = new Case();
        halfBlock.blocks = 1e9 + 0.5;
        assertEquals(
                "newBlocks",
                assertThrows(Invalid.class, halfBlock::result).problems().get(0).field());
        Case cardInTray = new Case();
        cardInTray.form = FormFactor.M2_2280;
        assertEquals(
                "newForm",
                assertThrows(Invalid.class, cardInTray::result)
                        .problems()
                        .get(0)
                        .field());
    }
}
