package org.benchtrail.bench;

import static java.util.Map.entry;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.bench.cooling.RoomHeat.InletClass;
import org.benchtrail.core.bench.memory.ModuleFit;
import org.benchtrail.core.bench.network.CopperLink.Category;
import org.benchtrail.core.bench.network.PathThroughput.Acknowledgement;
import org.benchtrail.core.bench.network.Transfer.ByteUnit;
import org.benchtrail.core.bench.power.BatteryHealth;
import org.benchtrail.core.bench.power.Mains.Region;
import org.benchtrail.core.bench.power.Rails.Edition;
import org.benchtrail.core.bench.power.UpsOutlets.Feed;
import org.benchtrail.core.bench.storage.DriveFit;
import org.benchtrail.core.bench.storage.DriveHealth;
import org.benchtrail.core.bench.voice.Voice.Codec;
import org.benchtrail.platform.Option;

/** The choices of the bench in the trade's spelling, where the constant's name in small letters would not be it. */
final class ChoiceWords {
    private static final Map<Enum<?>, String> WORDS = Map.ofEntries(
            entry(Edition.ATX12V_2_0, "ATX12V 2.0"),
            entry(Edition.ATX_2_1, "ATX 2.1"),
            entry(Edition.ATX_3, "ATX 3.x"),
            entry(Region.EUROPE_230_V, "Europe, 230 V"),
            entry(Region.NORTH_AMERICA_120_V_SERVICE, "North America, 120 V, at the service entrance"),
            entry(Region.NORTH_AMERICA_120_V_OUTLET, "North America, 120 V, at the outlet"),
            entry(Region.NORTH_AMERICA_120_V_OUTLET_OLDER, "North America, 120 V, at the outlet, older edition"),
            entry(Feed.ANOTHER_UPS, "another UPS"),
            entry(Feed.EXTENSION_CORD_OR_STRIP, "extension cord or power strip"),
            entry(BatteryHealth.Kind.PORTABLE, "portable machine's battery"),
            entry(BatteryHealth.Kind.STANDBY_LEAD_ACID, "standby battery, lead-acid"),
            entry(InletClass.A1, "A1"),
            entry(InletClass.A2, "A2"),
            entry(InletClass.A3, "A3"),
            entry(InletClass.A4, "A4"),
            entry(DriveHealth.Form.ATA_ROWS, "ATA attributes as rows"),
            entry(DriveHealth.Form.ATA_SECTOR, "ATA data sector, hexadecimal"),
            entry(DriveHealth.Form.NVME_PAGE, "NVMe health log page, hexadecimal"),
            entry(DriveFit.Bay.SATA, "SATA"),
            entry(DriveFit.Bay.SAS, "SAS"),
            entry(DriveFit.Bay.PATA, "parallel ATA"),
            entry(DriveFit.Bay.M2_SATA, "M.2, SATA only"),
            entry(DriveFit.Bay.M2_PCIE, "M.2, PCIe only"),
            entry(DriveFit.Bay.M2_BOTH, "M.2, SATA and PCIe"),
            entry(DriveFit.Bay.U2, "U.2"),
            entry(DriveFit.Bay.U3, "U.3"),
            entry(DriveFit.Interface.SATA, "SATA"),
            entry(DriveFit.Interface.SAS, "SAS"),
            entry(DriveFit.Interface.PATA, "parallel ATA"),
            entry(DriveFit.Interface.M2_SATA, "M.2, SATA"),
            entry(DriveFit.Interface.M2_NVME, "M.2, NVMe"),
            entry(DriveFit.Interface.U2_NVME, "U.2, NVMe"),
            entry(DriveFit.Interface.U3_NVME, "U.3, NVMe"),
            entry(DriveFit.SectorFormat.F512N, "512n: 512 bytes throughout"),
            entry(DriveFit.SectorFormat.F512E, "512e: 512 bytes, 4096 inside"),
            entry(DriveFit.SectorFormat.F4KN, "4Kn: 4096 bytes throughout"),
            entry(DriveFit.SiteList.NO_LIST, "the site keeps none"),
            entry(DriveFit.SiteList.LISTED, "this drive is on it"),
            entry(DriveFit.SiteList.NOT_LISTED, "this drive is not on it"),
            entry(ModuleFit.Generation.DDR, "DDR"),
            entry(ModuleFit.Generation.DDR2, "DDR2"),
            entry(ModuleFit.Generation.DDR3, "DDR3"),
            entry(ModuleFit.Generation.DDR4, "DDR4"),
            entry(ModuleFit.Generation.DDR5, "DDR5"),
            entry(ModuleFit.Form.DIMM, "DIMM"),
            entry(ModuleFit.Form.SO_DIMM, "SO-DIMM"),
            entry(Category.ISO_D, "class D (ISO/IEC 11801)"),
            entry(Category.ISO_E, "class E (ISO/IEC 11801)"),
            entry(Category.ISO_F, "class F (ISO/IEC 11801)"),
            entry(Category.TIA_5E, "category 5e (TIA-568)"),
            entry(Category.TIA_6, "category 6 (TIA-568)"),
            entry(Acknowledgement.EACH, "for each segment"),
            entry(Acknowledgement.DELAYED, "delayed, for every second segment"),
            entry(ByteUnit.MB, "MB (10^6 bytes)"),
            entry(ByteUnit.MIB, "MiB (2^20 bytes)"),
            entry(ByteUnit.GB, "GB (10^9 bytes)"),
            entry(ByteUnit.GIB, "GiB (2^30 bytes)"),
            entry(ByteUnit.TB, "TB (10^12 bytes)"),
            entry(ByteUnit.TIB, "TiB (2^40 bytes)"),
            entry(Codec.G711, "G.711"),
            entry(Codec.G711_CONCEALED, "G.711 with loss concealment"),
            entry(Codec.G729A, "G.729A"),
            entry(Codec.G723_1, "G.723.1"));

    private ChoiceWords() {}

    static String of(Enum<?> choice) {
        String own = WORDS.get(choice);
        return own == null ? Option.words(choice) : own;
    }

    /** The constants of an enum, in its order. */
    static List<Option> options(Class<?> choices) {
        return Arrays.stream(choices.getEnumConstants())
                .map(c -> new Option(((Enum<?>) c).name(), of((Enum<?>) c)))
                .toList();
    }
}
