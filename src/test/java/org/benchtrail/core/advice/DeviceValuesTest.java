package org.benchtrail.core.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.bench.Calculation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DeviceValuesTest {
    private static List<String> fields(Calculation<?> calculation) {
        return Arrays.stream(calculation.inputType().getRecordComponents())
                .map(RecordComponent::getName)
                .toList();
    }

    @ParameterizedTest
    @CsvSource({
        "ups-load, ratedVa, true",
        "ups-load, watts, false",
        "ups-runtime, health, false",
        "supply-size, parts[2].watts, true",
        "heat-path, rated, true",
        "heat-path, chip, false",
        "drive-fit, bay, true",
        "drive-fit, newBlocks, false",
        "soak, every, false"
    })
    void ratingsAreTheDevices_readingsAreNot(String calculation, String path, boolean own) {
        assertEquals(own ? Map.of(path, "1") : Map.of(), DeviceValues.among(calculation, Map.of(path, "1")));
    }

    /** A name that no field bears would be kept by nobody. */
    @Test
    void whatIsTheDevices_isAskedFor() {
        DeviceValues.OWN.forEach(
                (id, own) -> assertTrue(fields(Bench.find(id).orElseThrow()).containsAll(own), id + ": " + own));
    }

    @ParameterizedTest
    @CsvSource({
        "ups-load, UPS 1500 VA / 900 W in the comms cupboard, 'ratedVa=1500 VA, ratedWatts=900 W'",
        "ups-load, UPS 1.5 kVA, ratedVa=1.5 kVA",
        "ups-runtime, UPS with two blocks of 9 Ah, ampHours=9 Ah",
        "supply-size, Workstation WS-22 with a 550 W supply, ratedWatts=550 W",
        "battery-health, 'Laptop, 57 Wh', design=57 Wh",
        "poe-budget, '24-port PoE switch, 370 W', budget=370 W",
        "path-throughput, Leased line of 100 Mbit/s, bandwidth=100 Mbit/s",
        "fan, Rear fan 2000 rpm, ratedSpeed=2000 rpm"
    })
    void labelThatNamesItsRating_fillsIt(String calculation, String label, String values) {
        Map<String, String> printed = DeviceValues.printed(calculation, label);
        assertEquals(
                values,
                String.join(
                        ", ",
                        printed.entrySet().stream()
                                .map(e -> e.getKey() + "=" + e.getValue())
                                .sorted()
                                .toList()));
        Calculation<?> found = Bench.find(calculation).orElseThrow();
        assertTrue(fields(found).containsAll(printed.keySet()), printed.toString());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Workstation WS-07",
                "Supply of 550 W or 650 W",
                "Desktop with a 65 W processor",
                "Supply A550W",
                "Supply -550 W",
                "Supply 550 Watch",
                "Supply 1,550 W",
                "Supplyboard 550 W"
            })
    void labelThatLeavesItOpen_fillsNothing(String label) {
        assertEquals(Map.of(), DeviceValues.printed("supply-size", label));
    }
}
