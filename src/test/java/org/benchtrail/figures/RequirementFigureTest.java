package org.benchtrail.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.IntStream;
import org.benchtrail.audit.JudgedRequirements.Judged;
import org.benchtrail.core.method.TicketNumber;
import org.junit.jupiter.api.Test;

/** What audits found by requirement: a share from thirty marks on, and counts before. */
class RequirementFigureTest {
    private static List<String> cells(int judged, int faulty) {
        List<TicketNumber> tickets = IntStream.range(0, faulty)
                .mapToObj(i -> new TicketNumber(40718 + i))
                .toList();
        Figure.Row row = RequirementFigure.of(List.of(new Judged("scope-known", "Who is hit", judged, tickets)))
                .rows()
                .get(0);
        assertEquals(faulty, row.tickets().size());
        return row.cells();
    }

    /** 9 of 30: 0.166647 to 0.478758, recomputed in the design of the audit. */
    @Test
    void aShare_isShownFromThirty() {
        assertEquals(List.of("Who is hit", "29", "9", "29 of 30 needed", ""), cells(29, 9));
        assertEquals(List.of("Who is hit", "30", "9", "30", "16.7 to 47.9"), cells(30, 9));
        assertEquals(List.of("Who is hit", "31", "0", "0", "0 to 11"), cells(31, 0));
        assertEquals(
                "No audit of this period is concluded yet.",
                RequirementFigure.of(List.of()).few());
    }
}
