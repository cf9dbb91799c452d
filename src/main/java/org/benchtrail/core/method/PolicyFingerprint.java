package org.benchtrail.core.method;

import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.Collectors;
import org.benchtrail.core.integrity.HashChain;

/** A short name of a policy's values: the same values have the same name, on every server and after every start. */
public final class PolicyFingerprint {
    private static final int DIGITS = 16;

    private PolicyFingerprint() {}

    /** The first 16 hexadecimal digits of the hash of its lines. */
    public static String of(Policy policy) {
        return name(lines(policy));
    }

    /** The name of the policy of which these are the lines. */
    public static String name(String lines) {
        return HashChain.hash(lines.getBytes(StandardCharsets.UTF_8)).substring(0, DIGITS);
    }

    /**
     * The policy of which these are the lines.
     *
     * @throws IllegalArgumentException if they are the lines of none
     */
    public static Policy read(String lines) {
        try {
            Map<String, String> values = Arrays.stream(lines.split("\n"))
                    .map(line -> line.split("=", 2))
                    .collect(Collectors.toMap(part -> part[0], part -> part[1]));
            RecordComponent[] components = Policy.class.getRecordComponents();
            Object[] read = Arrays.stream(components)
                    .map(c -> value(c.getType(), String.valueOf(values.get(c.getName()))))
                    .toArray();
            Class<?>[] types =
                    Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
            Policy policy = Policy.class.getDeclaredConstructor(types).newInstance(read);
            if (lines(policy).equals(lines)) {
                return policy;
            }
        } catch (RuntimeException | ReflectiveOperationException e) {
            throw new IllegalArgumentException("not the values of a policy", e);
        }
        throw new IllegalArgumentException("not the values of a policy as they are written");
    }

    private static Object value(Class<?> type, String text) {
        return type == Duration.class ? Duration.parse(text) : new BigDecimal(text);
    }

    /** One line {@code name=value} for each value. */
    public static String lines(Policy policy) {
        StringBuilder lines = new StringBuilder();
        for (RecordComponent component : Policy.class.getRecordComponents()) {
            Object value = FactKinds.value(policy, component);
            String text = value instanceof BigDecimal number
                    ? number.stripTrailingZeros().toPlainString()
                    : String.valueOf(value);
            lines.append(component.getName()).append('=').append(text).append('\n');
        }
        return lines.toString();
    }
}
