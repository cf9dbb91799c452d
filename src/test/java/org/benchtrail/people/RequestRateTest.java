package org.benchtrail.people;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class RequestRateTest {
    @Test
    void anAccount_isAnsweredSoOften_andTakesNothingFromOthers() {
        RequestRate rate = new RequestRate(() -> 3);
        assertEquals("\"requests\";q=3;w=60", rate.policy());
        for (int left = 2; left >= 0; left--) {
            RequestRate.Standing taken = rate.take("kim");
            assertTrue(taken.isAnswered());
            assertEquals(left, taken.left());
        }
        RequestRate.Standing refused = rate.take("kim");
        assertFalse(refused.isAnswered());
        assertEquals(0, refused.left());
        assertTrue(refused.next() >= 1 && refused.next() <= 20, "one comes back every 20 s: " + refused.next());
        assertTrue(refused.full() > 40 && refused.full() <= 60, "all are back after a minute: " + refused.full());
        assertTrue(rate.take("lou").isAnswered());
    }
}
