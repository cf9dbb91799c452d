package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ExpectedValue;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A reading that was expected before it was taken decides what the check says. */
class ExpectedValueTest {
    private static final ExpectedValue RIPPLE = new ExpectedValue(null, "50", "mV");

    private static ReadingRecorded reading(String value, String unit) {
        return new ReadingRecorded("ripple", value, unit, "plug", "scope", null, null, "");
    }

    private static CheckPlanned check(TicketFixture desk, @Nullable ExpectedValue expected) {
        return new CheckPlanned(
                desk.latest(TheoryStated.class), "Look at the ripple", "Little", false, Set.of(), null, expected);
    }

    private static Invalid.Problem refused(TicketFixture desk, Fact fact) {
        Invalid e = assertThrows(Invalid.class, () -> desk.as(INES).does(fact));
        assertEquals(1, e.problems().size());
        return e.problems().get(0);
    }

    @ParameterizedTest
    @CsvSource({
        "50, mV, SUPPORTS, REFUTES, The reading supports the theory: it is what was expected.",
        "0.0501, V, REFUTES, SUPPORTS, The reading rules the theory out: it is not what was expected.",
        "51, mV, REFUTES, INCONCLUSIVE, The reading rules the theory out: it is not what was expected."
    })
    void readingDecides_unlessItIsSaidWhyNot(
            String value, String unit, CheckOutcome decided, CheckOutcome other, String sentence) {
        TicketFixture desk = atStep(Step.TEST);
        int check = desk.as(INES).records(check(desk, RIPPLE));
        int reading = desk.as(INES).records(reading(value, unit));
        assertEquals(
                new Invalid.Problem("outcome", sentence + " Say why you take it otherwise."),
                refused(desk, new ResultRecorded(check, "As shown", other, reading)));
        desk.as(INES).records(new ResultRecorded(check, "As shown", decided, reading));
        int another = desk.as(INES).records(check(desk, RIPPLE));
        int again = desk.as(INES).records(reading(value, unit));
        desk.as(INES).records(new ResultRecorded(another, "As shown", other, again, null, "The probe was loose"));
    }

    @Test
    void whereNoValueWasExpected_thePersonDecides() {
        TicketFixture desk = atStep(Step.TEST);
        int check = desk.as(INES).records(check(desk, null));
        int reading = desk.as(INES).records(reading("50", "mV"));
        desk.as(INES).records(new ResultRecorded(check, "As shown", CheckOutcome.REFUTES, reading));
    }

    @Test
    void readingTakenBeforeTheCheckStoodAsItIs_isNoResultOfIt() {
        TicketFixture desk = atStep(Step.TEST);
        int before = desk.as(INES).records(reading("50", "mV"));
        int check = desk.as(INES).records(check(desk, RIPPLE));
        assertEquals("reading", refused(desk, result(check, before)).field());
        int between = desk.as(INES).records(reading("50", "mV"));
        desk.as(INES).records(new Corrected(check, "Tighter", check(desk, new ExpectedValue(null, "40", "mV"))));
        assertEquals("reading", refused(desk, result(check, between)).field());
        int after = desk.as(INES).records(reading("40", "mV"));
        desk.as(INES).records(result(check, after));
    }

    private static ResultRecorded result(int check, int reading) {
        return new ResultRecorded(check, "As shown", CheckOutcome.SUPPORTS, null).on(reading);
    }

    @Test
    void readingOfAnotherKind_cannotBeHeldAgainstIt() {
        TicketFixture desk = atStep(Step.TEST);
        int check = desk.as(INES).records(check(desk, RIPPLE));
        int amperes = desk.as(INES).records(reading("1", "A"));
        assertThrows(Invalid.class, () -> desk.as(INES).does(result(check, amperes)));
    }

    @ParameterizedTest
    @CsvSource({",50,at most 50 mV", "40,,at least 40 mV", "40,50,40 to 50 mV"})
    void expectation_isSaidInWords(@Nullable String lower, @Nullable String upper, String words) {
        assertEquals(words, new ExpectedValue(lower, upper, "mV").words());
    }

    @ParameterizedTest
    @CsvSource({"40,true", "39.9,false", "50,true", "50.1,false"})
    void bothEnds_areWhatIsExpected(String value, boolean holds) {
        assertEquals(holds, new ExpectedValue("40", "50", "mV").holds(reading(value, "mV")));
    }

    @ParameterizedTest
    @CsvSource({",,mV,lower", "40,50,,unit", "a lot,50,mV,lower", "40,a lot,mV,upper", "50,40,mV,upper"})
    void whatCannotBeExpected_isRefusedOnItsField(
            @Nullable String lower, @Nullable String upper, @Nullable String unit, String field) {
        Invalid e = assertThrows(
                Invalid.class,
                () -> new ExpectedValue(lower, upper, String.valueOf(unit).replace("null", "")));
        assertEquals(
                List.of(field),
                e.problems().stream().map(Invalid.Problem::field).toList());
    }
}
