package org.benchtrail.audit;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;
import org.benchtrail.core.audit.SignalNumbers;

/** How audits go on by themselves. */
@ConfigMapping(prefix = "benchtrail.audit")
public interface AuditConfig {
    /** How often is looked whether a period has ended, or a head has come; nothing by itself at zero. */
    @WithDefault("PT15S")
    Duration every();

    /** By which numbers the signals of the lots to come are made. */
    Signals signals();

    /** See {@link SignalNumbers}. */
    interface Signals {
        @WithDefault("15")
        int shortText();

        @WithDefault("3")
        int fewestWords();

        @WithDefault("3")
        int ticketsAlike();

        @WithDefault("8")
        int wordsInARow();

        @WithDefault("PT20S")
        Duration justBefore();

        @WithDefault("PT2M")
        Duration usualTime();

        @WithDefault("5")
        int batch();

        @WithDefault("PT60S")
        Duration batchWithin();

        @WithDefault("PT1H")
        Duration batchLate();

        @WithDefault("PT30S")
        Duration leftWithin();

        @WithDefault("3")
        int timesTheUsual();

        /** @throws IllegalArgumentException if one of them is out of its range */
        default SignalNumbers numbers() {
            return new SignalNumbers(
                    shortText(),
                    fewestWords(),
                    ticketsAlike(),
                    wordsInARow(),
                    justBefore(),
                    usualTime(),
                    batch(),
                    batchWithin(),
                    batchLate(),
                    leftWithin(),
                    timesTheUsual());
        }
    }
}
