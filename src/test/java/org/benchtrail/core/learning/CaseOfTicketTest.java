package org.benchtrail.core.learning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.advice.SheetReader;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.ClosedCase;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Limits;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.Repair;
import org.benchtrail.core.diagnosis.Risk;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.document.Sureness;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.theorize.RankedCause;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CaseOfTicketTest {
    private static final Limits DEGREES = new Limits("degC", null, 95.0, 2, -20.0, 150.0);

    private static Finding finding(String id, Limits limits, String... values) {
        Map<String, Double> even = new java.util.HashMap<>();
        Arrays.stream(values).forEach(v -> even.put(v, 1.0 / values.length));
        Finding.Kind kind = limits == null ? Finding.Kind.ANSWER : Finding.Kind.READING;
        return new Finding(id, id + "?", kind, List.of(values), even, 1, Risk.NONE, List.of(), null, limits);
    }

    private static CauseCategory category(String id, String prefix, List<Finding> findings) {
        Repair repair = new Repair("mend", 5, 5, 0.9, 0, Risk.NONE, true, List.of());
        List<Cause> causes = List.of(
                new Cause(prefix + "1", prefix + " one", 1, List.of(), "look", 1, repair, ""),
                new Cause(prefix + "2", prefix + " two", 1, List.of(), "look", 1, repair, ""));
        return new CauseCategory(id, id, 240, List.of(), findings, causes, List.of());
    }

    private static final List<CauseCategory> CATALOGUE = List.of(
            category(
                    "heat",
                    "H",
                    List.of(
                            finding("dust", null, "no", "yes"),
                            finding("noise", null, "no", "yes"),
                            finding("hot", DEGREES, "inside", "above"))),
            category("storage", "S", List.of(finding("errors", null, "no", "yes"))),
            category("array", "A", List.of(finding("degraded", null, "no", "yes"))));

    private static TicketCase made(WorkedTicket ticket) {
        return CaseOfTicket.of(ticket.sheet("ines"), CATALOGUE, SheetReader.PLAIN);
    }

    private static WorkedTicket dusty() {
        return new WorkedTicket("H one", "H1");
    }

    private static ReadingRecorded celsius(String value, String unit) {
        return new ReadingRecorded(
                "temperature", value, unit, "processor", "sensor", null, null, "", null, null, "hot");
    }

    private static List<String> seen(TicketCase made) {
        return made.seen().stream()
                .map(s -> s.finding() + "=" + s.value() + (s.intake() ? " intake" : "")
                        + (s.beforeSettled() ? " before" : " after"))
                .toList();
    }

    @Test
    void closedTicket_becomesACase() {
        TicketCase made = made(dusty());
        assertEquals("heat", made.category());
        assertEquals("H1", made.cause());
        assertEquals("ines", made.technician());
        assertEquals("larkfield surveyors", made.site());
        assertEquals(ClosedCase.Confirmation.MEASURED, made.confirmation());
        assertEquals(dusty().sheet("ines").course().closed(), made.closed());
        assertNull(made.shown());
        assertEquals(
                ClosedCase.Confirmation.REPAIRED,
                made(dusty().sure(Sureness.BY_REPAIR)).confirmation());
        assertNull(made(dusty().at("Drawing office")).site());
    }

    @Test
    void answersReadingsAndResults_areFindings_thoseAfterTheCauseWasSettledMarked() {
        TicketCase made = made(dusty().answers("noise", "no")
                .identifies(celsius("98", "degC"))
                .checks("dust", "yes")
                .verifies(celsius("70", "degC")));
        assertEquals(
                List.of("noise=no intake before", "hot=above intake before", "dust=yes before", "hot=inside after"),
                seen(made));
    }

    @Test
    void lastAnswerCounts_unknownAndForeignOnesDoNot() {
        TicketCase made = made(dusty().answers("noise", "yes")
                .answers("noise", "no")
                .answers("dust", "unknown")
                .answers("dust", "perhaps")
                .answers("errors", "yes"));
        assertEquals(List.of("noise=no intake before"), seen(made));
    }

    /** 95 degC is the limit and its guard 2 K; 208.4 degF are 98 degC, 371.15 K as well. */
    @ParameterizedTest
    @CsvSource({
        "98, degC, above",
        "'208.4', '°F', above",
        "371.15, K, above",
        "90, '°C', inside",
        "95.5, degC, ",
        "94, degC, ",
        "400, degC, ",
        "98, V, ",
        "98, furlong, "
    })
    void reading_isJudgedByTheCataloguesLimits_orNotAtAll(String value, String unit, String expected) {
        List<TicketCase.Seen> seen =
                made(dusty().identifies(celsius(value, unit))).seen();
        assertEquals(
                expected == null ? List.of() : List.of(expected),
                seen.stream().map(TicketCase.Seen::value).toList());
    }

    @Test
    void causeOutsideTheCatalogue_isUnlistedInTheCategoryOfTheTicket() {
        WorkedTicket odd = new WorkedTicket("moth in the fan", null);
        assertEquals(Model.UNLISTED, made(odd).cause());
        assertEquals("heat", made(odd).category());
        var storage = org.benchtrail.core.method.Category.STORAGE;
        assertEquals("storage", made(new WorkedTicket("odd", null).of(storage)).category());
        var array = org.benchtrail.core.method.Category.ARRAY;
        assertEquals("array", made(new WorkedTicket("odd", null).of(array)).category());
        assertEquals("array", made(new WorkedTicket("A two", "A2").of(storage)).category());
    }

    private static String refusal(JobSheet sheet) {
        return assertThrows(Invalid.class, () -> CaseOfTicket.of(sheet, CATALOGUE, SheetReader.PLAIN))
                .problems()
                .get(0)
                .sentence();
    }

    @Test
    void whatCannotTeach_isRefusedWithItsReason() {
        var other = org.benchtrail.core.method.Category.OTHER;
        assertTrue(refusal(dusty().sure(Sureness.PRESUMED).sheet("ines")).contains("only presumed"));
        assertTrue(refusal(new WorkedTicket("x", "Z9").sheet("ines")).contains("no cause 'Z9'"));
        assertTrue(refusal(new WorkedTicket("x", null).of(other).sheet("ines")).contains("no category"));
        assertEquals("heat", made(new WorkedTicket("H one", "H1").of(other)).category());
        JobSheet again = dusty().sheet("ines");
        again = again.with(new Entry(WorkedTicket.stamp(again.entries() + 1, "sue"), new Reopened("back")));
        assertTrue(refusal(again).contains("Close the ticket"));
    }

    private static TheoriesRanked ranked(String p, int version) {
        return new TheoriesRanked(
                List.of(),
                "catalogue",
                List.of(new RankedCause("H2", "H two", "0.6"), new RankedCause("H1", "H one", p)),
                version);
    }

    @Test
    void forecast_isTheLastRankingBeforeTheDecisiveTest() {
        TicketCase made = made(dusty().answers("noise", "no")
                .theorizes(ranked("0.1", 3))
                .theorizes(ranked("0.3", 4))
                .verifies(ranked("0.9", 5))
                .checks("dust", "yes"));
        assertEquals(4, made.shown().catalogue());
        assertEquals(0.3, made.shown().forecast("H1").probabilities().get(1));
        assertEquals(1, made.shown().forecast("H1").truth());
        assertEquals(0.1, made.shown().forecast("H1").probabilities().get(2), 1e-12);
        assertEquals(2, made.shown().forecast("H9").truth(), "a truth that was not named falls to the rest");
        assertEquals(
                List.of("noise"),
                made.evidenceShown().reports().stream().map(r -> r.finding()).toList(),
                "the decisive test is not in it");
    }
}
