package org.benchtrail.ticket;

import static org.benchtrail.ticket.ApiDesk.ADVANCE;
import static org.benchtrail.ticket.ApiDesk.ONSET;
import static org.benchtrail.ticket.ApiDesk.reading;
import static org.benchtrail.ticket.AttackSite.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.List;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Ways past a gate: skipped, answered in the wrong order or all at once, or by words that mean something else. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class GateAttackTest extends AttackCase {
    private static final String RELIED_ON = "Later entries rest on this one as it is";
    private static final String APPROVE = "Somebody else has to approve this plan first: ";
    private static final String REOPENED = "{\"kind\":\"reopened\",\"reason\":\"It is back\"}";
    private static final String IRREVERSIBLE =
            "\"irreversible\":true,\"touchesStorage\":false,\"usesPart\":false,\"against\":\"So it is\"";

    @Inject
    MovedClock clock;

    @AfterEach
    void now() {
        clock.putRight();
    }

    // ---- steps skipped

    @Test
    void stepsAreNotSkipped_norPassedOnHold_norWorkedOnceLeft() {
        ApiDesk desk = site.desk("way-ines");
        desk.shut("way-ines", "no-such-move", "From identify nobody can close.", CLOSE);
        desk.shut(
                "way-ines",
                "no-such-move",
                "From identify nobody can rule the theory out.",
                "{\"kind\":\"ruled-out\"}");
        String theory = "{\"kind\":\"theory-stated\",\"text\":\"Dust\"}";
        desk.shut("way-ines", "step-not-reached", "This belongs to Theorize; the ticket stands at Identify.", theory);
        desk.identify();
        desk.does("{\"kind\":\"held\",\"waitingFor\":\"PART\",\"followUp\":\"2199-01-01T00:00:00Z\"}"
                .replace("2199", year()));
        desk.shut("way-ines", "on-hold", "This ticket is on hold: resume it first.", theory);
        desk.shut("way-ines", "on-hold", "This ticket is on hold: resume it first.", ADVANCE);
        desk.does("{\"kind\":\"resumed\"}");
        desk.does(ApiDesk.OBVIOUS);
        int check = desk.does(check(desk.theory("Dust"), "Look", "Dust"));
        desk.does(result(check, "SUPPORTS"));
        int second = desk.does(check(theory(desk), "Look again", "Dust"));
        desk.does(ADVANCE);
        desk.shut(
                "way-ines",
                "step-left",
                "Test has been left: what belongs to it can be made again only",
                result(second, "SUPPORTS"));
    }

    private String year() {
        return String.valueOf(clock.instant().atZone(java.time.ZoneOffset.UTC).getYear() + 1);
    }

    // ---- identify

    @Test
    void answersThatSayNothing_areAskedForAgain() {
        ApiDesk desk = site.desk("way-ines");
        desk.malformed(
                "way-ines",
                "[0].note",
                "Say why no backup is possible.",
                "{\"kind\":\"data-answered\",\"state\":\"IMPOSSIBLE\"}");
        desk.does("{\"kind\":\"data-answered\",\"state\":\"NOT_YET\"}");
        desk.lacks("way-ines", "data-protected", "The data are not protected yet", ADVANCE);
        desk.malformed(
                "way-ines",
                "[0].note",
                "Say what changed, since one answer is yes.",
                "{\"kind\":\"changes-asked\",\"answers\":{\"HARDWARE\":\"YES\",\"SOFTWARE\":\"NO\",\"SETTINGS\":\"NO\","
                        + "\"PLACE\":\"NO\",\"INFRASTRUCTURE\":\"NO\"}}");
        desk.malformed(
                "way-ines",
                "[0].when",
                "Say when it began or last worked",
                "{\"kind\":\"onset-recorded\",\"known\":true}");
        desk.lacks("way-ines", "evidence-attached", "Add a reading, a log extract or a picture", ADVANCE);
        desk.malformed(
                "way-ines",
                "[0].reason",
                "Say why there is no reading, log or picture.",
                "{\"kind\":\"evidence-impossible\",\"reason\":\" \"}");
    }

    // ---- theorize and test

    @Test
    void ruledOutTheory_isNotTestedAgain_norUnderTheSameNameAnew() {
        ApiDesk desk = site.atTest("way-ines");
        int first = theory(desk);
        desk.tests(first, "REFUTES");
        desk.shut("way-ines", "theory-supported", "The latest check rules the theory out", ADVANCE);
        desk.does("{\"kind\":\"ruled-out\"}");
        String before = "This theory was ruled out in an earlier round: name the new evidence, or choose another.";
        desk.does("{\"kind\":\"theory-chosen\",\"theory\":" + first + "}");
        desk.shut("way-ines", "not-already-refuted", before, ADVANCE);
        int again = desk.does("{\"kind\":\"theory-stated\",\"text\":\"clogged COOLER\"}");
        desk.does("{\"kind\":\"theory-chosen\",\"theory\":" + again + "}");
        desk.shut("way-ines", "not-already-refuted", before, ADVANCE);
        desk.shut(
                "way-ines",
                "relied-on",
                RELIED_ON,
                corrected(first, "{\"kind\":\"theory-stated\",\"text\":\"Another\"}"));
    }

    @Test
    void expectationAndResultInOneRequest_orTheExpectationAfterwards_proveNothing() {
        ApiDesk desk = site.atTest("way-ines");
        int theory = theory(desk);
        desk.shut(
                "way-ines",
                "expectation-first",
                "Save the check with what you expect first, then make it, then record what was seen.",
                check(theory, "Look", "Dust between the fins"),
                result(desk.version + 1, "SUPPORTS"));
        int blind = desk.does(check(theory, "Look", ""));
        desk.does(result(blind, "SUPPORTS"));
        desk.lacks(
                "way-ines",
                "expectation-first",
                "Plan a check of the active theory and write what you expect",
                ADVANCE);
        desk.shut("way-ines", "relied-on", RELIED_ON, corrected(blind, check(theory, "Look", "Dust between the fins")));
        desk.shut("way-ines", "relied-on", RELIED_ON, struck(blind));
        desk.malformed("way-ines", "check", "That check has been made", result(blind, "SUPPORTS"));
    }

    @Test
    void checkThatRulesTheTheoryOut_isNotStruckOut() {
        ApiDesk desk = site.atTest("way-ines");
        int check = desk.does(check(theory(desk), "Look", "Dust between the fins"));
        int result = desk.does(result(check, "REFUTES"));
        desk.shut("way-ines", "relied-on", RELIED_ON, struck(check));
        desk.malformed("way-ines", "entry", "An entry of this kind is not corrected", struck(result));
        desk.shut("way-ines", "theory-supported", "The latest check rules the theory out", ADVANCE);
    }

    @Test
    void checkOfAnotherTheory_provesNothingOfTheActiveOne() {
        ApiDesk desk = site.atTheorize("way-ines");
        int other = desk.does("{\"kind\":\"theory-stated\",\"text\":\"Worn fan\"}");
        desk.theory("Clogged cooler");
        desk.tests(other, "SUPPORTS");
        desk.lacks("way-ines", "expectation-first", "Plan a check of the active theory", ADVANCE);
        desk.lacks("way-ines", "theory-supported", "No check has settled the theory yet", ADVANCE);
    }

    @Test
    void supportedTheory_isNotRuledOut() {
        ApiDesk desk = site.atTest("way-ines");
        desk.tests(theory(desk), "SUPPORTS");
        desk.shut(
                "way-ines",
                "theory-supported",
                "The latest check supports the theory: it cannot be ruled out on that.",
                "{\"kind\":\"ruled-out\"}");
    }

    @Test
    void readingFromBeforeTheCheck_isNoResultOfIt_andWhereAValueIsExpectedItDecides() {
        ApiDesk desk = site.atTest("way-ines");
        int check = desk.does(check(theory(desk), "Measure under load", "Above 90")
                .replaceFirst("}$", ",\"expected\":{\"lower\":\"90\",\"unit\":\"\u00b0C\"}}"));
        String result = result(check, "SUPPORTS").replaceFirst("}$", ",\"reading\":");
        desk.malformed(
                "way-ines",
                "reading",
                "That reading was taken before the check was planned: measure now.",
                result + first(desk, "reading-recorded") + "}");
        int cold = desk.does(reading("60"));
        desk.malformed(
                "way-ines",
                "outcome",
                "The reading rules the theory out: it is not what was expected.",
                result + cold + "}");
        desk.shut("way-ines", "relied-on", RELIED_ON, lyingAbout(desk, result, cold));
        desk.does(result(desk.does(check(theory(desk), "Look", "x")), "INCONCLUSIVE"));
    }

    /** Records the result with a reason, so that the reading is relied on, and tries to correct the reading. */
    private static String lyingAbout(ApiDesk desk, String result, int reading) {
        desk.does(result + reading + ",\"against\":\"The load had not begun\"}");
        return corrected(reading, reading("95"));
    }

    // ---- plan

    @Test
    void actionWhoseWordsSayThatItWipes_isNotPlannedAsHarmless() {
        ApiDesk desk = site.atPlan("way-ines");
        String wipe = action("Format the drive and reinstall");
        String words = "Its words say that it ";
        desk.malformed("way-ines", "touchesStorage", words + "touches stored data: answer yes, or say", wipe);
        desk.malformed("way-ines", "irreversible", words + "is irreversible: answer yes, or say", wipe);
        desk.malformed("way-ines", "usesPart", words + "uses a part: answer yes", action("Replace the fan"));
        for (String question : List.of("irreversible", "touchesStorage")) {
            String unasked = action("Clean it").replace("\"" + question + "\":false,", "");
            assertEquals(List.of("[0]." + question), fields(desk.sends("way-ines", desk.version, "[" + unasked + "]")));
        }
        desk.malformed(
                "way-ines",
                "usesPart",
                "Say whether it uses a part: yes or no.",
                action("Clean it").replace(",\"usesPart\":false", ""));
    }

    @Test
    void approval_isLostWhenAnActionChanges_isSavedAgain_orIsJoinedByAnother() {
        ApiDesk desk = site.atPlan("way-ines");
        String drill = action("Drill the rivet out", IRREVERSIBLE);
        int action = desk.does(drill);
        desk.does("{\"kind\":\"maker-consulted\",\"applicable\":true,\"text\":\"Manual, chapter 4\"}");
        String cautions = acknowledged(action, "HEAT", "MAINS", "STATIC");
        desk.does(cautions);
        desk.shut("way-ines", "plan-approved", APPROVE + "an action is irreversible.", settled(action, "CARRIED_OUT"));
        for (String change :
                List.of(corrected(action, action("Drill two rivets out", IRREVERSIBLE)), corrected(action, drill))) {
            desk.lets("way-boris", approved(action));
            desk.does(change);
            desk.does(cautions);
            desk.shut("way-ines", "plan-approved", APPROVE, settled(action, "CARRIED_OUT"));
        }
        desk.lets("way-boris", approved(action));
        int joined = desk.does(action("Drill the other side too", IRREVERSIBLE));
        desk.lacks("way-ines", "plan-approved", APPROVE, settled(joined, "CARRIED_OUT"));
        desk.lets("way-boris", "{\"kind\":\"plan-declined\",\"reason\":\"Too much drilling\"}");
        desk.lacks("way-ines", "plan-approved", APPROVE, settled(action, "CARRIED_OUT"));
    }

    @Test
    void costs_areSummedOverTheRounds() {
        ApiDesk desk = site.atPlan("way-ines");
        int dear = desk.does(action("Clean the cooler", harmlessAt("200")));
        desk.does("{\"kind\":\"maker-consulted\",\"applicable\":true,\"text\":\"Manual, chapter 4\"}");
        desk.does(acknowledged(dear, "HEAT"));
        desk.does(settled(dear, "FAILED"));
        desk.lacks("way-ines", "actions-settled", "An action failed: rethink", ADVANCE);
        desk.does("{\"kind\":\"rethought\",\"reason\":\"It broke\",\"theoryWrong\":false}");
        desk.does("{\"kind\":\"theory-chosen\",\"theory\":" + theory(desk) + "}", ADVANCE);
        desk.tests(theory(desk), "SUPPORTS");
        desk.does(ADVANCE);
        desk.does(action("Clean the cooler", harmlessAt("60")));
        desk.lacks(
                "way-ines",
                "plan-approved",
                APPROVE + "it costs 260 in all rounds together, above the limit of 250",
                ADVANCE);
    }

    private static String harmlessAt(String cost) {
        return "\"irreversible\":false,\"touchesStorage\":false,\"usesPart\":false,\"cost\":\"" + cost + "\"";
    }

    @Test
    void failedAction_asksForApprovalAndCautionsLikeAnyOther_andIsSettledOnce() {
        ApiDesk desk = site.atPlan("way-ines");
        int action = desk.plans();
        String read = "Read and acknowledge the cautions before the action, as an act of its own: Hot parts.";
        desk.shut("way-ines", "cautions-taken", read, settled(action, "FAILED"));
        desk.does(acknowledged(action, "HEAT"));
        desk.does(settled(action, "FAILED"));
        desk.malformed(
                "way-ines", "action", "That action has been settled: plan another one.", settled(action, "NOT_NEEDED"));
        desk.shut("way-ines", "actions-settled", "An action failed: rethink", ADVANCE);
        desk.shut("way-ines", "relied-on", RELIED_ON, struck(action));
    }

    @Test
    void planOfWhichNothingWasNeeded_isNotVerified() {
        ApiDesk desk = site.atPlan("way-ines");
        desk.does(settled(desk.plans(), "NOT_NEEDED"));
        desk.shut("way-ines", "actions-settled", "No action was carried out: nothing has changed yet.", ADVANCE);
    }

    @Test
    void partWithoutACheck_isNotPutIn() {
        ApiDesk desk = site.atPlan("way-ines");
        desk.does(action(
                "Fit a new fan", "\"irreversible\":false,\"touchesStorage\":false,\"usesPart\":true,\"part\":\"Fan\""));
        desk.lacks(
                "way-ines",
                "parts-fit",
                "Check that the part fits its place, or have an override approved: Fan.",
                ADVANCE);
    }

    @Test
    void answerAboutData_thatIsTooOld_orLossThatNobodyAccepted_keepsTheActionBack() {
        ApiDesk desk = site.atPlan("way-ines");
        String wipes = "\"irreversible\":true,\"touchesStorage\":true,\"usesPart\":false";
        desk.does(action("Wipe the drive", wipes));
        clock.putForward(Duration.ofHours(25));
        desk.lacks(
                "way-ines",
                "data-still-protected",
                "An action touches storage and the answer about data is older than 24 h",
                ADVANCE);
        desk.does("{\"kind\":\"data-answered\",\"state\":\"IMPOSSIBLE\",\"note\":\"It cannot be read\"}");
        String loss = "No backup is possible: before anything that can destroy data, record who owns them";
        desk.lacks("way-ines", "data-still-protected", loss, ADVANCE);
        desk.does("{\"kind\":\"loss-accepted\",\"owner\":\"Rae\",\"how\":\"Said so, today\"}");
        assertFalse(desk.refused("way-ines", ADVANCE).contains("data-still-protected"));
    }

    // ---- verify

    @Test
    void whatWasVerifiedBefore_isVerifiedAgainAfterAnotherRound() {
        ApiDesk desk = site.atVerify("way-ines");
        desk.verifies();
        desk.does("{\"kind\":\"verify-failed\",\"reason\":\"It is back\"}");
        desk.does(
                "{\"kind\":\"theory-chosen\",\"theory\":" + theory(desk) + ",\"newEvidence\":\"More dust\"}", ADVANCE);
        desk.tests(theory(desk), "SUPPORTS");
        desk.does(ADVANCE);
        desk.carriesOut(desk.plans());
        assertEquals(
                List.of(
                        "symptoms-gone",
                        "readings-back",
                        "function-checked",
                        "requester-agrees",
                        "prevention-considered"),
                desk.refused("way-ines", ADVANCE));
    }

    @Test
    void checklist_isNotAnsweredByPlaces_norByAllNotApplicable_norWithAFault() {
        ApiDesk desk = site.atVerify("way-ines");
        desk.malformed(
                "way-ines",
                "answers",
                "Answer the checklist by its texts: ",
                "{\"kind\":\"function-checked\",\"items\":{\"0\":\"WORKS\"}}");
        String all = ApiDesk.functions(desk.sheet().getList("checklist", String.class));
        desk.does(all.replace("WORKS", "NOT_APPLICABLE"));
        desk.lacks("way-ines", "function-checked", "Nothing of the checklist was seen working", ADVANCE);
        desk.does(all.replaceFirst("WORKS", "FAULTY"));
        desk.lacks("way-ines", "function-checked", "A function is faulty", ADVANCE);
        desk.does(all);
        desk.does(all.replaceFirst("\"[^\"]*\":\"WORKS\",", ""));
        desk.lacks("way-ines", "function-checked", "Go through the whole checklist of functions", ADVANCE);
    }

    // ---- ended

    @Test
    void duplicates_makeNoCircle_andNameATicketThatIs() {
        ApiDesk one = site.desk("way-ines");
        ApiDesk two = site.desk("way-ines");
        String of = "{\"kind\":\"cancelled\",\"reason\":\"Same\",\"duplicateOf\":\"";
        assertEquals(List.of("[0].duplicateOf"), fields(one.sends("way-ines", one.version, "[" + of + "99999-4\"}]")));
        one.malformed("way-ines", "duplicateOf", "A ticket is no duplicate of itself", of + one.number + "\"}");
        one.shut(
                "way-ines",
                "not-your-role",
                "A supervisor cancels a ticket; its assignee only as a duplicate of another",
                "{\"kind\":\"cancelled\",\"reason\":\"Withdrawn\"}");
        one.does(of + two.number + "\"}");
        assertEquals(
                List.of("duplicateOf"), fields(two.sends("way-ines", two.version, "[" + of + one.number + "\"}]")));
        one.shut("way-boris", "ticket-cancelled", "This ticket was cancelled: open a new one.", REOPENED);
    }

    @Test
    void closedTicket_takesNothing_andIsReopenedInTimeOnly_andAsksAgain() {
        ApiDesk desk = site.atDocument("way-ines");
        desk.does(CLOSE);
        desk.shut("way-ines", "ticket-closed", "This ticket is closed: reopen it first.", ONSET);
        clock.putForward(Duration.ofDays(15));
        desk.shut(
                "way-ole",
                "reopen-window-over",
                "It was closed more than 14 days ago: a supervisor reopens it",
                REOPENED);
        desk.lets("way-sue", REOPENED);
        assertEquals(
                List.of("symptom-observed", "hazards-screened", "data-protected", "evidence-attached"),
                desk.refused("way-ines", ADVANCE));
    }

    @Test
    void sameRefusalWithinAMinute_isWrittenOnce() {
        ApiDesk desk = site.desk("way-ines");
        desk.refused("way-ines", ADVANCE);
        Response again = desk.sends("way-ines", desk.version, "[" + ADVANCE + "]");
        assertEquals(409, again.statusCode());
        assertEquals("\"" + desk.version + "\"", again.header("ETag"));
        assertEquals(2, desk.entries());
        clock.putForward(Duration.ofSeconds(61));
        desk.refused("way-ines", ADVANCE);
        assertEquals(3, desk.entries());
    }
}
