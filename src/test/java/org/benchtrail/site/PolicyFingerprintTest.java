package org.benchtrail.site;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.Policy;
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
