package org.benchtrail.site;

import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.Policy;

/** A short name of a policy's values: the same values have the same name, on every server and after every start. */
public final class PolicyFingerprint {
    private static final int DIGITS = 16;

    private PolicyFingerprint() {}

    /** The first 16 hexadecimal digits of the hash of its lines. */
    public static String of(Policy policy) {
        return HashChain.hash(lines(policy).getBytes(StandardCharsets.UTF_8)).substring(0, DIGITS);
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
