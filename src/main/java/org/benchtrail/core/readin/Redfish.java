package org.benchtrail.core.readin;

import java.math.BigDecimal;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/**
 * Readings out of Redfish resources: Thermal, Power and Sensor, one of them, a list of them, or a collection with its members in
 * it.
 *
 * <p>Takes the tree that a JSON parser made: maps, lists, strings, {@link BigDecimal} for every number, booleans, null. A
 * problem's field is the path, such as {@code Temperatures[0].ReadingCelsius}.
 *
 * <p>Source: DMTF DSP0268 and DSP2046. A reading of null means that the device has none at the moment: it is skipped and named.
 */
public final class Redfish {
    private static final Set<String> THERMAL = Set.of("Temperatures", "Fans");
    private static final Set<String> POWER = Set.of("PowerControl", "Voltages", "PowerSupplies");

    private final Draft draft;
    private final RowProblems problems = new RowProblems();

    private Redfish(About about) {
        draft = new Draft(Kind.REDFISH, about.device(), "Redfish");
    }

    /** @throws Invalid if it is no such resource, or one of its values cannot be meant */
    public static ReadIn read(@Nullable Object tree, About about) {
        Redfish reader = new Redfish(about);
        reader.any("", tree);
        reader.problems.throwIfAny();
        if (reader.draft.isEmpty()) {
            throw new Invalid("text", "There is no reading in this resource: its lists are empty.");
        }
        return reader.draft.done();
    }

    private void any(String path, @Nullable Object tree) {
        if (tree instanceof List<?> list) {
            for (int i = 0; i < list.size(); i++) {
                Object entry = list.get(i);
                String at = path + "[" + i + "]";
                problems.keep(() -> resource(TreeNode.of(at, entry)));
            }
        } else {
            problems.keep(() -> resource(TreeNode.of(path, tree)));
        }
    }

    private void resource(TreeNode node) {
        if (node.names("Members")) {
            node.list("Members").forEach(member -> problems.keep(() -> member(member)));
        } else if (THERMAL.stream().anyMatch(node::names) || POWER.stream().anyMatch(node::names)) {
            members(node);
        } else if (node.names("Reading")) {
            sensor(node);
        } else {
            throw new Invalid(
                    node.path().isEmpty() ? "text" : node.path(),
                    "This is no Thermal, Power or Sensor resource: it has none of Temperatures, Fans, PowerControl, Voltages,"
                            + " PowerSupplies, Reading, Members.");
        }
    }

    private void member(TreeNode member) {
        if (member.members().keySet().equals(Set.of("@odata.id"))) {
            draft.skip(member.path() + ": only a link; fetch the resource itself, or the collection with its members.");
        } else {
            resource(member);
        }
    }

    private void members(TreeNode node) {
        each(node, "Temperatures", this::temperature);
        each(node, "Fans", this::fan);
        each(node, "Voltages", this::voltage);
        each(node, "PowerControl", this::control);
        each(node, "PowerSupplies", this::supply);
        if (node.has("Redundancy")) {
            draft.skip(node.at("Redundancy") + ": is not read.");
        }
    }

    private void each(TreeNode node, String list, java.util.function.Consumer<TreeNode> reader) {
        problems.keep(() -> node.list(list).forEach(member -> problems.keep(() -> reader.accept(member))));
    }

    private void temperature(TreeNode t) {
        String point = point(t);
        reading(t, "ReadingCelsius", "temperature", "°C", point, Thresholds.ofMember(t));
        health(t, point);
    }

    private void fan(TreeNode fan) {
        String point = point(fan);
        if (fan.names("ReadingRPM")) { // Thermal v1_0_0
            reading(fan, "ReadingRPM", "fan speed", "r/min", point, Thresholds.ofMember(fan));
        } else {
            reading(fan, "Reading", "fan speed", fanUnit(fan), point, Thresholds.ofMember(fan));
        }
        health(fan, point);
    }

    private static String fanUnit(TreeNode fan) {
        String unit = fan.text("ReadingUnits");
        return switch (unit) {
            case "RPM" -> "r/min";
            case "Percent" -> "%";
            case "" -> {
                if (fan.has("Reading")) {
                    throw new Invalid(fan.at("ReadingUnits"), "A fan's reading needs its unit: RPM or Percent.");
                }
                yield "%";
            }
            default ->
                throw new Invalid(fan.at("ReadingUnits"), "A fan turns in RPM or Percent, not in '" + unit + "'.");
        };
    }

    private void voltage(TreeNode voltage) {
        String point = point(voltage);
        reading(voltage, "ReadingVolts", "voltage", "V", point, Thresholds.ofMember(voltage));
        health(voltage, point);
    }

