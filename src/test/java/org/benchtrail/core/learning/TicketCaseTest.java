package org.benchtrail.core.learning;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.benchtrail.core.diagnosis.ClosedCase;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.Sureness;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.ResultRecorded;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What a case hands to the learning, and who may not accept it. */
class TicketCaseTest {
    private static final Instant CLOSED = Instant.parse("2031-03-04T08:00:00Z");

    private static TicketCase.Seen seen(int entry, String finding, String value) {
        return new TicketCase.Seen(entry, finding, value, 0.95, true, true);
    }

    private static TicketCase made(TicketCase.@Nullable ShownRanking shown) {
        return new TicketCase(
                "heat",
                "H1",
                "Dust",
                "ines",
                "larkfield surveyors",
                ClosedCase.Confirmation.MEASURED,
                CLOSED,
                List.of(seen(4, "noise", "no"), seen(7, "dust", "yes")),
                shown);
    }

    private static TicketCase.ShownRanking ranking(int entry, String... probabilities) {
        return new TicketCase.ShownRanking(
                entry,
                3,
                IntStream.range(0, probabilities.length)
                        .mapToObj(i -> new TicketCase.Stated("H" + (i + 1), probabilities[i]))
                        .toList());
    }

    @Test
    void caseForTheLearning_keepsAllThatWasSeen_underTheTruthThatIsKnownNow() {
        assertEquals(
                new ClosedCase(
                        "case-9",
                        "ines",
                        "larkfield surveyors",
                        "sue",
                        true,
                        "H7",
                        ClosedCase.Confirmation.MEASURED,
                        CLOSED,
                        List.of(
                                new ClosedCase.CaseFinding("noise", "no", true, true),
                                new ClosedCase.CaseFinding("dust", "yes", true, true))),
                made(null).closedCase("case-9", "sue", "H7"));
    }

    @Test
    void evidenceShown_isWhatStoodBeforeTheRanking() {
        assertEquals(Evidence.NONE, made(null).evidenceShown());
        assertEquals(List.of("noise"), findings(made(ranking(7, "0.5"))));
        assertEquals(List.of("noise", "dust"), findings(made(ranking(8, "0.5"))));
        var report = made(ranking(7, "0.5")).evidenceShown().reports().get(0);
        assertEquals("4 no 0.95", report.id() + " " + report.value() + " " + report.reliability());
    }

    private static List<String> findings(TicketCase made) {
        return made.evidenceShown().reports().stream().map(r -> r.finding()).toList();
    }

    @Test
    void forecast_givesTheRestToWhatWasNotNamed_andNeverLessThanNothing() {
        assertEquals(
                List.of(0.5, 0.25, 0.25),
                ranking(7, "0.5", "0.25").forecast("H2").probabilities());
        assertEquals(1, ranking(7, "0.5", "0.25").forecast("H2").truth());
        assertEquals(0, ranking(7, "0.5", "0.25").forecast("H1").truth());
        assertEquals(
                List.of(0.75, 0.5, 0.0),
                ranking(7, "0.75", "0.5").forecast("H1").probabilities());
    }

    private static Entry entry(JobSheet sheet, String by, Fact fact) {
        int number = sheet.entries() + 1;
        return new Entry(new Stamp(number, CLOSED.plusSeconds(60L * number), by, Set.of(Role.TECHNICIAN)), fact);
    }

    @Test
    void hands_areWhoeverRecordedAResultAnActionTheCauseOrTheClosing() {
        JobSheet sheet = new WorkedTicket("H one", "H1").sheet("ines");
        sheet = sheet.with(entry(sheet, "rita", new ResultRecorded(1, "Seen", CheckOutcome.SUPPORTS, null)));
        sheet = sheet.with(entry(sheet, "otto", new ActionSettled(1, Settlement.CARRIED_OUT, "")));
        sheet = sheet.with(entry(sheet, "carla", new CauseNamed("Dust", "H1", Sureness.MEASURED)));
        sheet = sheet.with(entry(sheet, "clem", new Closed()));
        sheet = sheet.with(entry(sheet, "ole", new FindingRecorded("It hums", false)));
        List<String> hands = Stream.of("ines", "rita", "otto", "carla", "clem", "nobody")
                .filter(sheet::isHand)
                .toList();
        assertEquals(List.of("ines", "rita", "otto", "carla", "clem"), hands);
    }
}
