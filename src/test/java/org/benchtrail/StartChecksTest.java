package org.benchtrail;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StartChecksTest {
    @ParameterizedTest
    @ValueSource(strings = {"127.0.0.1", "localhost", "::1"})
    void thisMachineOnly_mayStart(String host) {
        assertEquals(Optional.empty(), new StartChecks(true, host, false, false).refusal());
        assertEquals(Optional.empty(), new StartChecks(false, host, false, false).refusal());
    }

    @ParameterizedTest
    @ValueSource(strings = {"0.0.0.0", "192.0.2.4", "::", "bench.example"})
    void demoOnTheNetwork_mayNot_evenOverTls(String host) {
        assertTrue(new StartChecks(true, host, true, true).refusal().orElse("").contains("The demo's passwords"));
    }

    @Test
    void plainHttpOnTheNetwork_takesACertificateOrAProxy() {
        assertTrue(new StartChecks(false, "0.0.0.0", false, false)
                .refusal()
                .orElse("")
                .contains("in the clear"));
        assertEquals(Optional.empty(), new StartChecks(false, "0.0.0.0", true, false).refusal());
        assertEquals(Optional.empty(), new StartChecks(false, "0.0.0.0", false, true).refusal());
    }
}
