package org.benchtrail.core.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class SideTest {
    @Test
    void sumOfDecimals_liesOnTheLimitThatItIsByHand() {
        double sum = 0.1 + 0.2;
        assertTrue(sum > 0.3, "in binary numbers the sum is a trace too great");
        assertFalse(Side.above(sum, 0.3));
        assertFalse(Side.below(0.3, sum));
        assertEquals(0, Side.rest(0.3, sum));
    }

    @Test
    void lastDigitThatAnybodyTypes_tells() {
        assertTrue(Side.above(11.4000000001, 11.4));
        assertTrue(Side.below(11.3999999999, 11.4));
        assertFalse(Side.above(11.4, 11.4));
        assertFalse(Side.below(11.4, 11.4));
        assertEquals(-1e-10, Side.rest(11.4, 11.4000000001), 1e-14);
    }

    @Test
    void zeroAndTheInfinities_areLimitsToo() {
        assertTrue(Side.below(-1e-300, 0));
        assertTrue(Side.above(1e-300, 0));
        assertTrue(Side.below(1e300, Double.POSITIVE_INFINITY));
        assertTrue(Side.above(0, Double.NEGATIVE_INFINITY));
        assertFalse(Side.above(0, -0.0));
    }
}
