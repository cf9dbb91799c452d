package org.benchtrail.audit;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;

/** How audits go on by themselves. */
@ConfigMapping(prefix = "benchtrail.audit")
public interface AuditConfig {
    /** How often is looked whether a period has ended, or a head has come; nothing by itself at zero. */
    @WithDefault("PT15S")
    Duration every();
}
