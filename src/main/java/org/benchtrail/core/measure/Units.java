package org.benchtrail.core.measure;

import static org.benchtrail.core.measure.Dimension.*;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Spelling;
import org.jspecify.annotations.Nullable;

/**
 * The units a technician types, and how what is typed is taken.
 *
 * <p>Rules, in order: the exact spelling; then the spelling without regard to case, but never across m (milli) and M (mega),
 * because {@code MW} for {@code mW} is wrong by nine decades; one letter alone has to be exact. A spelling that fits two
 * units is refused with both named: {@code Kb} may be kbit or kB. {@code KB} is read as kB, 1000 bytes; 1024 bytes are KiB.
 *
 * <p>Sources of the factors: SI Brochure (9th ed.) for prefixes, °C, h and min; international yard and pound agreement of
 * 1959 for ft and in; IEC 80000-13 for KiB to TiB.
 */
public final class Units {
    private static final Map<String, String> PREFIXES = Map.ofEntries(
            Map.entry("n", "0.000000001"),
            Map.entry("µ", "0.000001"),
            Map.entry("m", "0.001"),
            Map.entry("c", "0.01"),
            Map.entry("h", "100"),
            Map.entry("k", "1000"),
            Map.entry("M", "1000000"),
            Map.entry("G", "1000000000"),
            Map.entry("T", "1000000000000"),
            Map.entry("P", "1000000000000000"),
            Map.entry("Ki", "1024"),
            Map.entry("Mi", "1048576"),
            Map.entry("Gi", "1073741824"),
            Map.entry("Ti", "1099511627776"));

    private static final Map<String, Unit> EXACT = new LinkedHashMap<>();
    private static final Map<String, Set<Unit>> FOLDED = new LinkedHashMap<>();

    static {
        family(VOLTAGE, "1", "µ m k", "V", "v", "VDC", "VAC", "Vdc", "Vac", "Vrms", "volt", "volts");
        family(CURRENT, "1", "µ m", "A", "a", "ADC", "AAC", "Adc", "Aac", "amp", "amps", "ampere");
        family(RESISTANCE, "1", "µ m k M G", "Ω", "ohm", "Ohm", "ohms");
        family(POWER, "1", "µ m k M", "W", "w", "watt", "watts");
        family(APPARENT_POWER, "1", "k M", "VA");
        family(ENERGY, "1", "m k", "Wh");
        family(CHARGE, "1", "m", "Ah");
        family(FREQUENCY, "1", "k M G", "Hz");
        alias("MHz", "mhz");
        unit(ROTATION, "r/min", "rpm", "rev/min", "1/min");
        unit(TEMPERATURE, "K", "kelvin");
        scale("°C", "273.15", "1", "1", "C", "c", "degC", "celsius");
        scale("°F", "459.67", "5", "9", "F", "f", "degF", "fahrenheit");
        unit(THERMAL_RESISTANCE, "°C/W", "K/W", "C/W", "degC/W");
        family(TIME, "1", "n µ m", "s", "sec", "secs", "second", "seconds");
        add(TIME, "min", "60", "mins", "minute", "minutes");
        add(TIME, "h", "3600", "hr", "hrs", "hour", "hours");
        add(TIME, "d", "86400", "day", "days");
        family(DATA, "1", "k M G T P Ki Mi Gi Ti", "B", "byte", "bytes");
        alias("kB", "KB");
        family(DATA, "0.125", "k M G T", "bit", "b", "bits");
        family(DATA_RATE, "1", "k M G T", "bit/s", "b/s", "bps", "bits/s");
        family(DATA_RATE, "8", "k M G Ki Mi Gi", "B/s", "Bps");
        family(LENGTH, "1", "n µ m c k", "m", "metre", "metres", "meter", "meters");
        add(LENGTH, "ft", "0.3048", "foot", "feet");
        add(LENGTH, "in", "0.0254", "inch", "inches");
        family(PRESSURE, "1", "h k M", "Pa");
        family(PRESSURE, "100000", "m", "bar");
        unit(RATIO, "%", "percent", "pct");
        unit(LEVEL, "dB");
        unit(POWER_LEVEL, "dBm");
        unit(COUNT_RATE, "/d", "1/d");
        unit(COUNT, "count", "counts", "pcs");
        add(COUNT, "pages", "1", "page");
    }

