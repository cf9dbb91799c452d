package org.benchtrail.platform;

import io.quarkus.arc.DefaultBean;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.Duration;

/** The one clock of the server. */
public class ServerClock {
    /** Ticks in microseconds, because that is what a timestamp column keeps. */
    @Produces
    @Singleton
    @DefaultBean
    Clock clock() {
        return Clock.tick(Clock.systemUTC(), Duration.ofNanos(1000));
    }
}
