package org.benchtrail.core.readin;

import static org.benchtrail.core.Published.check;
import static org.benchtrail.core.readin.Seen.assertRefused;
import static org.benchtrail.core.readin.Seen.reading;
import static org.benchtrail.core.readin.Seen.value;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReadingVerdict;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Property names and units as in DMTF's published schemas (Sensor v1_0_0 read there; Thermal and Power partly from memory). */
class RedfishTest {
    private static final String SENSOR = "DMTF DSP2046, Sensor: units by reading type (schema v1_0_0 read)";
    private static final String THERMAL = "DMTF DSP2046, Thermal (property names seen, meaning from memory)";
    private static final String POWER = "DMTF DSP2046, Power (from memory)";

    private static BigDecimal n(String number) {
        return new BigDecimal(number);
    }

    /** An object with members in pairs of name and value; null stays null. */
    private static Map<String, Object> object(@Nullable Object... pairs) {
        Map<String, Object> object = new HashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            object.put((String) pairs[i], pairs[i + 1]);
        }
        return object;
    }

    private static Map<String, Object> temperature(@Nullable Object... more) {
        Map<String, Object> member = object("Name", "CPU1 Temp", "PhysicalContext", "CPU", "ReadingCelsius", n("41"));
        member.putAll(object(more));
        return member;
    }

    private static ReadIn thermal(Object... temperatures) {
        return Redfish.read(object("Temperatures", List.of(temperatures)), About.NOTHING);
    }

    private static ReadIn read(@Nullable Object tree) {
        return Redfish.read(tree, About.NOTHING);
    }

    @Test
    void temperature_hasTheInnermostThresholdsAsItsLimits() {
        ReadIn found = thermal(temperature(
                "UpperThresholdNonCritical", n("75"),
                "UpperThresholdCritical", n("85"),
                "UpperThresholdFatal", n("95"),
                "LowerThresholdCritical", n("5")));
        ReadingRecorded r = reading(found, "temperature", "CPU1 Temp (CPU)");
        check(THERMAL, "41", r.value());
        check(THERMAL, "°C", r.unit());
        check(THERMAL, "75", r.upper());
        check(THERMAL, "5", r.lower());
        assertEquals(
                "the device's own thresholds (Redfish LowerThresholdCritical, UpperThresholdNonCritical)",
                r.limitSource());
        assertEquals(ReadingVerdict.WITHIN, r.verdict());
        assertTrue(found.findings().isEmpty());
    }

    @ParameterizedTest
    @CsvSource({
        "75, WITHIN, ''",
        "75.1, OUTSIDE, ''",
        "85.5, OUTSIDE, above UpperThresholdCritical",
        "96, OUTSIDE, above UpperThresholdFatal"
    })
    void temperature_beyondAnOuterThreshold_isAFindingAsWell(String celsius, ReadingVerdict verdict, String passed) {
        ReadIn found = thermal(temperature(
                "ReadingCelsius", n(celsius),
                "UpperThresholdNonCritical", n("75"),
                "UpperThresholdCritical", n("85"),
                "UpperThresholdFatal", n("95")));
        assertEquals(verdict, reading(found, "temperature", "CPU1 Temp (CPU)").verdict());
        assertEquals(passed.isEmpty() ? 0 : 1, found.findings().size());
        assertTrue(found.findings().stream().allMatch(f -> f.text().contains(passed)), () -> "" + found.findings());
    }

    @Test
    void fans_turnInRevolutionsOrPercent() {
        ReadIn found = read(object(
                "Fans",
                List.of(
                        object(
                                "Name",
                                "Fan 1",
                                "Reading",
                                n("4200"),
                                "ReadingUnits",
                                "RPM",
                                "LowerThresholdCritical",
                                n("900")),
                        object("FanName", "Fan 2", "Reading", n("38"), "ReadingUnits", "Percent"))));
        check(THERMAL, "r/min", reading(found, "fan speed", "Fan 1").unit());
        check(THERMAL, "%", reading(found, "fan speed", "Fan 2").unit());
        assertEquals("900", reading(found, "fan speed", "Fan 1").lower());
    }

    @Test
    void power_givesVoltagesSuppliesAndTheDrawAgainstItsLimit() {
        ReadIn found = read(object(
                "PowerControl",
                List.of(object(
                        "Name",
                        "Server",
                        "PowerConsumedWatts",
                        n("344"),
                        "PowerCapacityWatts",
                        n("800"),
                        "PowerLimit",
                        object("LimitInWatts", n("500")))),
                "Voltages",
                List.of(object("Name", "VRM1", "ReadingVolts", n("12.05"), "LowerThresholdNonCritical", n("11.4"))),
                "PowerSupplies",
                List.of(object(
                        "Name",
                        "PSU 1",
                        "LineInputVoltage",
                        n("229.5"),
                        "LastPowerOutputWatts",
                        n("325"),
                        "PowerCapacityWatts",
                        n("800"),
                        "InputRanges",
                        List.of(object("MinimumVoltage", n("200"), "MaximumVoltage", n("240"))))),
                "Redundancy",
                List.of(object("Name", "PSUs"))));
        check(POWER, 344, value(found, "power drawn", "Server"), 0);
        check(POWER, "500", reading(found, "power drawn", "Server").upper());
        check(POWER, 12.05, value(found, "voltage", "VRM1"), 0);
        check(POWER, "800", reading(found, "power delivered", "PSU 1").upper());
        check(POWER, "200", reading(found, "input voltage", "PSU 1").lower());
        assertEquals(List.of("Redundancy: is not read."), found.skipped());
    }

    @ParameterizedTest
    @CsvSource({
        "Temperature, Cel, temperature, °C",
        "Voltage, V, voltage, V",
        "Current, A, current, A",
        "Power, W, power, W",
        "Frequency, Hz, frequency, Hz",
        "Humidity, %, humidity, %",
        "Rotational, RPM, speed, r/min"
    })
    void sensor_measuresInTheUnitOfItsType(String type, String code, String quantity, String unit) {
        ReadIn found = read(object("Name", "S", "Reading", n("3.5"), "ReadingType", type, "ReadingUnits", code));
        check(SENSOR, unit, reading(found, quantity, "S").unit());
    }

    @Test
    void sensor_inUcum_withNestedThresholds() {
        ReadIn found = read(object(
                "Name",
                "Fan tach",
                "Reading",
                n("2300"),
                "ReadingUnits",
                "{rev}/min",
                "ReadingType",
                "Rotational",
                "Thresholds",
                object("LowerCaution", object("Reading", n("2500")), "LowerCritical", object("Reading", n("2400")))));
        ReadingRecorded r = reading(found, "speed", "Fan tach");
        assertEquals("r/min", r.unit());
        assertEquals("2500", r.lower());
        assertEquals("the device's own threshold (Redfish LowerCaution)", r.limitSource());
        assertEquals(ReadingVerdict.OUTSIDE, r.verdict());
        assertTrue(found.findings().get(0).text().contains("below LowerCritical"));
    }

    @Test
    void collection_readsMembersAndNamesLinks() {
        Map<String, Object> sensor = object("Name", "Inlet", "Reading", n("22"), "ReadingUnits", "Cel");
        ReadIn found =
                read(object("Members", List.of(sensor, object("@odata.id", "/redfish/v1/Chassis/1/Sensors/Exhaust"))));
        assertEquals(22, value(found, "temperature", "Inlet"));
        assertTrue(found.skipped().get(0).startsWith("Members[1]: only a link"));
        assertEquals(2, read(List.of(sensor, sensor)).readings().size());
    }

    @Test
    void sensorsOfOneName_areTwoPlaces() {
        ReadIn found = thermal(temperature(), temperature("ReadingCelsius", n("43")));
        assertEquals(41, value(found, "temperature", "CPU1 Temp (CPU)"));
        assertEquals(43, value(found, "temperature", "CPU1 Temp (CPU) (2)"));
    }

    @Test
    void nullReading_isSkippedAndNamed() {
        ReadIn found = thermal(temperature("ReadingCelsius", null, "Status", object("State", "Absent")), temperature());
        assertEquals(1, found.readings().size());
        assertEquals(List.of("CPU1 Temp (CPU): no temperature at the moment (Absent)."), found.skipped());
    }

    @Test
    void health_otherThanOk_isAFinding() {
        ReadIn found = thermal(temperature("Status", object("Health", "Critical")));
        assertEquals(
                "CPU1 Temp (CPU): the device itself says Critical (Redfish Status.Health).",
                found.findings().get(0).text());
        assertTrue(thermal(temperature("Status", object("Health", "OK")))
                .findings()
                .isEmpty());
    }

    @Test
    void negativeTemperature_isARealOne() {
        assertEquals(
                -12.5, value(thermal(temperature("ReadingCelsius", n("-12.5"))), "temperature", "CPU1 Temp (CPU)"));
    }

    @Test
    void moreDigitsThanAreKept_areRounded() {
        assertEquals(
                "23.200000762939453",
                reading(
                                thermal(temperature("ReadingCelsius", n("23.2000007629394531250"))),
                                "temperature",
                                "CPU1 Temp (CPU)")
                        .value());
        assertEquals(
                "0",
                reading(thermal(temperature("ReadingCelsius", n("1e-99999999"))), "temperature", "CPU1 Temp (CPU)")
                        .value());
    }

    static Stream<Arguments> malformed() {
        String celsius = "Temperatures[0].ReadingCelsius";
        return Stream.of(
                Arguments.of(null, "text", "object in braces"),
                Arguments.of("text", "text", "object in braces"),
                Arguments.of(object(), "text", "no Thermal, Power or Sensor"),
                Arguments.of(List.of(), "text", "no reading"),
                Arguments.of(object("Temperatures", List.of()), "text", "no reading"),
                Arguments.of(object("Temperatures", "hot"), "Temperatures", "list in brackets"),
                Arguments.of(object("Temperatures", List.of(n("4"))), "Temperatures[0]", "object in braces"),
                Arguments.of(one("ReadingCelsius", "NaN"), celsius, "'NaN'"),
                Arguments.of(one("ReadingCelsius", true), celsius, "'true'"),
                Arguments.of(one("ReadingCelsius", n("-300")), celsius, "below -273.15 °C"),
                Arguments.of(one("ReadingCelsius", n("1e999999999")), celsius, "that large"),
                Arguments.of(one("UpperThresholdFatal", n("1e999999999")), celsius, "that large"),
                Arguments.of(
                        one("UpperThresholdCritical", n("50"), "UpperThresholdNonCritical", n("60")),
                        "Temperatures[0].UpperThresholdCritical",
                        "out of order"),
                Arguments.of(
                        one("LowerThresholdCritical", n("50"), "UpperThresholdCritical", n("40")),
                        "Temperatures[0].UpperThresholdCritical",
                        "out of order"),
                Arguments.of(fan(n("-1"), "RPM"), "Fans[0].Reading", "below 0 r/min"),
                Arguments.of(fan(n("900"), "rounds"), "Fans[0].ReadingUnits", "RPM or Percent"),
                Arguments.of(fan(n("900"), null), "Fans[0].ReadingUnits", "needs its unit"),
                Arguments.of(object("Name", "S", "Reading", n("3")), "ReadingUnits", "needs its unit"),
                Arguments.of(
                        object("Reading", n("3"), "ReadingType", "Temperature", "ReadingUnits", "V"),
                        "ReadingUnits",
                        "never in 'V'"),
                Arguments.of(object("Members", List.of(object("Id", "1"))), "Members[0]", "no Thermal"));
    }

    private static Object one(@Nullable Object... more) {
        return object("Temperatures", List.of(temperature(more)));
    }

    private static Object fan(BigDecimal speed, @Nullable String unit) {
        return object("Fans", List.of(object("Name", "F", "Reading", speed, "ReadingUnits", unit)));
    }

    @ParameterizedTest
    @MethodSource("malformed")
    void malformed_isRefusedWithItsPath(@Nullable Object tree, String path, String reason) {
        assertRefused(path, reason, () -> read(tree));
    }

    @Test
    void everyBadMember_isTold_upToTwenty() {
        List<Object> bad = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            bad.add(temperature("ReadingCelsius", "x"));
        }
        assertRefused("Temperatures[19].ReadingCelsius", "'x'", () -> thermal(bad.toArray()));
        assertRefused("text", "30 more", () -> thermal(bad.toArray()));
    }
}