    public static final Unit VOLT = named("V");
    public static final Unit AMPERE = named("A");
    public static final Unit WATT = named("W");
    public static final Unit VOLT_AMPERE = named("VA");
    public static final Unit HERTZ = named("Hz");
    public static final Unit CELSIUS = named("°C");
    public static final Unit KELVIN = named("K");
    public static final Unit SECOND = named("s");
    public static final Unit PERCENT = named("%");
    public static final Unit COUNTED = named("count");

    private Units() {}

    /**
     * The unit with this symbol.
     *
     * @throws IllegalArgumentException if the catalogue has none
     */
    public static Unit named(String symbol) {
        Unit unit = EXACT.get(symbol);
        if (unit == null) {
            throw new IllegalArgumentException("no unit is written " + symbol);
        }
        return unit;
    }

    /** The unit with this symbol, if the catalogue has it. */
    public static Optional<Unit> find(String symbol) {
        return Optional.ofNullable(EXACT.get(symbol));
    }

    /** The unit of time in which people go on after this one: h after d, min after h, s after min. */
    static Optional<Unit> smaller(Unit unit) {
        List<Unit> steps = List.of(named("d"), named("h"), named("min"), SECOND);
        int at = steps.indexOf(unit);
        return at < 0 || at + 1 == steps.size() ? Optional.empty() : Optional.of(steps.get(at + 1));
    }

    /** Every unit, in the order of the catalogue. */
    public static Collection<Unit> all() {
        return Collections.unmodifiableSet(new LinkedHashSet<>(EXACT.values()));
    }

    /**
     * The unit meant by what was typed.
     *
     * @param field under which a refusal is reported
     * @throws Invalid if no unit, or more than one, is written so; the sentence names the nearest known ones
     */
    public static Unit read(String field, String typed) {
        return read(field, typed, null);
    }

    /**
     * As {@link #read(String, String)}.
     *
     * @param usual the unit that the field asks for: a refusal then names it and those near it instead of the nearest spelling
     */
    static Unit read(String field, String typed, @Nullable Unit usual) {
        String spelling = tidy(typed);
        Unit exact = EXACT.get(spelling);
        if (exact != null) {
            return exact;
        }
        Set<Unit> meant = regardlessOfCase(spelling);
        if (meant.size() == 1) {
            return meant.iterator().next();
        }
        throw new Invalid(field, refusal(typed.strip(), spelling, meant, usual));
    }

    private static Set<Unit> regardlessOfCase(String spelling) {
        Set<Unit> meant = new LinkedHashSet<>();
        if (spelling.length() > 1) {
            for (Unit unit : FOLDED.getOrDefault(fold(spelling), Set.of())) {
                if (agreesOnMega(spelling, unit)) {
                    meant.add(unit);
                }
            }
        }
        return meant;
    }

    private static boolean agreesOnMega(String spelling, Unit unit) {
        char first = unit.symbol().charAt(0);
        return (first != 'm' && first != 'M')
                || first == spelling.charAt(0)
                || unit.symbol().equals("min");
    }

    private static String refusal(String typed, String spelling, Set<Unit> meant, @Nullable Unit usual) {
        if (meant.size() > 1) {
            return "'" + typed + "' can be read as " + symbols(meant) + ": type one of them.";
        }
        Set<Unit> otherCase = FOLDED.getOrDefault(fold(spelling), Set.of());
        boolean fits = usual == null || otherCase.stream().anyMatch(unit -> unit.dimension() == usual.dimension());
        if (!otherCase.isEmpty() && fits) {
            return "'" + typed + "' is not a known unit. Capitals matter here: was " + symbols(otherCase) + " meant?";
        }
        String unknown = "'" + typed + "' is not a known unit";
        return usual == null
                ? unknown + ". The nearest known one is " + nearest(spelling) + "."
                : unknown + " here: type the number in " + symbols(near(usual)) + ".";
    }

