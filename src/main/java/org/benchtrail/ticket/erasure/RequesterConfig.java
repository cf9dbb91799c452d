package org.benchtrail.ticket.erasure;

import io.quarkus.runtime.configuration.DurationConverter;
import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithConverter;
import java.time.Duration;
import java.util.Optional;
import org.eclipse.microprofile.config.spi.Converter;

/** How long it is kept who reported a ticket. */
@ConfigMapping(prefix = "benchtrail.requesters")
public interface RequesterConfig {
    /** How long after the last of their tickets ended name and contact are erased; never by itself where it is not set. */
    @WithConverter(MonthToCentury.class)
    Optional<Duration> keptFor();

    /** See {@link #keptFor}. */
    final class MonthToCentury implements Converter<Duration> {
        private static final long serialVersionUID = 1L;
        private static final Duration LEAST = Duration.ofDays(30);
        private static final Duration MOST = Duration.ofDays(36_500);
        private static final String ALLOWED = "Give a length of time in days, from P30D to P36500D.";

        @Override
        public Duration convert(String value) {
            Duration span;
            try {
                span = DurationConverter.parseDuration(value);
            } catch (IllegalArgumentException e) {
                throw new IllegalArgumentException(ALLOWED, e);
            }
            if (span == null || span.compareTo(LEAST) < 0 || span.compareTo(MOST) > 0) {
                throw new IllegalArgumentException(ALLOWED);
            }
            return span;
        }
    }
}
