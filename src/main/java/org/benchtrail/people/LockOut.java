package org.benchtrail.people;

import java.time.Duration;

/**
 * How long an account stays locked after wrong tries in a row.
 *
 * @param tries wrong tries until the first lock, at least 1
 * @param first how long the first lock lasts; each further wrong try doubles it
 * @param longest what the doubling never exceeds
 */
record LockOut(int tries, Duration first, Duration longest) {

    /** The lock that the {@code failures}-th wrong try in a row brings; zero while tries are left. */
    Duration after(int failures) {
        Duration lock = failures < tries ? Duration.ZERO : first;
        for (int i = tries; i < failures && lock.compareTo(longest) < 0; i++) {
            lock = lock.multipliedBy(2);
        }
        return lock.compareTo(longest) > 0 ? longest : lock;
    }
}
