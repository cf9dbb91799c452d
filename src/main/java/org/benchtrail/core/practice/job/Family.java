package org.benchtrail.core.practice.job;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Parameter;
import org.benchtrail.core.practice.Parameters;
import org.benchtrail.core.practice.Stated;
import org.benchtrail.core.practice.array.ArrayFault;
import org.benchtrail.core.practice.array.ArrayPart;
import org.benchtrail.core.practice.array.ArraySeed;
import org.benchtrail.core.practice.desktop.DesktopFault;
import org.benchtrail.core.practice.desktop.DesktopPart;
import org.benchtrail.core.practice.desktop.DesktopSeed;
import org.benchtrail.core.practice.drive.DriveFault;
import org.benchtrail.core.practice.drive.DrivePart;
import org.benchtrail.core.practice.drive.DriveSeed;
import org.benchtrail.core.practice.memory.MemoryFault;
import org.benchtrail.core.practice.memory.MemoryPart;
import org.benchtrail.core.practice.memory.MemorySeed;
import org.benchtrail.core.practice.power.PowerFault;
import org.benchtrail.core.practice.power.PowerPart;
import org.benchtrail.core.practice.power.PowerSeed;
import org.benchtrail.core.practice.power.PowerSeed.Leads;
import org.benchtrail.core.practice.supply.SupplyFault;
import org.benchtrail.core.practice.supply.SupplyPart;
import org.benchtrail.core.practice.supply.SupplySeed;

/** The devices that there is practice on. */
public enum Family {
    DESKTOP(
            "A desktop that gets too hot",
            "HEAT",
            "Desktop gets too hot and slows down",
            "When I render a film it gets very hot and slow after a while. At rest it is fine.",
            "render desktop",
            DesktopAct.values()),
    DRIVE(
            "A workstation that waits for its drive",
            "STORAGE",
            "Workstation hangs for seconds at a time",
            "Opening a drawing takes minutes, and everything hangs in between. There is a backup every night.",
            "drawing workstation",
            DriveAct.values()),
    POWER(
            "A UPS that does not carry its office",
            "POWER",
            "Office does not get through an outage",
            "At the last short outage we were not carried as we should have been. Work was lost.",
            "office UPS",
            PowerAct.values()),
    SUPPLY(
            "A desk computer that was found off",
            "POWER",
            "Desk computer found off in the middle of its work",
            "It was to export a film overnight, and this morning it was off. It hangs on the wall outlet, no UPS. I left it as it is.",
            "film desk computer",
            SupplyAct.values()),
    MEMORY(
            "A computer that stops at random",
            "MEMORY",
            "Office computer stops several times a day",
            "A page with a code, then it starts again. Another code each time, I think. It always starts.",
            "accounts desk computer",
            MemoryAct.values()),
    ARRAY(
            "A file server whose array complains",
            "ARRAY",
            "File server is slow, or beeps",
            "Saving to the server takes ages since Monday, and I think that I heard it beep. There is a backup every night.",
            "office file server",
            ArrayAct.values());

    private final String title;
    private final String trade;
    private final String report;
    private final String words;
    private final String device;
    private final List<DeviceAct> acts;

