package org.benchtrail.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class ShiftLineTest {
    private static ShiftLine line(String cause, double after) {
        return new ShiftLine("Overheating", cause, "fan turns", "yes", 0.15, after, false);
    }

    @Test
    void theLargestComesFirst_andWhatDiffersByATraceStandsByItsWords() {
        List<ShiftLine> mixed =
                List.of(line("worn fan", 0.139), line("dust", Math.nextUp(Math.nextUp(0.139))), line("paste", 0.1));
        for (List<ShiftLine> given : List.of(mixed, List.of(mixed.get(1), mixed.get(2), mixed.get(0)))) {
            assertEquals(
                    List.of("paste", "dust", "worn fan"),
                    given.stream()
                            .sorted(ShiftLine.LARGEST_FIRST)
                            .map(ShiftLine::cause)
                            .toList());
        }
        assertEquals(
                List.of("paste", "worn fan"),
                Stream.of(line("worn fan", 0.139 - 1e-6), line("paste", 0.139 - 3e-6))
                        .sorted(ShiftLine.LARGEST_FIRST)
                        .map(ShiftLine::cause)
                        .toList());
    }
}
