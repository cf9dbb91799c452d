package org.benchtrail.platform;

import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;

/** The server's clock in tests: it runs as the server's own, and can be put forward where a rule asks for time to pass. */
@Singleton
public class MovedClock extends Clock {
    private final Clock own = new ServerClock().clock();
    private volatile Duration ahead = Duration.ZERO;

    public void putForward(Duration by) {
        ahead = ahead.plus(by);
    }

    public void putRight() {
        ahead = Duration.ZERO;
    }

    @Override
    public ZoneId getZone() {
        return own.getZone();
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return Clock.offset(own.withZone(zone), ahead);
    }

    @Override
    public Instant instant() {
        return own.instant().plus(ahead);
    }
}