    private void control(TreeNode control) {
        String point = point(control);
        BigDecimal limit =
                control.child("PowerLimit").map(l -> l.number("LimitInWatts")).orElse(null);
        reading(control, "PowerConsumedWatts", "power drawn", "W", point, upTo(control, "LimitInWatts", limit));
        health(control, point);
    }

    /** The limit that was set; where none is, the capacity of the source. */
    private static Bounds upTo(TreeNode node, String name, @Nullable BigDecimal limit) {
        BigDecimal most = limit == null ? node.number("PowerCapacityWatts") : limit;
        String from = limit == null ? "PowerCapacityWatts" : name;
        return most == null ? Bounds.NONE : new Bounds(null, most, "the device's own limit (Redfish " + from + ")");
    }

    private void supply(TreeNode supply) {
        String point = point(supply);
        reading(supply, "LineInputVoltage", "input voltage", "V", point, inputRange(supply));
        optional(supply, "PowerInputWatts", "power drawn", "W", point, Bounds.NONE);
        String output = supply.names("PowerOutputWatts") ? "PowerOutputWatts" : "LastPowerOutputWatts";
        optional(supply, output, "power delivered", "W", point, upTo(supply, "", null));
        optional(supply, "EfficiencyPercent", "efficiency", "%", point, Bounds.NONE);
        health(supply, point);
    }

    /** Where the supply has several ranges, which of them it runs in is not told, and so there is no limit. */
    private static Bounds inputRange(TreeNode supply) {
        List<TreeNode> ranges = supply.list("InputRanges");
        if (ranges.size() != 1) {
            return Bounds.NONE;
        }
        BigDecimal lower = ranges.get(0).number("MinimumVoltage");
        BigDecimal upper = ranges.get(0).number("MaximumVoltage");
        return lower == null && upper == null
                ? Bounds.NONE
                : new Bounds(lower, upper, "the device's own range (Redfish InputRanges)");
    }

    private void sensor(TreeNode sensor) {
        String point = point(sensor);
        SensorUnit unit = SensorUnit.of(sensor);
        reading(sensor, "Reading", unit.quantity(), unit.unit(), point, Thresholds.ofSensor(sensor));
        health(sensor, point);
    }

    private void reading(
            TreeNode node, String name, String quantity, String unit, String point, Thresholds thresholds) {
        reading(node, name, quantity, unit, point, thresholds.bounds());
        BigDecimal value = node.number(name);
        if (value != null && !thresholds.passed(value).isEmpty()) {
            draft.finding(
                    point + ": " + quantity + " " + value.toPlainString() + " " + unit + " is "
                            + thresholds.passed(value) + ".",
                    false);
        }
    }

    private void optional(TreeNode node, String name, String quantity, String unit, String point, Bounds bounds) {
        if (node.names(name)) {
            reading(node, name, quantity, unit, point, bounds);
        }
    }

    private void reading(TreeNode node, String name, String quantity, String unit, String point, Bounds bounds) {
        BigDecimal value = node.number(name);
        if (value == null) {
            draft.skip(point + ": no " + quantity + " at the moment" + state(node) + ".");
            return;
        }
        possible(node.at(name), value, unit);
        draft.reading(node.at(name), quantity, value, unit, point, bounds);
    }

    private static void possible(String path, BigDecimal value, String unit) {
        BigDecimal least = switch (unit) {
            case "°C" -> new BigDecimal("-273.15");
            case "r/min", "Hz", "%" -> BigDecimal.ZERO;
            default -> null;
        };
        if (least != null && value.compareTo(least) < 0) {
            throw new Invalid(path, "Nothing can be below " + least.toPlainString() + " " + unit + ": read it again.");
        }
    }

    private static String state(TreeNode node) {
        String state = node.child("Status").map(s -> s.text("State")).orElse("");
        return state.isEmpty() ? "" : " (" + state + ")";
    }

    private void health(TreeNode node, String point) {
        String health = node.child("Status").map(s -> s.text("Health")).orElse("");
        if (!health.isEmpty() && !health.equals("OK")) {
            draft.finding(point + ": the device itself says " + health + " (Redfish Status.Health).", false);
        }
    }

    private static String point(TreeNode node) {
        String name = first(node, "Name", "FanName", "MemberId", "Id");
        String context = node.text("PhysicalContext");
        String said = name.isEmpty() ? node.path() : name;
        String point = context.isEmpty() ? said : said + " (" + context + ")";
        return point.isEmpty() ? "sensor" : point;
    }

    private static String first(TreeNode node, String... names) {
        for (String name : names) {
            if (!node.text(name).isEmpty()) {
                return node.text(name);
            }
        }
        return "";
    }
}