    Family(String title, String trade, String report, String words, String device, DeviceAct... acts) {
        this.title = title;
        this.trade = trade;
        this.report = report;
        this.words = words;
        this.device = device;
        this.acts = List.of(acts);
    }

    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }

    public String title() {
        return title;
    }

    public String trade() {
        return trade;
    }

    /** Title of the job, as whoever took the call wrote it. */
    public String report() {
        return report;
    }

    /** What the requester said. */
    public String words() {
        return words;
    }

    public String device() {
        return device;
    }

    public List<DeviceAct> acts() {
        return acts;
    }

    /** @throws org.benchtrail.core.Invalid if the device knows no such act */
    public DeviceAct act(String id) {
        return acts.stream()
                .filter(a -> a.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new Invalid("form", "This device knows no act '" + id + "'."));
    }

    /** The acts in which the trouble of the report is tried again. */
    public DeviceAct tried() {
        return acts.get(acts.size() - 1);
    }

    /** What may be wrong with it; those that look alike stand beside each other. */
    public List<String> faults() {
        return switch (this) {
            case DESKTOP -> named(DesktopFault.values());
            case DRIVE ->
                List.of(
                        "FAILING_SURFACE",
                        "SCAR_AND_CABLE",
                        "DATA_CABLE",
                        "PORT",
                        "POWER_PLUG",
                        "HOT_DRIVE",
                        "DISK_FULL",
                        "BACKGROUND_LOAD");
            case POWER ->
                List.of(
                        "WORN_BATTERY",
                        "BAD_BLOCK",
                        "SERVER_WITHOUT_BATTERY",
                        "PRINTER_ON_BATTERY",
                        "LONG_CIRCUIT",
                        "SENSITIVITY");
            case SUPPLY -> named(SupplyFault.values());
            case MEMORY -> named(MemoryFault.values());
            case ARRAY -> named(ArrayFault.values());
        };
    }

    /** All but the first, which is that there is none. */
    private static List<String> named(Enum<?>... faults) {
        return Arrays.stream(faults).skip(1).map(Enum::name).toList();
    }

    /** What its devices are made with. */
    public List<Parameter> parameters() {
        return switch (this) {
            case DESKTOP -> List.of(DesktopPart.values());
            case DRIVE -> List.of(DrivePart.values());
            case POWER -> List.of(PowerPart.values());
            case SUPPLY -> List.of(SupplyPart.values());
            case MEMORY -> List.of(MemoryPart.values());
            case ARRAY -> List.of(ArrayPart.values());
        };
    }

    /** Those that a fault sets; none where it is in the leads. */
    public Set<Parameter> setBy(String fault) {
        return switch (this) {
            case DESKTOP -> beside(DesktopFault.valueOf(fault).in(Parameters.sound()), DesktopPart.values());
            case DRIVE -> beside(DriveFault.allIn(Parameters.sound(), drives(fault)), DrivePart.values());
            case POWER -> beside(power(fault).in(Parameters.sound()), PowerPart.values());
            case SUPPLY -> beside(SupplyFault.valueOf(fault).in(Parameters.sound()), SupplyPart.values());
            case MEMORY -> beside(MemoryFault.valueOf(fault).in(Parameters.sound()), MemoryPart.values());
            case ARRAY -> beside(ArrayFault.valueOf(fault).in(Parameters.sound()), ArrayPart.values());
        };
    }

    @SafeVarargs
    private static <P extends Enum<P> & Parameter> Set<Parameter> beside(Parameters<P> parts, P... all) {
        return Stream.of(all).filter(p -> parts.get(p) != p.base()).collect(Collectors.toUnmodifiableSet());
    }

    /** The device as it is brought in; empty if no draw shows the symptom. */
    Optional<? extends PracticeDevice> start(Chance chance, String fault, Stated stated) {
        return switch (this) {
            case DESKTOP ->
                DesktopSeed.draw(chance, DesktopFault.valueOf(fault), stated)
                        .map(parts -> DesktopBench.broughtIn(chance, parts));
            case DRIVE ->
                DriveSeed.draw(chance, drives(fault), stated).map(parts -> DriveBench.broughtIn(chance, parts));
            case POWER ->
                PowerSeed.draw(chance, power(fault), leads(fault), stated).map(ups -> PowerBench.found(chance, ups));
            case SUPPLY ->
                SupplySeed.draw(chance, SupplyFault.valueOf(fault), stated)
                        .map(supply -> SupplyBench.found(chance, supply));
            case MEMORY ->
                MemorySeed.draw(chance, MemoryFault.valueOf(fault), stated)
                        .map(memory -> MemoryBench.found(chance, memory));
            case ARRAY ->
                ArraySeed.draw(chance, ArrayFault.valueOf(fault), stated).map(set -> ArrayBench.found(chance, set));
        };
    }

    private static Set<DriveFault> drives(String fault) {
        return fault.equals("SCAR_AND_CABLE")
                ? Set.of(DriveFault.OLD_SCAR, DriveFault.DATA_CABLE)
                : Set.of(DriveFault.valueOf(fault));
    }

    private static Leads leads(String fault) {
        return Stream.of(Leads.values())
                .filter(l -> l.name().equals(fault))
                .findFirst()
                .orElse(Leads.RIGHT);
    }

    private static PowerFault power(String fault) {
        return leads(fault) == Leads.RIGHT ? PowerFault.valueOf(fault) : PowerFault.NONE;
    }
}
