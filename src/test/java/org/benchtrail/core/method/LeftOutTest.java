package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.atStep;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.ForecastCommitted;
import org.benchtrail.core.method.desk.ForecastKind;
import org.benchtrail.core.method.desk.Held;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.PresenceEnded;
import org.benchtrail.core.method.desk.PresenceSigned;
import org.benchtrail.core.method.desk.Refused;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.MarkKind;
import org.benchtrail.core.method.identify.PictureMarked;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.ExpectedValue;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.RankedCause;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What a fact cannot be without is named by its field; what it names is looked up; where it stands in the record. */
class LeftOutTest {
    private static Opened opened(Category category, Priority.Impact impact, Priority.Urgency urgency) {
        return new Opened(
                "40718-6", "Dark", "", category, "Laptop", "Desk", 1, impact, urgency, "ines", Set.of(Role.TECHNICIAN));
    }

    private static Arguments without(String field, Executable making) {
        return Arguments.of(field, making);
    }

    static Stream<Arguments> leftOut() {
        Priority.Impact one = Priority.Impact.ONE_PERSON;
        Priority.Urgency wait = Priority.Urgency.CAN_WAIT;
        return Stream.of(
                without("category", () -> opened(null, one, wait)),
                without("impact", () -> opened(Category.HEAT, null, wait)),
                without("urgency", () -> opened(Category.HEAT, one, null)),
                without("followUp", () -> new Held(WaitingFor.PART, null, "")),
                without("stayed", () -> new PresenceEnded(61, null, "All of it")),
                without("commitment", () -> new ForecastCommitted(ForecastKind.CAUSES, null, 1, "short")),
                without("lower", () -> new ExpectedValue(null, null, "V")));
    }

    @ParameterizedTest
    @MethodSource("leftOut")
    void whatIsLeftOut_isNamedByItsField(String field, Executable making) {
        Invalid refused = assertThrows(Invalid.class, making);
        assertEquals(field, refused.problems().get(0).field());
    }

    @Test
    void refusal_thatLacksNothing_isOne() {
        assertEquals(List.of(), new Refused("advanced", null).missing());
    }

    static Stream<Arguments> named() {
        Fact picture = new PictureMarked(9, MarkKind.CIRCLE, 1, 2, 3, 4, "Bent");
        return Stream.of(
                Arguments.of(picture, List.of(new Reference(9, AttachmentAdded.class, "picture"))),
                Arguments.of(new Corrected(5, "A slip", null), List.of(new Reference(5, Fact.class, "entry"))),
                Arguments.of(
                        new PresenceEnded(61, true, "All"),
                        List.of(new Reference(61, PresenceSigned.class, "presence"))),
                Arguments.of(new PresenceSigned(23, "tom"), List.of(new Reference(23, Fact.class, "about"))));
    }

    @ParameterizedTest
    @MethodSource("named")
    void entriesThatItNames_areLookedUp(Fact fact, List<Reference> references) {
        assertEquals(references, fact.references());
    }

    @Test
    void resultsEntries_areItsCheck_andItsReadingIfItHasOne() {
        List<String> alone = new ResultRecorded(4, "Low", CheckOutcome.SUPPORTS, null)
                .references().stream().map(Reference::field).toList();
        List<String> measured = new ResultRecorded(4, "Low", CheckOutcome.SUPPORTS, 7)
                .references().stream().map(Reference::field).toList();
        assertEquals(List.of("check"), alone);
        assertEquals(List.of("check", "reading"), measured);
    }

    @Test
    void requirementThatIsNone_isRefusedInRemarkAndAddendum() {
        TicketFixture desk = atStep(Step.VERIFY);
        Invalid remark = assertThrows(
                Invalid.class, () -> desk.as(Sheets.SUE).does(new Remarked(null, "unheard-of", "Why?", null)));
        assertEquals("requirement", remark.problems().get(0).field());
    }

    @Test
    void onlyARankingByTheCatalogue_tellsRanking() {
        assertTrue(new TheoriesRanked(List.of(), "catalogue", List.of(new RankedCause("h", "Dust", "0.4")), 1)
                .tellsRanking());
        assertFalse(new TheoriesRanked(List.of(1), "judgement").tellsRanking());
    }

    @Test
    void moveThroughTheGate_standsAsASignature_anEntrysRemarkAtItsEntry() {
        JobSheet sheet = atStep(Step.TEST).sheet();
        assertEquals(RecordPlace.SIGNATURE, new Advanced().placeIn(sheet));
        assertEquals(RecordPlace.LINE, new Reopened("Back").placeIn(sheet));
        assertEquals(RecordPlace.AT_ENTRY, new Remarked(2, null, "Why?", null).placeIn(sheet));
        assertEquals(RecordPlace.LINE, new Remarked(null, "onset-known", "Why?", null).placeIn(sheet));
    }
}
