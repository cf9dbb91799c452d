package org.benchtrail.webhook;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;

/** Who is told of changes. */
@ConfigMapping(prefix = "benchtrail.webhooks")
public interface WebhookConfig {
    /** How often it is looked for changes; never at zero. */
    @WithDefault("PT5S")
    Duration every();

    /** The receivers, by names of small letters, digits and hyphens. */
    Map<String, To> to();

    /** A receiver. */
    interface To {
        /** Where changes are posted to; {@code https}, or {@code http} on this machine. */
        URI address();

        /** A file with the secret that messages are signed with, readable for its owner only. */
        Path secretFile();
    }
}
