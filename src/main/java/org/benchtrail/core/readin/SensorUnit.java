package org.benchtrail.core.readin;

import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.Invalid;

/**
 * What a Redfish Sensor measures, and in what unit.
 *
 * <p>Source: DSP2046, Sensor: {@code ReadingUnits} is a UCUM code, and every {@code ReadingType} has its own; schema v1_0_0 wrote
 * RPM where later ones write {rev}/min. A code that is not known here is kept as it stands.
 */
record SensorUnit(String quantity, String unit) {
    private static final Map<String, String> UCUM = Map.of(
            "Cel", "°C",
            "{rev}/min", "r/min",
            "RPM", "r/min",
            "V.A", "VA",
            "W.h", "Wh",
            "kW.h", "kWh",
            "A.h", "Ah");

    private static final Map<String, Set<String>> OF_TYPE = Map.of(
            "Temperature", Set.of("Cel"),
            "Humidity", Set.of("%"),
            "Power", Set.of("W"),
            "Voltage", Set.of("V"),
            "Current", Set.of("A"),
            "Frequency", Set.of("Hz"),
            "Rotational", Set.of("{rev}/min", "RPM"),
            "Percent", Set.of("%"));

    private static final Map<String, String> QUANTITY =
            Map.of("Cel", "temperature", "V", "voltage", "A", "current", "W", "power", "Hz", "frequency", "%", "share");

    /** @throws Invalid if a reading has no unit, or one that its type cannot have */
    static SensorUnit of(TreeNode sensor) {
        String code = sensor.text("ReadingUnits");
        String type = sensor.text("ReadingType");
        if (code.isEmpty() && sensor.has("Reading")) {
            throw new Invalid(sensor.at("ReadingUnits"), "A reading needs its unit, such as Cel, V, W or {rev}/min.");
        }
        Set<String> fitting = OF_TYPE.getOrDefault(type, Set.of(code));
        if (!code.isEmpty() && !fitting.contains(code)) {
            throw new Invalid(sensor.at("ReadingUnits"), "A reading of type " + type + " is never in '" + code + "'.");
        }
        return new SensorUnit(quantity(type, code), UCUM.getOrDefault(code, code));
    }

    private static String quantity(String type, String code) {
        return switch (type) {
            case "" -> QUANTITY.getOrDefault(code, code.contains("rev") || code.equals("RPM") ? "speed" : "value");
            case "Rotational" -> "speed";
            case "EnergykWh", "EnergyWh", "EnergyJoules" -> "energy";
            default -> type.replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
        };
    }
}
