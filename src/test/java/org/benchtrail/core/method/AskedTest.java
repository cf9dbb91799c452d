package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.AskKind;
import org.benchtrail.core.method.desk.Asked;
import org.benchtrail.core.method.desk.Asks;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.desk.SentBack;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.plan.PlanDeclined;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is asked of those who judge waits until it is answered, or the work goes on without. */
class AskedTest {
    private static final Asked APPROVAL = new Asked(AskKind.APPROVAL, null, "");
    private static final Asked MENTOR = new Asked(AskKind.MENTOR, null, "");

    private static Asked waiver(String requirement) {
        return new Asked(AskKind.WAIVER, requirement, "There is no log on it");
    }

    private static List<Asked> waiting(TicketFixture desk) {
        return Asks.waiting(desk.sheet()).stream().map(StandingFact::fact).toList();
    }

    /** A plan that needs an approval, which is asked for. */
    private static TicketFixture approvalAsked() {
        TicketFixture desk = atStep(Step.PLAN);
        desk.as(INES).lacks("nothing-to-approve", APPROVAL);
        desk.as(INES).records(action(true, false, false, false, null, null));
        desk.as(INES).records(APPROVAL);
        assertEquals(List.of(APPROVAL), waiting(desk));
        desk.as(INES).lacks("asked-already", APPROVAL);
        return desk;
    }

    @Test
    void approval_isAskedForUntilThePlanIsApproved() {
        TicketFixture desk = approvalAsked();
        desk.as(SUE).records(approve(desk.sheet()));
        assertEquals(List.of(), waiting(desk));
        desk.as(INES).records(APPROVAL);
        assertEquals(List.of(APPROVAL), waiting(desk));
    }

    @Test
    void approval_isAskedForUntilThePlanIsDeclined() {
        TicketFixture desk = approvalAsked();
        desk.as(SUE).records(new PlanDeclined("Not today"));
        assertEquals(List.of(), waiting(desk));
    }

    @Test
    void approval_isAskedForInItsRound() {
        TicketFixture desk = approvalAsked();
        desk.as(INES).records(new Rethought("Another way", false));
        assertEquals(List.of(), waiting(desk));
    }

    @Test
    void nothingWaits_onATicketThatHasEnded() {
        TicketFixture desk = approvalAsked();
        desk.as(SUE).records(new Cancelled("Withdrawn", null));
        assertEquals(List.of(), waiting(desk));
    }

    @Test
    void waiver_isAskedForUntilThatRequirementIsWaived() {
        TicketFixture desk = plain();
        desk.as(INES).records(waiver("logs-reviewed"));
        desk.as(INES).records(waiver("reproduced"));
        desk.as(INES).lacks("asked-already", waiver("logs-reviewed"));
        assertEquals(List.of(waiver("logs-reviewed"), waiver("reproduced")), waiting(desk));
        desk.as(SUE).records(waive(Requirements.of("reproduced").orElseThrow()));
        assertEquals(List.of(waiver("logs-reviewed")), waiting(desk));
    }

    @Test
    void waiver_isAskedForAtItsStep() {
        TicketFixture desk = plain();
        desk.as(INES).records(waiver("logs-reviewed"));
        meetAll(desk);
        desk.as(INES).records(new Advanced());
        assertEquals(List.of(), waiting(desk));
    }

    @Test
    void waiver_isAskedForInItsRound() {
        TicketFixture desk = atStep(Step.PLAN);
        desk.as(INES).records(waiver("maker-consulted"));
        desk.as(INES).records(new Rethought("Another way", false));
        bring(desk, Step.PLAN);
        assertEquals(List.of(), waiting(desk));
    }

    @Test
    void waiver_isAskedForWhatIsMissingAndMayBeWaived() {
        TicketFixture desk = plain();
        desk.as(INES).lacks("not-waivable", waiver("symptom-observed"));
        desk.as(INES).lacks("nothing-to-waive", waiver("maker-consulted"));
        Invalid e = assertThrows(Invalid.class, () -> desk.as(INES).does(waiver("good-luck")));
        assertEquals("requirement", e.problems().get(0).field());
    }

    @Test
    void mentor_isAskedForUntilOneRemarksOnIt() {
        TicketFixture desk = plain();
        desk.as(INES).records(MENTOR);
        assertEquals(List.of(MENTOR), waiting(desk));
        desk.as(MAREK).records(new Remarked(null, null, "Measure it first"));
        assertEquals(List.of(), waiting(desk));
        desk.as(INES).records(MENTOR);
        assertEquals(List.of(MENTOR), waiting(desk));
    }

    @Test
    void mentor_isAskedForUntilOneSignsOrSendsItBack() {
        TicketFixture desk = demandingAtStep(Step.DOCUMENT);
        desk.as(TOM).records(MENTOR);
        desk.as(TOM).records(anySummary());
        desk.as(TOM).records(new Signed(Signatory.ASSIGNEE));
        assertEquals(List.of(MENTOR), waiting(desk));
        desk.as(MAREK).records(new SentBack("Say which cooler"));
        assertEquals(List.of(), waiting(desk));
        desk.as(TOM).records(MENTOR);
        desk.as(MAREK).records(new Signed(Signatory.MENTOR));
        assertEquals(List.of(), waiting(desk));
    }

    @ParameterizedTest
    @CsvSource({
        ",,,what",
        "WAIVER,,No log,requirement",
        "WAIVER,logs-reviewed,,note",
        "APPROVAL,plan-approved,,requirement",
        "MENTOR,logs-reviewed,,requirement"
    })
    void whatIsNotAsked_isRefusedOnItsField(AskKind what, @Nullable String requirement, String note, String field) {
        Invalid e = assertThrows(Invalid.class, () -> new Asked(what, requirement, note));
        assertEquals(
                List.of(field),
                e.problems().stream().map(Invalid.Problem::field).toList());
    }
}
