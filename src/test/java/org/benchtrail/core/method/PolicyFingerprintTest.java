package org.benchtrail.core.method;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class PolicyFingerprintTest {
    private static Policy policy(String cost, long dataHours, long soakHours, long reopenDays, String guard) {
        return new Policy(
                new BigDecimal(cost),
                Duration.ofHours(dataHours),
                Duration.ofHours(soakHours),
                Duration.ofDays(reopenDays),
                new BigDecimal(guard));
    }

    @Test
    void sameValues_haveTheSameFingerprint_howeverTheyAreWritten() {
        Set<String> prints = Stream.of(
                        Policy.usual(), policy("250.00", 24, 48, 14, "2.0"), policy("2.5E2", 24, 48, 14, "2"))
                .map(PolicyFingerprint::of)
                .collect(Collectors.toSet());
        assertEquals(1, prints.size());
        assertEquals(16, prints.iterator().next().length());
    }

    /** What a file says of a policy is one only if it comes back to the name that entries give it. */
    @Test
    void itsLines_areReadBack_andOthersAreNone() {
        Policy policy = policy("251.5", 25, 49, 15, "3");
        String lines = PolicyFingerprint.lines(policy);
        assertEquals(policy, PolicyFingerprint.read(lines));
        assertEquals(PolicyFingerprint.of(policy), PolicyFingerprint.name(lines));
        for (String other : List.of(
                "",
                lines.replace("251.5", "251.50"),
                lines.replace("251.5", "much"),
                lines.replace("PT25H", "25 hours"),
                lines + "more=1\n",
                lines.substring(lines.indexOf('\n') + 1))) {
            assertThrows(IllegalArgumentException.class, () -> PolicyFingerprint.read(other), other);
        }
    }

    @Test
    void anyOtherValue_changesIt() {
        Set<String> prints = Stream.of(
                        policy("250", 24, 48, 14, "2"),
                        policy("251", 24, 48, 14, "2"),
                        policy("250", 25, 48, 14, "2"),
                        policy("250", 24, 49, 14, "2"),
                        policy("250", 24, 48, 15, "2"),
                        policy("250", 24, 48, 14, "3"))
                .map(PolicyFingerprint::of)
                .collect(Collectors.toSet());
        assertEquals(6, prints.size());
    }
}
