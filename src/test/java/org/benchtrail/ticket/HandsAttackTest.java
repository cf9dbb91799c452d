package org.benchtrail.ticket;

import static org.benchtrail.ticket.ApiDesk.ADVANCE;
import static org.benchtrail.ticket.ApiDesk.ONSET;
import static org.benchtrail.ticket.AttackSite.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

/** Ways to judge one's own work, or to get rid of whoever should: each is refused with its code and its sentence. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class HandsAttackTest extends AttackCase {
    private static final String OWN_WORK = "You have worked on this ticket: somebody who has not decides this.";
    private static final String HAS_JUDGED = "'way-boris' approved, waived or signed something here";
    private static final String MENTOR = "A mentor who has not worked on it has to read and sign";

    /** Sue has begun it; Ines has it now and brings it to plan. */
    private ApiDesk begunBySue() {
        ApiDesk desk = site.desk("way-sue");
        desk.does(ONSET);
        desk.does(handed("way-ines"));
        desk.who = "way-ines";
        return desk;
    }

    private static void toPlan(ApiDesk desk) {
        desk.identify();
        desk.does(ApiDesk.OBVIOUS);
        desk.tests(desk.theory("Clogged cooler"), "SUPPORTS");
        desk.does(ADVANCE);
    }

    // ---- the trainee and the mentor

    @Test
    void traineesWork_isSignedByAMentor_whoeverHasItAtTheEnd() {
        ApiDesk desk = site.desk("way-tom");
        desk.does(ONSET);
        desk.lets("way-sue", handed("way-ines"));
        desk.who = "way-ines";
        toPlan(desk);
        desk.carriesOut(desk.plans());
        desk.verifies();
        desk.documents();
        desk.shut("way-ines", "mentor-signed", MENTOR, CLOSE);
        desk.lets("way-marek", "{\"kind\":\"sent-back\",\"reason\":\"Say what was measured\"}", MENTOR_SIGNS);
        desk.lets("way-marek", "{\"kind\":\"sent-back\",\"reason\":\"Say what was measured\"}");
        desk.lacks("way-ines", "mentor-signed", MENTOR, CLOSE);
        desk.lets("way-marek", MENTOR_SIGNS);
        desk.does(CLOSE);
    }

    @Test
    void mentorWhoWorkedOnIt_doesNotSignIt_norDoesWhoIsNone() {
        ApiDesk desk = site.desk("way-marek");
        desk.does(ONSET);
        desk.lets("way-sue", handed("way-tom"));
        desk.who = "way-tom";
        toPlan(desk);
        int action = desk.plans();
        desk.shut("way-marek", "own-work", OWN_WORK, approved(action));
        desk.shut("way-tom", "not-your-role", "A supervisor approves this; a mentor where", approved(action));
        desk.lets("way-boris", approved(action));
        desk.carriesOut(action);
        desk.verifies();
        desk.documents();
        desk.shut("way-marek", "own-work", OWN_WORK, MENTOR_SIGNS);
        desk.shut("way-tom", "not-your-role", "Only a mentor signs what a trainee has worked on.", MENTOR_SIGNS);
        desk.shut("way-sue", "not-your-role", "Only a mentor signs what a trainee has worked on.", MENTOR_SIGNS);
        desk.shut("way-tom", "mentor-signed", MENTOR, CLOSE);
    }

    @Test
    void traineesPlanOfMoreThanATraineesRisk_isNotApprovedByAMentor() {
        ApiDesk desk = site.atPlan("way-tom");
        int action =
                desk.does(action("Drill it out", "\"irreversible\":true,\"touchesStorage\":false,\"usesPart\":false"));
        desk.shut("way-marek", "not-your-role", "A supervisor approves this; a mentor where", approved(action));
    }

    @Test
    void signature_isVoidAfterAnyChangeOfWhatItStandsFor() {
        ApiDesk desk = site.atDocument("way-ines");
        int effort = desk.does("{\"kind\":\"effort-recorded\",\"minutes\":50}");
        for (String change : List.of(
                "{\"kind\":\"cause-named\",\"cause\":\"Dry paste\",\"sureness\":\"BY_REPAIR\"}",
                "{\"kind\":\"summary-written\",\"findings\":\"Paste\",\"actions\":\"Renewed\",\"outcome\":\"Cool\"}",
                "{\"kind\":\"knowledge-linked\",\"learned\":\"NOTHING\",\"text\":\"As common as dust\"}",
                "{\"kind\":\"effort-recorded\",\"minutes\":55}")) {
            desk.does(SIGNS);
            desk.does(change);
            desk.shut(
                    "way-ines",
                    "summary-written",
                    "Cause, summary, lesson or effort changed after it was signed: read it and sign it again.",
                    CLOSE);
        }
        desk.does(SIGNS);
        desk.does(struck(effort));
        desk.lacks("way-ines", "summary-written", "Cause, summary, lesson or effort changed after", CLOSE);
    }

    @Test
    void summaryIsSignedByWhoHasTheTicket_notByWhoHadIt() {
        ApiDesk desk = site.atDocument("way-ines");
        desk.does(offered("way-ole"));
        desk.lets("way-ole", handed("way-ole"));
        desk.who = "way-ole";
        desk.shut("way-ines", "not-yours", "Only the assignee does this", SIGNS);
        desk.shut("way-ole", "summary-written", "Sign the summary.", CLOSE);
    }

    // ---- handed over

    @Test
    void ticketIsNotThrownAtSomebody_norTakenByWhomItIsNotOfferedTo() {
        ApiDesk desk = site.desk("way-ines");
        desk.shut(
                "way-ines",
                "offer-it",
                "A ticket changes hands when the other takes it: offer it to them.",
                handed("way-ole"));
        desk.shut("way-ole", "not-yours", "Only the assignee does this", handed("way-ole"));
        desk.does(offered("way-ole"));
        assertEquals("way-ines", desk.sheet().getString("course.assignee"));
        desk.shut("way-tom", "not-yours", "Only the assignee does this", handed("way-tom"));
        desk.lets("way-ole", handed("way-ole"));
        assertEquals("way-ole", desk.sheet().getString("course.assignee"));
        desk.shut("way-ines", "not-yours", "Only the assignee does this", ONSET);
    }

    // ---- judges and hands

    @Test
    void supervisorWhoWorkedOnIt_waivesAgreesApprovesOverridesNothing() {
        ApiDesk desk = begunBySue();
        desk.shut("way-sue", "own-work", OWN_WORK, waived("logs-reviewed"));
        toPlan(desk);
        int symptom = desk.does(symptom("It hums", "A hum", false));
        int struck = desk.does(struck(symptom));
        desk.shut("way-sue", "own-work", OWN_WORK, agreed(struck));
        int action = desk.does(action(
                "Fit a new fan", "\"irreversible\":true,\"touchesStorage\":false,\"usesPart\":true,\"part\":\"Fan\""));
        desk.shut("way-sue", "own-work", OWN_WORK, approved(action));
        desk.shut("way-sue", "own-work", OWN_WORK, "{\"kind\":\"plan-declined\",\"reason\":\"No\"}");
        desk.shut(
                "way-sue",
                "own-work",
                OWN_WORK,
                "{\"kind\":\"part-override-approved\",\"action\":" + action + ",\"reason\":\"It will do\"}");
        desk.lets("way-boris", agreed(struck), approved(action));
    }

    @Test
    void plannerWhoIsSupervisor_doesNotApproveTheirOwnPlan() {
        ApiDesk desk = site.atPlan("way-sue");
        int action =
                desk.does(action("Drill it out", "\"irreversible\":true,\"touchesStorage\":false,\"usesPart\":false"));
        desk.shut("way-sue", "own-work", OWN_WORK, approved(action));
        desk.lacks("way-sue", "plan-approved", "Somebody else has to approve this plan first", ADVANCE);
    }

    @Test
    void entryStruckOut_leavesWhoMadeItAmongTheHands() {
        ApiDesk desk = site.desk("way-sue");
        int symptom = desk.does(symptom("It hums", "A hum", false));
        desk.does(struck(symptom));
        desk.does(handed("way-ines"));
        desk.shut("way-sue", "own-work", OWN_WORK, waived("logs-reviewed"));
    }

    @Test
    void whoJudged_isGivenNoWork_norDoesAnyUnderAnotherName() {
        ApiDesk desk = site.desk("way-ines");
        desk.identify();
        int theory = desk.does("{\"kind\":\"theory-stated\",\"text\":\"Dust\"}");
        desk.lets("way-boris", waived("simple-things-first"));
        desk.shut("way-boris", "has-judged", HAS_JUDGED, handed("way-boris"));
        desk.shut("way-sue", "has-judged", HAS_JUDGED, handed("way-boris"));
        desk.shut("way-ines", "has-judged", HAS_JUDGED, offered("way-boris"));
        desk.shut(
                "way-boris",
                "own-work",
                "You approved, waived or signed something here: somebody else does the work",
                corrected(theory, "{\"kind\":\"theory-stated\",\"text\":\"Worn fan\"}"));
    }

    /** In one request nothing is gained: the second act finds what the first has made of the person. */
    @Test
    void takenAndWaivedInOneRequest_orTheOtherWayRound_isRefusedWhole() {
        ApiDesk desk = site.desk("way-ines");
        desk.does(ONSET);
        desk.shut("way-sue", "own-work", OWN_WORK, handed("way-sue"), waived("logs-reviewed"));
        assertEquals("way-ines", desk.sheet().getString("course.assignee"));
        desk.shut("way-boris", "has-judged", HAS_JUDGED, waived("logs-reviewed"), handed("way-boris"));
        assertEquals("MISSING", desk.state("logs-reviewed"));
    }

    @Test
    void smoke_isNotClearedByWhoHandedTheTicketOn_norByWhoHasIt() {
        String second =
                "This hazard is cleared by a second person, who is no trainee and has not worked on this ticket.";
        ApiDesk desk = site.desk("way-ines");
        desk.does(screened("SMOKE"));
        desk.does(offered("way-ole"));
        desk.lets("way-ole", handed("way-ole"));
        for (String login : List.of("way-ines", "way-ole", "way-tom")) {
            desk.shut(login, "second-person", second, CLEARED);
        }
        desk.lets("way-marek", CLEARED);
        desk.shut(
                "way-sue", "has-judged", "'way-marek' approved, waived or signed something here", handed("way-marek"));
    }

    @Test
    void addendum_isNotCountersignedByWhoWorkedOnIt_norTwice() {
        ApiDesk desk = begunBySue();
        toPlan(desk);
        desk.carriesOut(desk.plans());
        desk.verifies();
        desk.documents();
        String addendum = "{\"kind\":\"addendum\",\"about\":\"CAUSE\",\"text\":\"The fan was worn as well\"}";
        desk.shut("way-ines", "still-open", "This ticket is open: record it where it belongs.", addendum);
        desk.does(CLOSE);
        desk.shut("way-ole", "not-yours", "Who has worked on this ticket does this.", addendum);
        int added = desk.does(addendum);
        String signed = "{\"kind\":\"addendum-countersigned\",\"addendum\":" + added + ",\"note\":\"Seen\"}";
        desk.shut("way-ines", "not-your-role", "A mentor or a supervisor countersigns an addendum.", signed);
        desk.shut("way-sue", "own-work", OWN_WORK, signed);
        desk.lets("way-boris", signed);
        desk.malformed("way-marek", "addendum", "That addendum has been countersigned.", signed);
        assertEquals("CLOSED", desk.sheet().getString("course.standing"));
    }

    // ---- asked for, and not given

    @Test
    void waiverThatIsOnlyAskedFor_opensNothing() {
        ApiDesk desk = site.desk("way-ines");
        String asked = "{\"kind\":\"asked\",\"what\":\"WAIVER\",\"requirement\":\"%s\",\"note\":\"No logs there\"}";
        desk.does(asked.formatted("logs-reviewed"));
        desk.lacks("way-ines", "logs-reviewed", "Look at the system and application logs", ADVANCE);
        desk.shut("way-ines", "asked-already", "This was asked for and waits", asked.formatted("logs-reviewed"));
        desk.shut(
                "way-ines",
                "not-waivable",
                "This requirement cannot be waived by anybody.",
                asked.formatted("hazards-screened"));
        desk.shut("way-ines", "not-your-role", "Only a supervisor waives a requirement", waived("logs-reviewed"));
        desk.lets("way-boris", waived("logs-reviewed"));
        desk.shut("way-boris", "nothing-to-waive", "Nothing is missing there now", waived("logs-reviewed"));
        desk.shut("way-boris", "nothing-to-waive", "Nothing is missing there now", waived("soak-time-passed"));
    }

    @Test
    void whomItDoesNotConcern_leavesNoTraceOnTheTicket() {
        ApiDesk desk = site.desk("way-ines");
        desk.shut("way-ole", "not-yours", "Only the assignee does this", ONSET);
        desk.shut("way-ole", "not-yours", "Only the assignee does this", ADVANCE);
        assertEquals(1, desk.entries());
        assertTrue(desk.trail().stream().noneMatch(e -> e.toString().contains("way-ole")));
    }
}
