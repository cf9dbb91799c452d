package org.benchtrail.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShareTest {
    @ParameterizedTest
    @CsvSource({
        "0, 0.1, less than 0.1",
        "0.000999, 0.1, less than 0.1",
        "0.001, 0.1, 0.1",
        "0.3284, 0.1, 32.8",
        "0.5, 0.1, 50.0",
        "0.999, 0.1, 99.9",
        "0.99900001, 0.1, more than 99.9",
        "1, 0.1, more than 99.9",
        "0.0099, 1, less than 1",
        "0.01, 1, 1",
        "0.015, 1, 2",
        "0.99, 1, 99",
        "0.9901, 1, more than 99",
        "1, 1, more than 99"
    })
    void chance_isNeverSaidToBeNoneOrCertain(double probability, double step, String said) {
        assertEquals(said, Share.chance(probability, step));
    }

    @Test
    void chance_staysBetweenNoneAndCertain() {
        assertTrue(Share.ofChance(0) > 0);
        assertTrue(Share.ofChance(1) < 100);
        assertEquals(2.5, Share.ofChance(0.025));
    }

    @ParameterizedTest
    @CsvSource({
        "0, ''",
        "0.0005, less than 0.001",
        "0.001, ''",
        "50, ''",
        "99.999, ''",
        "99.9995, more than 99.999",
        "100, ''",
        "-0.0005, ''"
    })
    void edge_isSaidOnlyNextToNoneAndAll(double percent, String said) {
        assertEquals(Optional.of(said).filter(s -> !s.isEmpty()), Share.edge(percent, 0.001));
    }

    @Test
    void limitAtTheEdge_letsTheShareBeWrittenOut() {
        assertEquals(Optional.empty(), Share.edge(0.0005, 0.001, 0.0004));
        assertEquals(Optional.of("less than 0.001"), Share.edge(0.0005, 0.001, 0.001));
    }
}
