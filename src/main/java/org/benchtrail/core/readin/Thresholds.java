package org.benchtrail.core.readin;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/**
 * The thresholds that came with a Redfish reading, on each side from the innermost out. The innermost is the limit; passing
 * one further out is worth a finding.
 *
 * <p>Source: DMTF DSP2046, Thermal and Power ({@code UpperThresholdNonCritical}, {@code …Critical}, {@code …Fatal}) and Sensor
 * ({@code Thresholds.UpperCaution.Reading}, {@code UpperCritical}, {@code UpperFatal}). A value equal to a threshold conforms.
 */
record Thresholds(List<Threshold> lower, List<Threshold> upper) {
    record Threshold(String name, BigDecimal value) {}

    private static final List<String> DEGREES = List.of("NonCritical", "Critical", "Fatal");
    private static final List<String> SENSOR_DEGREES = List.of("Caution", "Critical", "Fatal");

    static Thresholds ofMember(TreeNode member) {
        return new Thresholds(flat(member, "LowerThreshold"), flat(member, "UpperThreshold")).inOrder(member);
    }

    private static List<Threshold> flat(TreeNode member, String side) {
        List<Threshold> found = new ArrayList<>();
        for (String degree : DEGREES) {
            BigDecimal value = member.number(side + degree);
            if (value != null) {
                found.add(new Threshold(side + degree, value));
            }
        }
        return found;
    }

    static Thresholds ofSensor(TreeNode sensor) {
        return sensor.child("Thresholds")
                .map(t -> new Thresholds(nested(t, "Lower"), nested(t, "Upper")).inOrder(t))
                .orElse(new Thresholds(List.of(), List.of()));
    }

    private static List<Threshold> nested(TreeNode thresholds, String side) {
        List<Threshold> found = new ArrayList<>();
        for (String degree : SENSOR_DEGREES) {
            BigDecimal value = thresholds
                    .child(side + degree)
                    .map(t -> t.number("Reading"))
                    .orElse(null);
            if (value != null) {
                found.add(new Threshold(side + degree, value));
            }
        }
        return found;
    }

    /** @throws Invalid if they do not lie one inside the other: then values and limits would mean nothing */
    private Thresholds inOrder(TreeNode node) {
        List<Threshold> rising = new ArrayList<>();
        lower.forEach(t -> rising.add(0, t));
        rising.addAll(upper);
        for (int i = 1; i < rising.size(); i++) {
            Threshold below = rising.get(i - 1);
            Threshold above = rising.get(i);
            if (above.value().compareTo(below.value()) < 0) {
                throw new Invalid(
                        node.at(above.name()),
                        "This threshold lies below " + below.name() + ": they are out of order.");
            }
        }
        return this;
    }

    Bounds bounds() {
        Threshold low = lower.isEmpty() ? null : lower.get(0);
        Threshold high = upper.isEmpty() ? null : upper.get(0);
        if (low == null && high == null) {
            return Bounds.NONE;
        }
        List<String> names = Stream.of(low, high)
                .filter(Objects::nonNull)
                .map(Threshold::name)
                .toList();
        return new Bounds(
                value(low),
                value(high),
                "the device's own threshold" + (names.size() == 1 ? "" : "s") + " (Redfish " + String.join(", ", names)
                        + ")");
    }

    private static @Nullable BigDecimal value(@Nullable Threshold threshold) {
        return threshold == null ? null : threshold.value();
    }

    /** The outermost threshold beyond the first that the value has passed, in words; empty if none is. */
    String passed(BigDecimal value) {
        for (int i = lower.size() - 1; i > 0; i--) {
            if (value.compareTo(lower.get(i).value()) < 0) {
                return "below " + lower.get(i).name();
            }
        }
        for (int i = upper.size() - 1; i > 0; i--) {
            if (value.compareTo(upper.get(i).value()) > 0) {
                return "above " + upper.get(i).name();
            }
        }
        return "";
    }
}
