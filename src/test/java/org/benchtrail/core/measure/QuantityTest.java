package org.benchtrail.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Random;
import org.benchtrail.BesideOthers;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@BesideOthers
class QuantityTest {
    private static final String SI = "SI Brochure, 9th edition, tables 7 and 8";
    private static final String YARD = "international yard and pound agreement, 1959";
    private static final String IEC = "IEC 80000-13, binary prefixes";
    private static final String NIST_811 = "NIST SP 811, appendix B.8, conversion of temperatures";

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "11.38 V|11.38|V",
                "11,38V|11.38|V",
                "450 mV|450|mV",
                "212 °F|212|°F",
                "3.4 GHz|3.4|GHz",
                "2.4ghz|2.4|GHz",
                "5 mhz|5|MHz",
                "11.40 V|11.40|V",
                "3.312 V|3.312|V",
                "0,125 A|0.125|A",
                "1 234,567 V|1234.567|V",
                "1'234.5 W|1234.5|W",
                "1.234,5 V|1234.5|V",
                "1,234.5 V|1234.5|V",
                "1.234.567 B|1234567|B",
                "1234,567 V|1234.567|V",
                ".5 V|0.5|V",
                ",5 V|0.5|V",
                "4e3 Hz|4000|Hz",
                "1.5E-3 V|0.0015|V",
                "+5 V|5|V",
                "- 12 V|-12|V",
                "12V DC|12|V",
                "230 VAC|230|V",
                "40 C|40|°C",
                "40 deg C|40|°C",
                "1200 rpm|1200|r/min",
                "54 Mbps|54|Mbit/s",
                "54 Mb/s|54|Mbit/s",
                "54 MB/s|54|MB/s",
                "16 GiB|16|GiB",
                "1.5 KB|1.5|kB",
                "0.35 K/W|0.35|°C/W",
                "600 VA|600|VA",
                "9 Ah|9|Ah",
                "57000 mWh|57000|mWh",
                "-67 dBm|-67|dBm",
                "93 %|93|%",
                "90 min|90|min",
                "3 pages|3|pages",
                "10 kohm|10|kΩ",
            })
    void parse_whatPeopleType_isRead(String typed, String value, String symbol) {
        Quantity quantity = Quantity.parse(typed);
        assertEquals(
                new BigDecimal(value).stripTrailingZeros(), quantity.value().stripTrailingZeros());
        assertEquals(symbol, quantity.unit().symbol());
        assertEquals(typed, quantity.typed());
    }

    @Test
    void parse_lookAlikeCharacters_areAccepted() {
        assertEquals("-12 V", Quantity.parse("\u221212\u00A0V").toString());
        assertEquals("-12 V", Quantity.parse("\u201312\u2009V").toString());
        assertEquals("5 µs", Quantity.parse("5 \u00B5s").toString());
        assertEquals("5 µs", Quantity.parse("5 \u03BCs").toString());
        assertEquals("5 µs", Quantity.parse("5 us").toString());
        assertEquals("38 °C", Quantity.parse("38 \u00BAC").toString());
        assertEquals("38 °C", Quantity.parse("38 \u2103").toString());
        assertEquals("5 Ω", Quantity.parse("5 \u2126").toString());
        assertEquals("12345.6 B", Quantity.parse("12\u202F345.6 B").toString());
        assertEquals("12345.6 B", Quantity.parse("12\u2019345.6 B").toString());
    }

    /** The unit asked for comes first, then its neighbours by size; never the unit of another quantity that is spelt alike. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "W|12 kg|W or mW or kW",
                "V|12 xV|V or mV or kV",
                "h|3 hs|h or d or min",
                "h|1 kg 10|h or d or min",
                "dBm|12 kg|dBm.",
                "W|12 KV|a voltage",
                "W|12 mj|W or mW or kW",
            })
    void parse_unknownUnit_isAnsweredWithThoseTheFieldTakes(String usual, String typed, String named) {
        Invalid refused = assertThrows(Invalid.class, () -> Quantity.parse("field", typed, Units.named(usual)));
        String said = refused.problems().get(0).sentence();
        assertTrue(said.contains(named), said);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1,234 V|1.234 or as 1234",
                "NaN V|not a value that can be measured",
                "Infinity|not a value that can be measured",
                "-inf V|not a value that can be measured",
                "12|Say the unit",
                "12 xV|nearest known one is",
                "450 MV|was mV meant",
                "5 Kb|kB or kbit",
                "300 mbps|Mbit/s or MB/s",
                "1e99 V|power of ten 99",
                "1e-99 V|power of ten -99",
                "1e999999999 V|power of ten",
                "V 12|does not begin with a number",
                "--5 V|does not begin with a number",
                "1.2.3 V|make no number",
                "1,2,3 V|make no number",
                "1,234.5,6 V|make no number",
                "1..2 V|make no number",
                "12. V|ends in a decimal sign",
                "1 2 V|does not group thousands",
                "12345678901234567890123456789012345678901 V|more digits",
            })
    void parse_doubtfulText_isRefusedWithWhatToDo(String typed, String sentence) {
        Invalid refused = assertThrows(Invalid.class, () -> Quantity.parse("voltage", typed, null));
        assertEquals("voltage", refused.problems().get(0).field());
        String said = refused.problems().get(0).sentence();
        assertTrue(said.contains(sentence), said);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "\u00A0", "\t"})
    void parse_nothing_isRefused(String typed) {
        assertThrows(Invalid.class, () -> Quantity.parse(typed));
    }

    @Test
    void parse_overlongText_isRefusedWithoutEchoingIt() {
        Invalid refused = assertThrows(Invalid.class, () -> Quantity.parse("1".repeat(100_000)));
        assertTrue(refused.getMessage().length() < 200);
    }

    @Test
    void parse_usualUnit_isTakenWhenNoneIsTypedAndGuardsTheKind() {
        assertEquals("11.38 V", Quantity.parse("rail", "11.38", Units.VOLT).toString());
        assertEquals("11380 mV", Quantity.parse("rail", "11380 mV", Units.VOLT).toString());
        Invalid refused = assertThrows(Invalid.class, () -> Quantity.parse("rail", "11.38 A", Units.VOLT));
        assertTrue(refused.getMessage().contains("a voltage is asked for"), refused.getMessage());
        assertThrows(Invalid.class, () -> Quantity.parse("load", "540 W", Units.VOLT_AMPERE));
    }

    @Test
    void to_publishedFactors_areExact() {
        Published.check(SI, "11.38 V", to("11380 mV", "V"));
        Published.check(SI, "3400000000 Hz", to("3.4 GHz", "Hz"));
        Published.check(SI, "3600 s", to("1 h", "s"));
        Published.check(SI, "86400 s", to("1 d", "s"));
        Published.check(SI, "101325 Pa", to("1013.25 hPa", "Pa"));
        Published.check(SI, "273.15 K", to("0 °C", "K"));
        Published.check(YARD, "0.3048 m", to("1 ft", "m"));
        Published.check(YARD, "2.54 cm", to("1 in", "cm"));
        Published.check(YARD, "12 in", to("1 ft", "in"));
        Published.check(IEC, "1024 B", to("1 KiB", "B"));
        Published.check(IEC, "1099511627776 B", to("1 TiB", "B"));
        Published.check(IEC, "8 Mbit/s", to("1 MB/s", "Mbit/s"));
        Published.check(NIST_811, "100 °C", to("212 °F", "°C"));
        Published.check(NIST_811, "212 °F", to("100 °C", "°F"));
        Published.check(NIST_811, "-40 °F", to("-40 °C", "°F"));
        Published.check(NIST_811, "255.37", to("0 °F", "K").substring(0, 6));
    }

    @Test
    void asDifference_temperature_hasNoOffset() {
        assertEquals(18.0, Quantity.parse("10 °C").asDifferenceIn(Units.named("°F")));
        assertEquals(10.0, Quantity.parse("10 °C").asDifferenceIn(Units.KELVIN));
        assertEquals(283.15, Quantity.parse("10 °C").in(Units.KELVIN));
    }

    @Test
    void to_otherKind_isRefused() {
        assertThrows(IllegalArgumentException.class, () -> Quantity.parse("1 W").to(Units.VOLT_AMPERE));
        assertThrows(
                IllegalArgumentException.class, () -> Quantity.parse("1 dB").to(Units.named("dBm")));
        assertThrows(IllegalArgumentException.class, () -> Units.named("volt-ish"));
    }

    @Test
    void isSameAmountAs_comparesAcrossUnitsAndScales() {
        assertTrue(Quantity.parse("11.40 V").isSameAmountAs(Quantity.parse("11400 mV")));
        assertFalse(Quantity.parse("11.40 V").isSameAmountAs(Quantity.parse("11.41 V")));
        assertFalse(Quantity.parse("1 W").isSameAmountAs(Quantity.parse("1 VA")));
        assertNotEquals(Quantity.parse("11.4 V"), Quantity.parse("11.40 V"));
    }

    @Test
    void lastDigit_isTheStepShown() {
        assertEquals("0.01 V", Quantity.parse("11.62 V").lastDigit().toString());
        assertEquals("1 mV", Quantity.parse("450 mV").lastDigit().toString());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 20_260_101, -7})
    void to_andBack_roundTrips(long seed) {
        Random random = new Random(seed);
        List<Unit> units = List.copyOf(Units.all());
        for (int i = 0; i < 2000; i++) {
            Unit from = units.get(random.nextInt(units.size()));
            List<Unit> kin = units.stream()
                    .filter(u -> u.dimension() == from.dimension())
                    .toList();
            Unit via = kin.get(random.nextInt(kin.size()));
            BigDecimal value = BigDecimal.valueOf(random.nextInt(2_000_001) - 1_000_000, random.nextInt(5));
            BigDecimal back = via.convert(from.convert(value, via), from);
            // Thirds and sevens of a day have no finite decimal; 34 digits are kept, less what an offset cancels.
            BigDecimal allowed = value.abs().max(BigDecimal.ONE).scaleByPowerOfTen(-25);
            assertTrue(
                    back.subtract(value).abs().compareTo(allowed) <= 0,
                    "seed " + seed + ": " + value + " " + from + " via " + via + " came back as " + back);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void parse_whatToStringWrites_isTheSameAmount(long seed) {
        Random random = new Random(seed);
        List<Unit> units = List.copyOf(Units.all());
        for (int i = 0; i < 2000; i++) {
            Quantity quantity = Quantity.of(
                    BigDecimal.valueOf(random.nextLong() >> random.nextInt(1, 60), random.nextInt(12)),
                    units.get(random.nextInt(units.size())));
            Quantity read = Quantity.parse(quantity.toString());
            assertEquals(quantity.value(), read.value(), "seed " + seed + ": " + quantity);
            assertEquals(quantity.unit(), read.unit(), "seed " + seed + ": " + quantity);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23})
    void parse_anyText_isReadOrRefusedNeverBroken(long seed) {
        Random random = new Random(seed);
        String alphabet = "0123456789.,' eE+-\u2212VmkMHz%°CΩ/\u00A0;x";
        for (int i = 0; i < 20_000; i++) {
            StringBuilder text = new StringBuilder();
            for (int j = random.nextInt(12); j >= 0; j--) {
                text.append(alphabet.charAt(random.nextInt(alphabet.length())));
            }
            try {
                assertTrue(Quantity.parse(text.toString()).value().precision() <= 40, "seed " + seed + ": " + text);
            } catch (Invalid refused) {
                assertFalse(refused.problems().get(0).sentence().isBlank(), "seed " + seed + ": " + text);
            }
        }
    }

    private static String to(String typed, String symbol) {
        return Quantity.parse(typed).to(Units.named(symbol)).toString();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "48 h|172800",
                "1 h 10|4200",
                "1h10|4200",
                "1 h 10 min|4200",
                "1 h 10 m|4200",
                "1 h 0|3600",
                "1 h 59|7140",
                "2 d 3 h|183600",
                "2 d 3|183600",
                "1 d 2 h 30|95400",
                "1 min 30|90",
                "1,5 h|5400"
            })
    void time_isReadInParts(String text, long seconds) {
        Quantity read = Quantity.parse("t", text, Units.SECOND);
        assertEquals(
                0, BigDecimal.valueOf(seconds).compareTo(read.to(Units.SECOND).value()), read::toString);
        assertEquals(text, read.typed());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "1 h 60",
                "1 h 90 min",
                "-1 h 10",
                "1 h -10",
                "1 s 10",
                "1 h 2 h",
                "1 h 2 d",
                "1 h 10 V",
                "1 V 10",
                "1 h ten"
            })
    void time_inPartsThatDoNotFit_isRefused(String text) {
        assertThrows(Invalid.class, () -> Quantity.parse("t", text, Units.SECOND));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "h|2 min|0.03333333333333333333333333333333333",
                "h|48 h|48",
                "h|90 min|1.5",
                "min|1 h 10|70",
                "V|11,38V|11.38",
                "V|11380 mV|11.38",
                "°C|400 K|126.85",
                "°C|212 °F|100",
                "MHz|2.437 GHz|2437",
                "B|64 KiB|65536",
                "Mb/s|1 Gbit/s|1000",
                "GHz|3500 MHz|3.5",
                "dBi|3 dBi|3",
                "dBi|3|3",
                "|7|7"
            })
    void number_isTakenInTheUnitAskedFor(String unit, String text, BigDecimal value) {
        BigDecimal read = TypedNumber.in(unit == null ? "" : unit, "x", text);
        assertEquals(0, value.compareTo(read), read::toPlainString);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"h|60 €", "h|3 V", "dBm|100 mW", "dBm|3 dB", "dBi|3 dB", "|7 V", "h|1,234", "h|5 parsecs", "W|5 VA"
            })
    void number_inAnotherKindOfUnitOrAnUnknownOne_isRefused(String unit, String text) {
        assertThrows(Invalid.class, () -> TypedNumber.in(unit == null ? "" : unit, "x", text));
    }

    /** Whoever typed a unit that does not fit is told what does. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "h|5 parsecs|type the number in h",
                "V|11.38 Q|type the number in V",
                "V|11.38 A|a voltage is asked for",
                "dBi|3 dB|give the number in dBi, not in 'dB'",
                "|7 V|give the number without a unit, not in 'V'",
                "|7 %|give the number without a unit, not in '%'"
            })
    void number_inAUnitThatDoesNotFit_isAnsweredWithOneThatDoes(String unit, String text, String told) {
        Invalid refused = assertThrows(Invalid.class, () -> TypedNumber.in(unit == null ? "" : unit, "x", text));
        assertEquals("x", refused.problems().get(0).field());
        assertTrue(refused.problems().get(0).sentence().contains(told), refused.getMessage());
    }
}
