package org.benchtrail.core.training;

import static java.util.Map.entry;
import static org.benchtrail.core.practice.job.DesktopAct.*;
import static org.benchtrail.core.practice.job.DriveAct.*;
import static org.benchtrail.core.practice.job.PowerAct.*;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.practice.job.DesktopAct;
import org.benchtrail.core.practice.job.DeviceAct;
import org.benchtrail.core.practice.job.DriveAct;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.PowerAct;

/**
 * Which finding of the catalogue an act of a device answers, by which acts a cause is repaired, and which causes are right for a
 * fault. Words only: no figure passes from the catalogue to the device, and none back.
 *
 * @param category id in the catalogue
 * @param findings by act
 * @param repairs acts by cause; a cause that is not named cannot be repaired on the device
 * @param causes by fault, any of which is a right name for it
 * @param told values of findings that the report of the job tells
 */
public record Ties(
        String category,
        Map<DeviceAct, String> findings,
        Map<String, List<DeviceAct>> repairs,
        Map<String, Set<String>> causes,
        Map<String, String> told) {

    public static Ties of(Family family) {
        return switch (family) {
            case DESKTOP -> HEAT;
            case DRIVE -> STORAGE;
            case POWER -> MAINS;
            case SUPPLY -> SupplyTies.TIES;
            case MEMORY -> MemoryTies.TIES;
            case ARRAY -> ArrayTies.TIES;
        };
    }

    public Optional<String> finding(DeviceAct act) {
        return Optional.ofNullable(findings.get(act));
    }

    /** The act that answers a finding; empty if the device cannot. */
    public Optional<DeviceAct> answering(String finding) {
        return findings.entrySet().stream()
                .filter(e -> e.getValue().equals(finding))
                .map(Map.Entry::getKey)
                .findFirst();
    }

    private static final Ties HEAT = new Ties(
            "heat",
            Map.ofEntries(
                    entry(ASK_SETTINGS, "h17"),
                    entry(ASK_PLACE, "h18"),
                    entry(ASK_NOISE, "h30"),
                    entry(DesktopAct.ASK_OFF, "h5"),
                    entry(LOOK_PLACE, "h32"),
                    entry(LOOK_DUST, "h4"),
                    entry(LOOK_FAN, "h21"),
                    entry(LOOK_SINK, "h14"),
                    entry(DesktopAct.LOOK_CABLE, "h15"),
                    entry(DesktopAct.LISTEN, "h9"),
                    entry(DesktopAct.LOOK_LOG, "h33"),
                    entry(LOOK_FIRMWARE, "h12"),
                    entry(DIE_IDLE, "h2"),
                    entry(FROM_COLD, "h36"),
                    entry(DIE_LOAD, "h1"),
                    entry(FAN_SPEED, "h3"),
                    entry(CLOCK_SHARE, "h6"),
                    entry(CLOCK_RATED, "h11"),
                    entry(INLET, "h8"),
                    entry(COVER_OPEN, "h7"),
                    entry(JUMP, "h20"),
                    entry(RESISTANCE, "h22"),
                    entry(USE_AT_REST, "h10")),
            Map.of(
                    "heat/dust", List.of(CLEAN),
                    "heat/fan-failed", List.of(REPLACE_FAN),
                    "heat/paste-dried", List.of(PASTE),
                    "heat/heat-sink-loose", List.of(PASTE),
                    "heat/blocked-airflow-or-hot-room", List.of(CLEAR_VENTS),
                    "heat/hot-air-recirculates", List.of(CLEAR_VENTS),
                    "heat/fan-curve-or-sensor", List.of(FAN_CURVE, SENSOR_TABLE),
                    "heat/sensor-wrong", List.of(SENSOR_TABLE),
                    "heat/clock-raised", List.of(DEFAULT_CLOCK)),
            Map.ofEntries(
                    entry("DUST", Set.of("heat/dust")),
                    entry("SLOW_FAN", Set.of("heat/fan-failed")),
                    entry("FAN_CURVE", Set.of("heat/fan-curve-or-sensor")),
                    entry("FAN_STALLED", Set.of("heat/fan-failed")),
                    entry("DRIED_PASTE", Set.of("heat/paste-dried")),
                    entry("LOOSE_SINK", Set.of("heat/heat-sink-loose")),
                    entry("OVERCLOCK", Set.of("heat/clock-raised")),
                    entry("CASE_BLOCKED", Set.of("heat/blocked-airflow-or-hot-room")),
                    entry("HOT_ROOM", Set.of("heat/blocked-airflow-or-hot-room", "heat/dust")),
                    entry("SENSOR_HIGH", Set.of("heat/sensor-wrong", "heat/fan-curve-or-sensor"))),
            Map.of());

    private static final Ties STORAGE = new Ties(
            "storage",
            Map.ofEntries(
                    entry(ASK_SLOW, "s1"),
                    entry(ASK_MOVED, "s21"),
                    entry(ASK_COMES, "s22"),
                    entry(LOOK_BUSY, "s34"),
                    entry(DriveAct.LISTEN, "s5"),
                    entry(DriveAct.LOOK_CABLE, "s36"),
                    entry(LOOK_LIST, "s6"),
                    entry(LOOK_SELF, "s12"),
                    entry(LOOK_SNAPSHOTS, "s23"),
                    entry(COUNTERS, "s3"),
                    entry(CRC_GROWTH, "s4"),
                    entry(FREE_SPACE, "s7"),
                    entry(ACTIVE_TIME, "s2"),
                    entry(LATENCY, "s8"),
                    entry(TEMPERATURE, "s10")),
            Map.of(
                    "storage/drive-failing", List.of(REPLACE),
                    "storage/failure-predicted", List.of(REPLACE),
                    "storage/drive-dead", List.of(REPLACE),
                    "storage/drive-cable", List.of(OTHER_CABLE),
                    "storage/port-or-controller", List.of(OTHER_PORT),
                    "storage/bay-or-slot", List.of(OTHER_PORT),
                    "storage/drive-not-seated", List.of(RESEAT),
                    "storage/drive-too-hot", List.of(COOL),
                    "storage/disk-full", List.of(MAKE_ROOM),
                    "storage/background-load", List.of(STOP_TASK)),
            Map.of(
                    "FAILING_SURFACE", Set.of("storage/drive-failing", "storage/failure-predicted"),
                    "SCAR_AND_CABLE", Set.of("storage/drive-cable"),
                    "DATA_CABLE", Set.of("storage/drive-cable"),
                    "PORT", Set.of("storage/port-or-controller", "storage/bay-or-slot"),
                    "POWER_PLUG", Set.of("storage/drive-not-seated"),
                    "HOT_DRIVE", Set.of("storage/drive-too-hot"),
                    "DISK_FULL", Set.of("storage/disk-full"),
                    "BACKGROUND_LOAD", Set.of("storage/background-load")),
            Map.of("s6", "no"));

    private static final Ties MAINS = new Ties(
            "power",
            Map.ofEntries(
                    entry(ASK_SWITCHES, "p40"),
                    entry(ASK_DARK, "p45"),
                    entry(PowerAct.ASK_OFF, "p38"),
                    entry(ASK_WORK, "p24"),
                    entry(LOOK_FED, "p30"),
                    entry(LOOK_LAMP, "p25"),
                    entry(LOOK_AGE, "p43"),
                    entry(PowerAct.LOOK_LOG, "p17"),
                    entry(LOOK_LEADS, "p18"),
                    entry(LOOK_PRINTER, "p15"),
                    entry(LOOK_SPARE, "p16"),
                    entry(LOOK_STRIP, "p13"),
                    entry(LOOK_PROGRAM, "p36"),
                    entry(LOOK_PLUG, "p42"),
                    entry(PANEL, "p10"),
                    entry(OUTLET, "p3"),
                    entry(SELF_TEST, "p9")),
            Map.of(
                    "power/ups-battery-worn", List.of(NEW_BATTERY),
                    "power/outlet-without-battery", List.of(MOVE_SERVER),
                    "power/laser-printer-on-ups", List.of(MOVE_PRINTER),
                    "power/ups-overloaded", List.of(MOVE_PRINTER),
                    "power/dispensable-loads-on-battery", List.of(MOVE_PRINTER),
                    "power/mains-out-of-window", List.of(SET_TRANSFER, OTHER_CIRCUIT)),
            Map.of(
                    "WORN_BATTERY", Set.of("power/ups-battery-worn"),
                    "BAD_BLOCK", Set.of("power/ups-battery-worn"),
                    "SERVER_WITHOUT_BATTERY", Set.of("power/outlet-without-battery"),
                    "PRINTER_ON_BATTERY", Set.of("power/laser-printer-on-ups", "power/ups-overloaded"),
                    "LONG_CIRCUIT", Set.of("power/mains-out-of-window"),
                    "SENSITIVITY", Set.of("power/mains-out-of-window")),
            Map.of("p1", "no", "p19", "no", "p30", "yes"));
}
