package org.benchtrail.core.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.Settlement;
import org.junit.jupiter.api.Test;

class BenchStartTest {
    private static ReadingRecorded read(String quantity, String value, String unit) {
        return new ReadingRecorded(quantity, value, unit, "device", "meter", null, null, "");
    }

    private static JobSheet sheet(ReadingRecorded... readings) {
        return new HeatSheet().with(readings).sheet();
    }

    @Test
    void sheetThatKnowsNothing_fillsNothing() {
        for (Calculation<?> calculation : Bench.all()) {
            assertTrue(BenchStart.of(calculation.id(), sheet()).isEmpty(), calculation.id());
        }
    }

    @Test
    void latestReadingOfEachKind_isTakenWithItsUnit() {
        BenchStart start = BenchStart.of(
                "heat-path",
                sheet(
                        read("Processor temperature", "91", "°C"),
                        read("Processor temperature", "84.5", "°C"),
                        read("Air at the intake", "24", "°C"),
                        read("Package power", "65", "W"),
                        read("Processor clock", "3.5", "GHz")));
        assertEquals(Map.of("chip", "84.5 °C", "ambient", "24 °C", "watts", "65 W"), start.values());
        assertEquals(
                List.of("Processor temperature 84.5 °C", "Air at the intake 24 °C", "Package power 65 W"),
                start.from());
    }

    @Test
    void readingInAnotherKindOfUnit_isNotTaken() {
        assertTrue(BenchStart.of("mains", sheet(read("Mains at the outlet", "3.1", "A")))
                .isEmpty());
        assertEquals(
                Map.of("volts", "0.2296 kV"),
                BenchStart.of("mains", sheet(read("Mains at the outlet", "0.2296", "kV")))
                        .values());
    }

    @Test
    void rails_areToldByTheirVoltageAndTheirLoad() {
        BenchStart start = BenchStart.of(
                "rails",
                sheet(
                        read("+12 V rail", "12.05", "V"),
                        read("+12 V rail under load", "11.31", "V"),
                        read("-12 V rail", "-11.9", "V"),
                        read("3.3 V rail", "3.31", "V"),
                        read("+5 V standby", "5.02", "V"),
                        read("Battery", "2.9", "V")));
        assertEquals("PLUS_12", rail(start, "12.05 V", "idle"));
        assertEquals("PLUS_12", rail(start, "11.31 V", "load"));
        assertEquals("MINUS_12", rail(start, "-11.9 V", "idle"));
        assertEquals("PLUS_3_3", rail(start, "3.31 V", "idle"));
        assertEquals("STANDBY_5", rail(start, "5.02 V", "idle"));
        assertEquals(5 + 4, start.values().size(), "the battery is no rail");
    }

    private static String rail(BenchStart start, String volts, String where) {
        String path = start.values().entrySet().stream()
                .filter(e -> e.getValue().equals(volts) && e.getKey().endsWith("." + where))
                .findFirst()
                .orElseThrow()
                .getKey();
        return start.values().get(path.replace("." + where, ".rail"));
    }

    @Test
    void readingWithItsLimit_isHeldAgainstIt() {
        ReadingRecorded reading =
                new ReadingRecorded("+12 V rail", "11.38", "V", "supply", "meter", "11.40", "12.60", "guide");
        assertEquals(
                Map.of("unit", "V", "value", "11.38", "lower", "11.40", "upper", "12.60"),
                BenchStart.of("against-limit", sheet(reading)).values());
    }

    @Test
    void readingsBeforeAndAfterTheFirstActionCarriedOut_areParted() {
        HeatSheet sheet = new HeatSheet()
                .with(read("Temperature", "91", "°C"), read("Noise", "40", "dB"), read("temperature", "92", "°C"))
                .with(new ActionSettled(1, Settlement.FAILED, "wrong screw"))
                .with(read("Temperature", "90", "°C"))
                .with(new ActionSettled(1, Settlement.CARRIED_OUT, ""));
        assertTrue(BenchStart.of("before-after", sheet.sheet()).isEmpty(), "nothing was read since");
        BenchStart start = BenchStart.of(
                "before-after", sheet.with(read("Temperature", "70", "°C")).sheet());
        assertEquals(Map.of("unit", "°C", "before", "91\n92\n90", "after", "70"), start.values());
    }

    /** A field that no calculation asks for would be shown to nobody. */
    @Test
    void everyFieldFilled_isAskedFor() {
        JobSheet sheet = sheet(
                read("Load draw power full design outlet line", "230", "V"),
                read("Load draw power", "100", "W"),
                read("apparent load", "120", "VA"),
                read("full", "40", "Wh"),
                read("design", "50", "Wh"),
                read("outlet", "50", "Hz"),
                read("cycles", "50", "count"),
                read("fan speed", "900", "1/min"),
                read("round trip delay jitter", "20", "ms"),
                read("lost", "1", "%"),
                read("data", "20", "GB"),
                read("rate", "20", "MB/s"),
                read("cable distance", "20", "m"),
                read("chip in the room", "50", "°C"));
        int filled = 0;
        for (Calculation<?> calculation : Bench.all()) {
            List<String> asked = Arrays.stream(calculation.inputType().getRecordComponents())
                    .map(RecordComponent::getName)
                    .toList();
            for (String path : BenchStart.of(calculation.id(), sheet).values().keySet()) {
                assertTrue(asked.contains(path.replaceAll("\\[.*", "")), calculation.id() + "." + path);
                filled++;
            }
        }
        assertTrue(filled >= 24, filled + " fields");
    }
}
