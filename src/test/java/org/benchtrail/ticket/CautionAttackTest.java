package org.benchtrail.ticket;

import static org.benchtrail.ticket.ApiDesk.ADVANCE;
import static org.benchtrail.ticket.ApiDesk.reading;
import static org.benchtrail.ticket.AttackSite.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

/** Ways round the cautions and the hazards, through the API: each is refused with its code and sentence. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class CautionAttackTest extends AttackCase {
    private static final String READ_FIRST =
            "Read the cautions of the check and acknowledge them before you make it, as an act of its own: ";
    private static final String READ_BEFORE_ACTION =
            "Read and acknowledge the cautions before the action, as an act of its own: ";
    private static final String STOPPED = "Work is stopped: ";

    private static List<String> cautions(ApiDesk desk, int entry) {
        JsonNode raised = desk.entry(entry).at("/payload/cautions");
        return ApiDesk.strings(raised);
    }

    // ---- cautions

    @Test
    void measuring230V_isNotRecordedWithoutTheCautionOfLiveMeasurements_norWithItInOneRequest() {
        ApiDesk desk = site.atTest("way-ines");
        int check = desk.does(check(theory(desk), "Measure 230 V at the socket", "It is not there"));
        assertEquals(List.of("LIVE", "MAINS"), cautions(desk, check));
        String seen = result(check, "SUPPORTS");
        desk.shut("way-ines", "invasive-guarded", READ_FIRST, seen);
        desk.shut("way-ines", "invasive-guarded", READ_FIRST, acknowledged(check, "LIVE", "MAINS"), seen);
        desk.does(acknowledged(check, "MAINS", "STATIC"));
        desk.shut("way-ines", "invasive-guarded", READ_FIRST, seen);
        desk.does(acknowledged(check, "LIVE"));
        desk.does(seen);
    }

    @Test
    void mainsReading_isNotRecordedWithoutItsCaution() {
        ApiDesk desk = site.desk("way-ines");
        String live =
                "{\"kind\":\"reading-recorded\",\"quantity\":\"voltage\",\"value\":\"231 V\",\"point\":\"outlet\"}";
        String sentence = "This is a live measurement: read its caution and acknowledge it before you measure";
        desk.shut("way-ines", "live-guarded", sentence, live);
        desk.shut("way-ines", "live-guarded", sentence, acknowledged(1, "LIVE"), live);
        desk.does(acknowledged(1, "LIVE"));
        desk.does(live);
    }

    @Test
    void checkThatIsNotTickedAsInvasive_isGuardedByItsWords_andByWhatItsResultTells() {
        ApiDesk desk = site.atTest("way-ines");
        int check = desk.does(check(theory(desk), "Take the cover off and look", "Dust")
                .replaceFirst("}$", ",\"invasive\":false,\"cautions\":[]}"));
        assertTrue(desk.entry(check).at("/payload/invasive").asBoolean());
        desk.shut("way-ines", "invasive-guarded", READ_FIRST, result(check, "SUPPORTS"));
        int asked = desk.does(check(theory(desk), "Ask again", "It hums"));
        assertEquals(List.of(), cautions(desk, asked));
        String told = result(asked, "SUPPORTS").replace("Seen", "I opened the power supply and touched the capacitor");
        desk.shut("way-ines", "invasive-guarded", READ_FIRST, told);
    }

    @Test
    void invasiveCheck_isNotMadeWithTheDataUnprotected() {
        ApiDesk desk = site.atTest("way-ines");
        int check = desk.does(check(theory(desk), "Take the cover off and look", "Dust"));
        desk.does(acknowledged(check, cautions(desk, check).toArray(String[]::new)));
        desk.does("{\"kind\":\"data-answered\",\"state\":\"NOT_YET\"}");
        desk.shut("way-ines", "invasive-guarded", "The data are not protected yet", result(check, "SUPPORTS"));
    }

    @Test
    void cautionOfAnAction_isNotAcknowledgedWithTheDeed_norCorrectedAway_norLeftOutOfItsNote() {
        ApiDesk desk = site.atPlan("way-ines");
        String planned = action(
                "%s",
                "\"irreversible\":false,\"touchesStorage\":false,\"usesPart\":false,\"against\":\"The old one goes"
                        + " back in\"");
        int action = desk.does(planned.formatted("Swap the power supply"));
        String corrected = corrected(action, planned.formatted("Make it good"));
        String kept = "A correction does not take cautions away: keep them, or withdraw the entry and plan it anew.";
        desk.shut("way-ines", "cautions-kept", kept, corrected);
        desk.does("{\"kind\":\"maker-consulted\",\"applicable\":true,\"text\":\"Manual, chapter 4\"}");
        String settled = settled(action, "CARRIED_OUT");
        String taken = acknowledged(action, cautions(desk, action).toArray(String[]::new));
        desk.shut("way-ines", "cautions-taken", READ_BEFORE_ACTION, taken, settled);
        desk.does(taken);
        desk.shut("way-ines", "cautions-kept", kept, corrected);
        desk.shut(
                "way-ines",
                "cautions-taken",
                READ_BEFORE_ACTION,
                settled.replace("So it went", "Climbed the ladder and cut the old cord"));
        desk.does(settled);
    }

    @Test
    void cautionOfOneRound_doesNotServeTheNext() {
        ApiDesk desk = site.atPlan("way-ines");
        int action = desk.plans();
        desk.does(acknowledged(action, "HEAT"));
        desk.does(settled(action, "FAILED"));
        desk.does("{\"kind\":\"rethought\",\"reason\":\"It broke\",\"theoryWrong\":false}");
        desk.does("{\"kind\":\"theory-chosen\",\"theory\":" + theory(desk) + "}", ADVANCE);
        desk.tests(theory(desk), "SUPPORTS");
        desk.does(ADVANCE);
        int again = desk.plans();
        desk.shut("way-ines", "cautions-taken", READ_BEFORE_ACTION + "Hot parts", settled(again, "CARRIED_OUT"));
        desk.malformed("way-ines", "action", "That action belongs to an earlier round", settled(action, "CARRIED_OUT"));
    }

    // ---- hazards

    @Test
    void hazardsScreenedAllInOne_areAskedForOneByOne() {
        ApiDesk desk = site.desk("way-ines");
        String some = "{\"kind\":\"hazards-screened\",\"present\":{\"SMELL\":false,\"SHOCK\":false}}";
        assertEquals(9, fields(desk.sends("way-ines", 1, some)).size());
        String shorter = screened().replaceFirst(",\"SHOCK.*\\}\\}", "}}");
        assertEquals(
                List.of("present.SHOCK", "present.ARCING", "present.SHARP", "present.HEIGHT"),
                fields(desk.sends("way-ines", 1, shorter)));
    }

    @Test
    void whileAHazardStands_nothingIsMeasuredTestedDoneOrAdvised_andTheAssigneeDoesNotClearSmoke() {
        ApiDesk desk = site.atPlan("way-ines");
        int action = desk.plans();
        desk.does(acknowledged(action, "HEAT"));
        desk.does("{\"kind\":\"finding-answered\",\"finding\":\"h3\",\"question\":\"Fan"
                + " speed\",\"value\":\"below\",\"source\":\"SEEN\"}");
        desk.does(screened("SMOKE"));
        desk.does(screened("HEAT"));
        for (String deed : List.of(
                settled(action, "CARRIED_OUT"),
                reading("70"),
                action("Clean the fan"),
                "{\"kind\":\"finding-recorded\",\"text\":\"Dust\"}",
                ADVANCE,
                "{\"kind\":\"rethought\",\"reason\":\"It broke\",\"theoryWrong\":false}")) {
            desk.lacks("way-ines", "hazards-screened", STOPPED, deed);
        }
        var ranking = site.as("way-ines")
                .get("/api/tickets/" + desk.number + "/ranking")
                .jsonPath();
        assertNull(ranking.get("next"), ranking::prettify);
        assertTrue(
                ranking.getString("act").startsWith("Work is stopped by smoke. Leave, warn everybody"),
                ranking::prettify);
        String second =
                "This hazard is cleared by a second person, who is no trainee and has not worked on this ticket.";
        desk.shut("way-ines", "second-person", second, CLEARED);
        desk.shut("way-tom", "second-person", second, CLEARED);
        desk.malformed("way-ole", "[0].how", "Say what was done about the hazard.", CLEARED.replace("Aired", " "));
        desk.lets("way-ole", CLEARED);
        desk.does(settled(action, "CARRIED_OUT"));
    }

    @Test
    void lesserHazard_isClearedByWhoHasTheTicket_notByWhoeverComesBy() {
        ApiDesk desk = site.desk("way-ines");
        desk.does(screened("SHARP"));
        desk.shut("way-ole", "not-yours", "Only the assignee does this", CLEARED);
        desk.malformed(
                "way-ines",
                "[0].acknowledged",
                "Read what there is to do and tick that it was done.",
                CLEARED.replace("true", "false"));
        desk.does(CLEARED);
        desk.shut("way-ines", "work-not-stopped", "No hazard is waiting to be cleared.", CLEARED);
    }
}