    /** The unit and up to two more of its kind, those of the nearest size first. */
    private static List<Unit> near(Unit usual) {
        return all().stream()
                .filter(unit -> unit.dimension() == usual.dimension())
                .sorted(Comparator.comparingDouble(unit -> Math.abs(Math.log(unit.scale() / usual.scale()))))
                .limit(3)
                .toList();
    }

    private static String symbols(Collection<Unit> units) {
        return String.join(" or ", units.stream().map(Unit::symbol).toList());
    }

    private static String nearest(String spelling) {
        return named(Spelling.nearest(spelling, EXACT.keySet())).symbol();
    }

    /** Look-alike characters made one: both micro signs, both ohm signs, ordinal and ring for the degree; spaces out. */
    private static String tidy(String typed) {
        StringBuilder out = new StringBuilder(typed.length());
        for (int i = 0; i < typed.length(); i++) {
            char c = typed.charAt(i);
            if (!Character.isWhitespace(c) && !Character.isSpaceChar(c)) {
                out.append(alike(c));
            }
        }
        return out.toString();
    }

    private static String alike(char c) {
        return switch (c) {
            case '\u03BC' -> "µ";
            case '\u2126' -> "Ω";
            case '\u00BA', '\u02DA' -> "°";
            case '\u2103' -> "°C";
            case '\u2109' -> "°F";
            case '\u212A' -> "K";
            case '\u2044', '\u2215' -> "/";
            default -> String.valueOf(c);
        };
    }

    private static String fold(String spelling) {
        return spelling.toLowerCase(Locale.ROOT);
    }

    private static void family(Dimension dimension, String factor, String prefixes, String... stems) {
        add(dimension, stems[0], factor, tail(stems));
        for (String prefix : prefixes.split(" ")) {
            List<String> spellings = new ArrayList<>();
            for (String stem : stems) {
                spellings.add(prefix + stem);
                if (prefix.equals("µ")) {
                    spellings.add("u" + stem);
                }
            }
            BigDecimal product = new BigDecimal(factor).multiply(new BigDecimal(factorOf(prefix)));
            register(new Unit(spellings.get(0), dimension, BigDecimal.ZERO, whole(product), BigDecimal.ONE), spellings);
        }
    }

    private static BigDecimal whole(BigDecimal factor) {
        return factor.stripTrailingZeros().scale() <= 0 ? factor.setScale(0) : factor.stripTrailingZeros();
    }

    private static String factorOf(String prefix) {
        String factor = PREFIXES.get(prefix);
        if (factor == null) {
            throw new IllegalArgumentException("no prefix is written " + prefix);
        }
        return factor;
    }

    private static void unit(Dimension dimension, String symbol, String... spellings) {
        add(dimension, symbol, "1", spellings);
    }

    private static void add(Dimension dimension, String symbol, String factor, String... spellings) {
        register(
                new Unit(symbol, dimension, BigDecimal.ZERO, new BigDecimal(factor), BigDecimal.ONE),
                List.of(spellings));
    }

    private static void scale(String symbol, String offset, String numerator, String denominator, String... spellings) {
        register(
                new Unit(
                        symbol,
                        TEMPERATURE,
                        new BigDecimal(offset),
                        new BigDecimal(numerator),
                        new BigDecimal(denominator)),
                List.of(spellings));
    }

    private static void register(Unit unit, List<String> spellings) {
        spell(unit.symbol(), unit);
        spellings.forEach(s -> spell(s, unit));
    }

    private static void alias(String symbol, String spelling) {
        spell(spelling, named(symbol));
    }

    private static void spell(String spelling, Unit unit) {
        @Nullable Unit other = EXACT.putIfAbsent(spelling, unit);
        if (other != null && !other.equals(unit)) {
            throw new IllegalStateException(spelling + " is written for " + other + " and for " + unit);
        }
        FOLDED.computeIfAbsent(fold(spelling), k -> new LinkedHashSet<>()).add(unit);
    }

    private static String[] tail(String[] stems) {
        return java.util.Arrays.copyOfRange(stems, 1, stems.length);
    }
}
