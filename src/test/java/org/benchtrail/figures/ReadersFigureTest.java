package org.benchtrail.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.audit.JudgedRequirements.Readers;
import org.benchtrail.core.Published;
import org.benchtrail.core.audit.ReaderAgreement;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.statistics.Kappa;
import org.junit.jupiter.api.Test;

/** How far readers agree, as a figure: from thirty pairs on, with the counts beside it, and without their names. */
class ReadersFigureTest {
    /** In the order of marks: satisfied, not satisfied, not applicable, cannot tell. */
    private static Readers readers(String lot, int place, int of, long[][] table) {
        long pairs = Arrays.stream(table).flatMapToLong(Arrays::stream).sum();
        long agreed = 0;
        for (int i = 0; i < table.length; i++) {
            agreed += table[i][i];
        }
        return new Readers(
                lot,
                place,
                of,
                new ReaderAgreement(
                        "reader-anna",
                        "reader-bo",
                        Arrays.stream(table)
                                .map(row -> Arrays.stream(row).boxed().toList())
                                .toList(),
                        pairs,
                        agreed,
                        pairs < ReaderAgreement.LEAST ? Optional.empty() : Optional.of(Kappa.of(table)),
                        Map.of()),
                List.of(new TicketNumber(40718), new TicketNumber(40719)));
    }

    private static long[][] table(long both, long one, long other, long not) {
        return new long[][] {{both, one, 0, 0}, {other, not, 0, 0}, {0, 0, 0, 0}, {0, 0, 0, 0}};
    }

    /** The textbook's table of 50: 0.40 with an error of 0.126996. */
    @Test
    void kappa_isThatOfTheTextbook_withItsTableAndTickets() {
        Figure figure = ReadersFigure.of(List.of(readers("2026-10", 1, 1, table(20, 5, 10, 15))));
        Figure.Row row = figure.rows().get(0);
        Published.check(
                "50 grant proposals, a textbook example of Cohen's kappa",
                List.of("50", "35", "70", "0.40", "0.13"),
                row.cells().subList(1, 6));
        assertEquals("2026-10", row.first());
        assertEquals(
                "20 both satisfied; 5 satisfied, not satisfied; 10 not satisfied, satisfied; 15 both not satisfied",
                row.cells().get(6));
        assertEquals(List.of(40718, 40719), row.tickets());
        assertNotNull(figure.chart());
        assertEquals("", figure.few());
        assertEquals(List.of(), figure.unusual());
    }

    @Test
    void kappa_isShownFromThirtyPairs_andSaidBelow() {
        Figure few = ReadersFigure.of(List.of(readers("2026-10", 1, 1, table(20, 4, 2, 3))));
        assertEquals(
                List.of("29", "23", "", "29 of 30 needed", ""),
                few.rows().get(0).cells().subList(1, 6));
        assertNull(few.chart());
        assertTrue(few.few().contains("30 pairs"), few.few());
        Figure enough = ReadersFigure.of(List.of(readers("2026-10", 1, 1, table(20, 4, 2, 4))));
        assertEquals("80", enough.rows().get(0).cells().get(3));
        assertNotNull(enough.chart());
    }

    @Test
    void whereAllMarksAreOne_kappaIsNotDefined() {
        Figure one = ReadersFigure.of(List.of(readers("2026-10", 1, 1, table(40, 0, 0, 0))));
        assertEquals(
                List.of("40", "40", "100", "not defined", ""),
                one.rows().get(0).cells().subList(1, 6));
        assertNull(one.chart());
    }

    @Test
    void nobodyIsNamed_andTwoWhoAgreeLittleAreWorthALook() {
        Figure figure = ReadersFigure.of(List.of(
                readers("2026-10", 1, 2, table(20, 20, 20, 20)), readers("2026-10", 2, 2, table(40, 1, 1, 20))));
        assertEquals(
                List.of("Audit 2026-10, two readers, 1 of 2: the two agree little, kappa 0.00."), figure.unusual());
        assertEquals("2026-10, two readers, 2 of 2", figure.rows().get(1).first());
        assertFalse(figure.toString().contains("anna") || figure.toString().contains("reader-bo"));
        assertTrue(ReadersFigure.of(List.of()).few().startsWith("No ticket was read by two"));
    }
}
