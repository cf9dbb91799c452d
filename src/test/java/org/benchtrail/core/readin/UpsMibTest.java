package org.benchtrail.core.readin;

import static org.benchtrail.core.Published.check;
import static org.benchtrail.core.readin.Seen.assertRefused;
import static org.benchtrail.core.readin.Seen.reading;
import static org.benchtrail.core.readin.Seen.value;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReadingVerdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UpsMibTest {
    private static final String MIB = "RFC 1628, UPS-MIB: names, SYNTAX and UNITS (seen)";

    private static ReadIn read(String... lines) {
        return UpsMib.read(String.join("\n", lines), About.NOTHING);
    }

    @ParameterizedTest
    @CsvSource({
        "upsBatteryVoltage.0 = 274, voltage, battery, 27.4, V",
        "upsBatteryCurrent.0 = -12, current, battery, -1.2, A",
        "upsBatteryTemperature.0 = 31, temperature, battery, 31, °C",
        "upsSecondsOnBattery.0 = 0, time on battery, battery, 0, s",
        "upsEstimatedMinutesRemaining = 12, time remaining, battery, 12, min",
        "upsEstimatedChargeRemaining.0 = 98, charge remaining, battery, 98, %",
        "upsInputFrequency.1 = 600, frequency, input line 1, 60.0, Hz",
        "upsInputVoltage.1 = 230, voltage, input line 1, 230, V",
        "upsInputCurrent.3 = 42, current, input line 3, 4.2, A",
        "upsInputTruePower.1 = 900, power, input line 1, 900, W",
        "upsInputLineBads.0 = 7, times the input was out of tolerance, input, 7, count",
        "upsOutputFrequency.0 = 499, frequency, output, 49.9, Hz",
        "upsOutputVoltage.2 = 229, voltage, output line 2, 229, V",
        "upsOutputCurrent.1 = 35, current, output line 1, 3.5, A",
        "upsOutputPower.1 = 780, power, output line 1, 780, W",
        "upsOutputPercentLoad.1: 34, load, output line 1, 34, %",
        "upsBypassFrequency.0 = 500, frequency, bypass, 50.0, Hz",
        "upsBypassVoltage.1 = 231, voltage, bypass line 1, 231, V"
    })
    void number_isInTheUnitOfTheMib(String line, String quantity, String part, String value, String unit) {
        ReadingRecorded r = reading(read(line), quantity, "UPS, " + part);
        check(MIB, Double.parseDouble(value), Double.parseDouble(r.value()), 0);
        check(MIB, unit, r.unit());
    }

    @ParameterizedTest
    @CsvSource({
        "UPS-MIB::upsBatteryVoltage.0 = INTEGER: 274",
        "UPS-MIB::upsBatteryVoltage.0 = INTEGER: 274 0.1 Volt DC",
        "upsBatteryVoltage.0: 274",
        "upsBatteryVoltage = 274",
        "' upsBatteryVoltage.0=274  '"
    })
    void line_isReadInEveryCommonForm(String line) {
        assertEquals(27.4, value(read(line), "voltage", "UPS, battery"));
    }

    @ParameterizedTest
    @CsvSource({
        "upsBatteryStatus.0 = 1, is not known",
        "upsBatteryStatus.0 = batteryLow(3), The battery is low",
        "UPS-MIB::upsBatteryStatus.0 = INTEGER: batteryDepleted(4), The battery is depleted",
        "upsOutputSource.0 = 2, The output is off",
        "upsOutputSource.0 = bypass, on bypass",
        "upsOutputSource.0 = battery(5), fed from the battery",
        "upsOutputSource.0 = 6, raised",
        "upsOutputSource.0 = 7, lowered",
        "upsTestResultsSummary.0 = doneError(3), self-test failed"
    })
    void status_otherThanNormal_isAFinding(String line, String words) {
        ReadIn found = read(line);
        String text = found.findings().get(0).text();
        check(MIB, true, text.contains(words));
        assertTrue(text.startsWith("UPS: "), text);
        assertTrue(found.readings().isEmpty());
    }

    @ParameterizedTest
    @CsvSource({"upsBatteryStatus.0 = 2, batteryNormal", "upsOutputSource.0 = 3, normal", "upsAutoRestart.0 = 1, on"})
    void status_normal_isNamedAndNoFinding(String line, String label) {
        ReadIn found = read(line);
        assertTrue(found.findings().isEmpty());
        check(MIB, true, found.skipped().get(0).contains(": " + label + ","));
    }

    @Test
    void alarms_areCountedAndNamed() {
        ReadIn found = read(
                "upsAlarmsPresent.0 = Gauge32: 2",
                "upsAlarmDescr.7 = OID: UPS-MIB::upsAlarmBatteryBad",
                "upsAlarmDescr.9 = .1.3.6.1.2.1.33.1.6.3.8",
                "upsAlarmDescr.11 = 1.3.6.1.4.1.99999.1");
        assertEquals(
                ReadingVerdict.OUTSIDE,
                reading(found, "alarms present", "UPS, alarms").verdict());
        List<String> texts = found.findings().stream().map(f -> f.text()).toList();
        assertEquals("UPS: 2 alarms are present (upsAlarmsPresent).", texts.get(0));
        check(MIB, "UPS: Alarm: battery bad (upsAlarmBatteryBad).", texts.get(1));
        check(MIB, "UPS: Alarm: output overload (upsAlarmOutputOverload).", texts.get(2));
        assertTrue(texts.get(3).contains("not of RFC 1628"));
        assertEquals(
                ReadingVerdict.WITHIN,
                reading(read("upsAlarmsPresent.0 = 0"), "alarms present", "UPS, alarms")
                        .verdict());
    }

    @Test
    void ownSettings_areTheLimits_whereverTheyStand() {
        ReadIn found = read(
                "upsInputVoltage.1 = 195",
                "upsOutputPower.1 = 1500",
                "upsEstimatedMinutesRemaining.0 = 4",
                "upsOutputPercentLoad.1 = 101",
                "upsConfigLowVoltageTransferPoint.0 = 196",
                "upsConfigHighVoltageTransferPoint.0 = 264",
                "upsConfigOutputPower.0 = 1400",
                "upsConfigLowBattTime.0 = 5");
        ReadingRecorded input = reading(found, "voltage", "UPS, input line 1");
        assertEquals("196", input.lower());
        assertEquals("264", input.upper());
        assertTrue(input.limitSource().contains("upsConfigLowVoltageTransferPoint"));
        assertTrue(
                found.readings().stream().allMatch(r -> r.verdict() == ReadingVerdict.OUTSIDE),
                () -> "" + found.readings());
        assertEquals(4, found.readings().size());
    }

    @Test
    void whatIsNotTold_isSkippedAndNamed() {
        ReadIn found = read(
                "upsBatteryTemperature.0 = No Such Instance currently exists at this OID",
                "upsIdentModel.0 = STRING: \"U-1\"");
        assertEquals(
                "upsBatteryTemperature.0: the UPS does not tell it.",
                found.skipped().get(0));
        assertEquals(
                "upsIdentModel.0: \"U-1\", which is no reading.",
                found.skipped().get(1));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "upsBateryVoltage.0 = 274|row 1|The nearest is upsBatteryVoltage.",
                "upsOutputLoad.1 = 27|row 1|no object of RFC 1628",
                "OTHER-MIB::upsBatteryVoltage.0 = 27|row 1|OTHER-MIB::upsBatteryVoltage",
                ".1.3.6.1.2.1.33.1.2.5.0 = 274|row 1|by its name",
                "upsBatteryVoltage.0|row 1|its value",
                "upsBatteryVoltage.0 = 27.4|row 1|whole number in units of 0.1 Volt DC",
                "upsBatteryVoltage.0 = NaN|row 1|whole number",
                "upsBatteryVoltage.0 = -3|row 1|runs from 0",
                "upsBatteryVoltage.0 = 274 V|row 1|that is 0.1 Volt DC",
                "upsBatteryVoltage.1 = 274|row 1|there once only",
                "upsInputVoltage.0 = 230|row 1|counted from 1",
                "upsEstimatedChargeRemaining.0 = 101|row 1|from 0 to 100",
                "upsOutputPercentLoad.1 = 201|row 1|from 0 to 200",
                "upsBatteryTemperature.0 = -300|row 1|not possible",
                "upsBatteryStatus.0 = 5|row 1|batteryDepleted(4)",
                "upsBatteryStatus.0 = batteryLow(2)|row 1|no value of",
                "upsBatteryStatus.0 = full|row 1|no value of",
                "upsSecondsOnBattery.0 = 99999999999999999999|row 1|whole number"
            })
    void malformed_isRefusedWithItsRow(String line, String field, String reason) {
        assertRefused(field, reason, () -> read(line));
    }

    @Test
    void everyBadRow_isTold_andNothingIsRead() {
        assertRefused("row 2", "a second time", () -> read("upsBatteryVoltage.0 = 274", "upsBatteryVoltage = 274"));
        assertRefused("row 3", "no object", () -> read("upsBatteryVoltage.0 = 274", "", "upsX = 1"));
        assertRefused("row 1", "no value", () -> read("", "# nothing"));
        assertRefused("text", "9980 more", () -> read("x\n".repeat(10_000)));
    }
}
