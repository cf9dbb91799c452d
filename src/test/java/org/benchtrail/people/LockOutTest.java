package org.benchtrail.people;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LockOutTest {
    private static final LockOut FIVE = new LockOut(5, Duration.ofMinutes(5), Duration.ofHours(1));

    /** The rule as agreed: five wrong tries lock for 5 minutes; every further one doubles it, up to an hour. */
    @ParameterizedTest
    @CsvSource({"1,0", "4,0", "5,5", "6,10", "7,20", "8,40", "9,60", "10,60", "2000000000,60"})
    void lock_doublesUpToAnHour(int failures, long minutes) {
        assertEquals(Duration.ofMinutes(minutes), FIVE.after(failures));
    }

    @ParameterizedTest
    @CsvSource({"1,7", "2,7"})
    void firstLockLongerThanTheLongest_isCut(int failures, long minutes) {
        LockOut odd = new LockOut(1, Duration.ofMinutes(9), Duration.ofMinutes(7));
        assertEquals(Duration.ofMinutes(minutes), odd.after(failures));
    }
}
