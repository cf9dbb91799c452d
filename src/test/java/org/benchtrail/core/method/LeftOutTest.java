package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.atStep;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.ForecastCommitted;
import org.benchtrail.core.method.desk.ForecastKind;
import org.benchtrail.core.method.desk.Held;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.PresenceEnded;
import org.benchtrail.core.method.desk.Refused;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.method.test.ExpectedValue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What a fact cannot be without is named by its field. */
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

    @Test
    void requirementThatIsNone_isRefusedInARemark() {
        TicketFixture desk = atStep(Step.VERIFY);
        Invalid remark = assertThrows(
                Invalid.class, () -> desk.as(Sheets.SUE).does(new Remarked(null, "unheard-of", "Why?", null)));
        assertEquals("requirement", remark.problems().get(0).field());
    }
}
