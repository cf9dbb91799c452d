package org.benchtrail.core.readin;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * An object of the UPS-MIB.
 *
 * <p>Source: RFC 1628, 1.3.6.1.2.1.33, every object of the battery, input, output, bypass, alarm, test, control, configuration and
 * identification groups with its SYNTAX and UNITS.
 *
 * @param clause the UNITS clause as it stands in the MIB; empty if it has none
 * @param decimals how many of the last digits are behind the point: 1 for units of 0.1
 * @param unit in which it is recorded; empty for what is no quantity
 * @param part of the UPS, as a point
 * @param least lowest value that the SYNTAX allows
 * @param most highest value that the SYNTAX allows
 * @param lines whether there is one for every line of a table, counted from 1
 */
record UpsObject(
        String name,
        String quantity,
        String part,
        String clause,
        int decimals,
        String unit,
        long least,
        long most,
        boolean lines) {
    private static final long INTEGER = 2_147_483_647L;

    /** Object, quantity, part, UNITS clause, decimals, unit, lowest, highest ({@code -} for the type's own). */
    private static final String TABLE = """
            upsSecondsOnBattery|time on battery|battery|seconds|0|s|0|-
            upsEstimatedMinutesRemaining|time remaining|battery|minutes|0|min|0|-
            upsEstimatedChargeRemaining|charge remaining|battery|percent|0|%|0|100
            upsBatteryVoltage|voltage|battery|0.1 Volt DC|1|V|0|-
            upsBatteryCurrent|current|battery|0.1 Amp DC|1|A|-2147483648|-
            upsBatteryTemperature|temperature|battery|degrees Centigrade|0|°C|-273|-
            upsInputLineBads|times the input was out of tolerance|input||0|count|0|4294967295
            upsInputFrequency|frequency|input line #|0.1 Hertz|1|Hz|0|-
            upsInputVoltage|voltage|input line #|RMS Volts|0|V|0|-
            upsInputCurrent|current|input line #|0.1 RMS Amp|1|A|0|-
            upsInputTruePower|power|input line #|Watts|0|W|0|-
            upsOutputFrequency|frequency|output|0.1 Hertz|1|Hz|0|-
            upsOutputVoltage|voltage|output line #|RMS Volts|0|V|0|-
            upsOutputCurrent|current|output line #|0.1 RMS Amp|1|A|0|-
            upsOutputPower|power|output line #|Watts|0|W|0|-
            upsOutputPercentLoad|load|output line #|percent|0|%|0|200
            upsBypassFrequency|frequency|bypass|0.1 Hertz|1|Hz|0|-
            upsBypassVoltage|voltage|bypass line #|RMS Volts|0|V|0|-
            upsBypassCurrent|current|bypass line #|0.1 RMS Amp|1|A|0|-
            upsBypassPower|power|bypass line #|Watts|0|W|0|-
            upsAlarmsPresent|alarms present|alarms||0|count|0|4294967295
            upsConfigInputVoltage|voltage|input, nominal|RMS Volts|0||0|-
            upsConfigInputFreq|frequency|input, nominal|0.1 Hertz|1||0|-
            upsConfigOutputVoltage|voltage|output, nominal|RMS Volts|0||0|-
            upsConfigOutputFreq|frequency|output, nominal|0.1 Hertz|1||0|-
            upsConfigOutputVA|apparent power|output, nominal|Volt-Amps|0||0|-
            upsConfigOutputPower|power|output, nominal|Watts|0||0|-
            upsConfigLowBattTime|time|low battery|minutes|0||0|-
            upsConfigLowVoltageTransferPoint|voltage|transfer point|RMS Volts|0||0|-
            upsConfigHighVoltageTransferPoint|voltage|transfer point|RMS Volts|0||0|-
            """;

    /** Names of the values, from 1 on. */
    static final Map<String, List<String>> ENUMERATIONS = Map.of(
            "upsBatteryStatus", List.of("unknown", "batteryNormal", "batteryLow", "batteryDepleted"),
            "upsOutputSource", List.of("other", "none", "normal", "bypass", "battery", "booster", "reducer"),
            "upsTestResultsSummary",
                    List.of("donePass", "doneWarning", "doneError", "aborted", "inProgress", "noTestsInitiated"),
            "upsShutdownType", List.of("output", "system"),
            "upsAutoRestart", List.of("on", "off"),
            "upsConfigAudibleStatus", List.of("disabled", "enabled", "muted"));

    /** FieldChecks, times and settings: known, and no readings. */
    static final Set<String> OTHERS = Set.of(
            "upsIdentManufacturer",
            "upsIdentModel",
            "upsIdentUPSSoftwareVersion",
            "upsIdentAgentSoftwareVersion",
            "upsIdentName",
            "upsIdentAttachedDevices",
            "upsInputNumLines",
            "upsInputLineIndex",
            "upsOutputNumLines",
            "upsOutputLineIndex",
            "upsBypassNumLines",
            "upsBypassLineIndex",
            "upsAlarmId",
            "upsAlarmTime",
            "upsTestId",
            "upsTestSpinLock",
            "upsTestResultsDetail",
            "upsTestStartTime",
            "upsTestElapsedTime",
            "upsShutdownAfterDelay",
            "upsStartupAfterDelay",
            "upsRebootWithDuration");

    static final String ALARM = "upsAlarmDescr";

    /** The well-known alarms in the order of their numbers, from 1 on. */
    static final List<String> ALARMS = List.of(
            "upsAlarmBatteryBad",
            "upsAlarmOnBattery",
            "upsAlarmLowBattery",
            "upsAlarmDepletedBattery",
            "upsAlarmTempBad",
            "upsAlarmInputBad",
            "upsAlarmOutputBad",
            "upsAlarmOutputOverload",
            "upsAlarmOnBypass",
            "upsAlarmBypassBad",
            "upsAlarmOutputOffAsRequested",
            "upsAlarmUpsOffAsRequested",
            "upsAlarmChargerFailed",
            "upsAlarmUpsOutputOff",
            "upsAlarmUpsSystemOff",
            "upsAlarmFanFailure",
            "upsAlarmFuseFailure",
            "upsAlarmGeneralFault",
            "upsAlarmDiagnosticTestFailed",
            "upsAlarmCommunicationsLost",
            "upsAlarmAwaitingPower",
            "upsAlarmShutdownPending",
            "upsAlarmShutdownImminent",
            "upsAlarmTestInProgress");

    /** The objects that hold a number, by name. */
    static final Map<String, UpsObject> NUMBERS = numbers();

    private static Map<String, UpsObject> numbers() {
        Map<String, UpsObject> numbers = new LinkedHashMap<>();
        TABLE.lines().map(line -> of(line.split("\\|", -1))).forEach(o -> numbers.put(o.name, o));
        return numbers;
    }

    private static UpsObject of(String[] c) {
        long most = c[7].equals("-") ? INTEGER : Long.parseLong(c[7]);
        boolean lines = c[2].endsWith(" #");
        return new UpsObject(
                c[0],
                c[1],
                c[2].replace(" #", ""),
                c[3],
                Integer.parseInt(c[4]),
                c[5],
                Long.parseLong(c[6]),
                most,
                lines);
    }

    static boolean isKnown(String name) {
        return NUMBERS.containsKey(name)
                || ENUMERATIONS.containsKey(name)
                || OTHERS.contains(name)
                || name.equals(ALARM);
    }

    /** Every name, for the nearest to one that is not known. */
    static List<String> names() {
        List<String> names = new ArrayList<>(NUMBERS.keySet());
        ENUMERATIONS.keySet().stream().sorted().forEach(names::add);
        OTHERS.stream().sorted().forEach(names::add);
        names.add(ALARM);
        return names;
    }
}
