package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.INES;
import static org.benchtrail.core.method.Sheets.atStep;
import static org.benchtrail.core.method.Sheets.result;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.benchtrail.core.method.document.Sureness;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.junit.jupiter.api.Test;

/** How a cause is known follows from what was measured and done, and is no more than that. */
class SurenessTest {
    private static TicketFixture tested(CheckOutcome outcome, boolean measured) {
        TicketFixture desk = atStep(Step.TEST);
        int theory = desk.sheet().activeTheory().orElseThrow().entry();
        desk.as(INES).records(Sheets.check(theory));
        int check = desk.latest(CheckPlanned.class);
        desk.as(INES)
                .records(new ReadingRecorded(
                        "temperature", "98", "\u00b0C", "processor", "sensor", null, "85", "maker"));
        int reading = desk.latest(ReadingRecorded.class);
        desk.as(INES)
                .records(measured ? new ResultRecorded(check, "98 \u00b0C", outcome, reading) : result(check, outcome));
        return desk;
    }

    @Test
    void repairCarriedOut_showsIt_andAPlanAloneDoesNot() {
        assertEquals(Optional.empty(), Sureness.shownBy(atStep(Step.PLAN).sheet()));
        assertEquals(
                Optional.of(Sureness.BY_REPAIR),
                Sureness.shownBy(atStep(Step.DOCUMENT).sheet()));
    }

    @Test
    void valueMeasured_showsIt_ifItSupportsTheTheory() {
        assertEquals(
                Optional.of(Sureness.MEASURED),
                Sureness.shownBy(tested(CheckOutcome.SUPPORTS, true).sheet()));
        assertEquals(
                Optional.empty(),
                Sureness.shownBy(tested(CheckOutcome.SUPPORTS, false).sheet()));
        assertEquals(
                Optional.empty(),
                Sureness.shownBy(tested(CheckOutcome.INCONCLUSIVE, true).sheet()));
    }
}
