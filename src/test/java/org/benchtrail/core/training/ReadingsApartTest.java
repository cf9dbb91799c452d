package org.benchtrail.core.training;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/** By how many standard deviations two samples differ. */
class ReadingsApartTest {
    private static double[] repeated(double... values) {
        return DoubleStream.iterate(0, i -> i + 1)
                .limit(10)
                .flatMap(i -> DoubleStream.of(values))
                .toArray();
    }

    /** Means 1 and 7, each of 0 and 2 or 6 and 8: sums of squares 20 over 19, so 6 / sqrt(20 / 19) = 5.848077. */
    @Test
    void deviations_areTheDifferenceOverTheMeanSpread() {
        assertEquals(5.848077, ReadingsApart.deviations(repeated(0, 2), repeated(6, 8)), 1e-6);
    }

    @Test
    void whatNeverVaries_isToldByAnyDifference_andByNoneIfThereIsNone() {
        assertEquals(Double.POSITIVE_INFINITY, ReadingsApart.deviations(repeated(0, 0), repeated(1, 1)));
        assertEquals(0, ReadingsApart.deviations(repeated(0.1, 0.1), repeated(0.1, 0.1, 0.1)));
    }

    @Test
    void fewValues_areNoSample() {
        assertEquals(0, ReadingsApart.deviations(new double[] {1, 1}, repeated(0, 0)));
    }
}
