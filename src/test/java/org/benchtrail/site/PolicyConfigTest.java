package org.benchtrail.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.smallrye.config.SmallRyeConfigBuilder;
import java.math.BigDecimal;
import java.time.Duration;
import org.benchtrail.core.method.Policy;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a site may decide, and that anything else stops the start. */
class PolicyConfigTest {
    private static Policy policy(String... settings) {
        SmallRyeConfigBuilder config = new SmallRyeConfigBuilder().withMapping(PolicyConfig.class);
        for (int i = 0; i < settings.length; i += 2) {
            config.withDefaultValue("benchtrail.policy." + settings[i], settings[i + 1]);
        }
        return config.build().getConfigMapping(PolicyConfig.class).policy();
    }

    @Test
    void withoutSettings_isTheUsual() {
        assertEquals(Policy.usual(), policy());
    }

    @Test
    void settings_areTaken() {
        assertEquals(
                new Policy(
                        new BigDecimal("99.50"),
                        Duration.ofMinutes(1),
                        Duration.ofDays(365),
                        Duration.ZERO,
                        new BigDecimal("10")),
                policy(
                        "approval-cost-limit", " 99.50 ",
                        "data-answer-max-age", "1M",
                        "soak-time", "P365D",
                        "reopen-window", "PT0S",
                        "guard-band", "10"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "approval-cost-limit | -0.01 | Give a number from 0 to 1000000000.",
                "approval-cost-limit | a lot | Give a number from 0 to 1000000000.",
                "data-answer-max-age | PT59S | Give a length of time such as PT48H or P14D, from PT1M to PT8760H.",
                "soak-time | P366D | Give a length of time such as PT48H or P14D, from PT1M to PT8760H.",
                "soak-time | two days | Give a length of time such as PT48H or P14D, from PT1M to PT8760H.",
                "reopen-window | PT-1S | Give a length of time such as PT48H or P14D, from PT0S to PT87600H.",
                "guard-band | 10.1 | Give a number from 0 to 10.",
                "repair-odds | 0.5 | Give a number from 1 to 99."
            })
    void wrongValue_stopsTheStart_andIsNamedWithWhatIsAllowed(String setting, String value, String allowed) {
        String told = assertThrows(RuntimeException.class, () -> policy(setting, value))
                .getMessage();
        assertTrue(told.contains("benchtrail.policy." + setting), told);
        assertTrue(told.contains("\"" + value + "\""), told);
        assertTrue(told.contains(allowed), told);
    }
}
