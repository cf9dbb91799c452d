package org.benchtrail.ticket;

import static org.benchtrail.ticket.Recording.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.benchtrail.core.bench.storage.Sectors;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;

/**
 * A journey through the whole API, held against the recording {@code recording/api.json} in the test resources: every answer and every
 * stored byte stays as it was. {@code -Drecording.write=true} records anew; the difference is then read before it is committed.
 *
 * <p>The journey keeps to categories, words and accounts that no other test uses.
 */
@QuarkusTest
@Order(1) // other tests make versions of the catalogue and teach it
@QuarkusTestResource(TestDatabase.class)
class ApiRecordingTest {
    /** A clean run cannot be longer than the time since the last action, and no test waits for a minute. */
    private static final Set<String> NOT_WITHIN_A_MINUTE = Set.of("soak-run");

    private static final String ADVANCED = "{'kind':'advanced'}";

    @Inject
    PeopleActs people;

    private final Recording recording = new Recording();

    @BeforeEach
    void people() {
        person("rec-ines", Set.of(Role.TECHNICIAN));
        person("rec-ole", Set.of(Role.TECHNICIAN));
        person("rec-tom", Set.of(Role.TRAINEE));
        person("rec-marek", Set.of(Role.MENTOR));
        person("rec-sue", Set.of(Role.SUPERVISOR));
        person("rec-ada", Set.of(Role.ADMINISTRATOR));
        people.setMentor(new Actor("rec-ada", "rec-ada", Set.of(Role.ADMINISTRATOR)), "rec-tom", "rec-marek");
    }

    private void person(String login, Set<Role> roles) {
        people.ensureAccount(login, login, roles, "a long enough password");
        recording.token(
                login,
                people.createToken(new Actor(login, login, roles), "rec", 1).secret());
    }

    @Test
    void everyAnswerAndEveryStoredByte_isAsRecorded() {
        long known = repairedTicket();
        declinedAndReopened(known);
        traineesTicket();
        traineesForecasts();
        desk();
        malformed();
        lists();
        knowledge(known);
        learning();
        catalogue();
        bench();
        readIn();
        accounts();
        recording.openApi();
        Set<String> never = new TreeSet<>(FactKinds.all().keySet());
        never.removeAll(NOT_WITHIN_A_MINUTE);
        never.removeAll(recording.kinds());
        assertEquals(Set.of(), never, "kinds of fact that were not recorded");
        assertEquals(List.of(), recording.otherThanDescribed());
        assertTrue(recording.operationsSeen() > 55, recording.operationsSeen() + " operations");
        recording.check();
    }

    private Recording.Desk open(String who, String category, String title) {
        return recording.open(
                who,
                "{'title':'" + title + "','words':'It gives up on me','category':'" + category
                        + "','device':'Plotter desk 3','place':'Recorded room','requester':'Rae Recorded','contact':'room 404',"
                        + "'impact':'ONE_PERSON','urgency':'HINDERED'}");
    }

    /** From report to closure with every kind of fact that a technician records; the number of the known cause it leaves. */
    private long repairedTicket() {
        Recording.Desk t = open("rec-ines", "USB", "Recordium tablet drops out");
        t.tries("rec-ines", ADVANCED);
        int symptom = t.does(
                "{'kind':'symptom-recorded','words':'It vanishes','observable':'Pen stops','intermittent':true}");
        t.does(
                "{'kind':'onset-recorded','known':true,'when':'Since Monday'}",
                "{'kind':'changes-asked','answers':{'HARDWARE':'YES','SOFTWARE':'NO','SETTINGS':'UNKNOWN','PLACE':'NO','INFRASTRUCTURE':'NO'},'note':'A new hub'}",
                "{'kind':'scope-recorded','scope':'SEVERAL','note':'Two desks'}",
                "{'kind':'reproduction-tried','outcome':'YES','how':'Leave it idle'}",
                "{'kind':'hazards-screened','present':{'SMELL':false,'SMOKE':false,'HEAT':true,'SWELLING':false,'LIQUID':false,'MAINS_LEAD':false,'EXPOSED_WIRING':false,'SHOCK':false,'ARCING':false,'SHARP':false,'HEIGHT':false}}");
        t.tries("rec-ines", ADVANCED);
        t.does(
                "{'kind':'stop-work-cleared','how':'Unplugged and cooled','acknowledged':true}",
                "{'kind':'hazards-screened','present':{'SMELL':false,'SMOKE':false,'HEAT':false,'SWELLING':false,'LIQUID':false,'MAINS_LEAD':false,'EXPOSED_WIRING':false,'SHOCK':false,'ARCING':false,'SHARP':false,'HEIGHT':false}}",
                "{'kind':'data-answered','state':'NO_USER_DATA','note':'A tablet only'}",
                "{'kind':'extract-recorded','source':'System log','text':'port 3 over current'}",
                "{'kind':'logs-reviewed','looked':true,'note':'Over current'}",
                "{'kind':'likeness-checked','shown':['nothing alike']}");
        int reading = t.does(
                "{'kind':'reading-recorded','quantity':'port voltage','value':'4,31 V','point':'port 3','instrument':'meter','lower':'4.75','upper':'5.25','limitSource':'data sheet','accuracy':'0.5 % + 2'}");
        int plain = t.does(
                "{'kind':'reading-recorded','quantity':'idle time','value':'95','unit':'s','point':'pen','lower':'10','limitSource':'site policy'}");
        t.does(
                "{'kind':'finding-answered','finding':'u2','question':'good on another port','value':'yes','source':'SEEN'}",
                "{'kind':'finding-answered','finding':'u6','question':'its driver is marked faulty','value':'unknown','source':'REPORTED'}");
        int finding = t.does("{'kind':'finding-recorded','text':'Port is loose'}");
        t.does("{'kind':'corrected','entry':" + finding
                + ",'reason':'Wrong port','replacement':{'kind':'finding-recorded','text':'Port 3 is loose'}}");
        t.does("{'kind':'corrected','entry':" + plain + ",'reason':'Measured on another desk'}");
        attachments(t);
        t.does(ADVANCED);
        t.does(
                "{'kind':'obvious-questioned','looks':{'POWER':'IN_ORDER','CABLES':'SUSPECT','SETTINGS':'IN_ORDER','RECENT_CHANGE':'NOT_APPLICABLE'},'note':'Cable swapped'}");
        int first = t.does("{'kind':'theory-stated','text':'Its driver','causeId':'USB-04'}");
        int second = t.does("{'kind':'theory-stated','text':'Worn port'}");
        t.does("{'kind':'theories-ranked','order':[" + second + "," + first + "],'basis':'Looks'}");
        t.does("{'kind':'theory-chosen','theory':" + first + ",'reason':''}");
        t.tries("rec-ines", ADVANCED);
        t.does("{'kind':'theory-chosen','theory':" + first + ",'reason':'Quick to look at'}", ADVANCED);
        int look = t.does("{'kind':'check-planned','theory':" + first
                + ",'what':'Look at the driver','expectation':'A mark','finding':'u6'}");
        t.does("{'kind':'result-recorded','check':" + look
                + ",'observation':'No mark','outcome':'REFUTES','answer':'no'}");
        t.tries("rec-ines", ADVANCED);
        t.does("{'kind':'ruled-out'}");
        t.does("{'kind':'theory-chosen','theory':" + second + ",'reason':'It is loose'}", ADVANCED);
        int open = t.does(
                "{'kind':'check-planned','theory':" + second
                        + ",'what':'Take the fan cover off','expectation':'A bent tongue','invasive':true,'cautions':['STATIC']}");
        String seen = "{'kind':'result-recorded','check':" + open
                + ",'observation':'Bent tongue','outcome':'SUPPORTS','reading':";
        t.malformed(seen + reading + "}");
        int again = t.does(
                "{'kind':'reading-recorded','quantity':'port voltage','value':'4.30','unit':'V','point':'port 3','instrument':'meter','lower':'4.75','upper':'5.25','limitSource':'data sheet','accuracy':'0.5 % + 2'}");
        seen += again + "}";
        t.tries("rec-ines", seen);
        t.does(
                "{'kind':'cautions-acknowledged','about':" + open
                        + ",'cautions':['STATIC','MAINS','BATTERY','SWELLING','CAPACITOR','HEAT','MOVING_PARTS','LIFTING','LASER','DATA_LOSS']}");
        t.does(seen, ADVANCED);
        int action = t.does(
                "{'kind':'action-planned','what':'Replace the port','effect':'Holds the plug','impact':'One desk, an hour','wayBack':'Put the old one back','cost':'12,5','part':'Port module','irreversible':false,'touchesStorage':false,'usesPart':true}");
        int spare = t.does(
                "{'kind':'action-planned','what':'Dispose of the hub','effect':'No over current','impact':'Nobody','irreversible':true,'severalDevices':true,'highRisk':true,'cost':'300','touchesStorage':false,'usesPart':false}");
        t.does("{'kind':'maker-consulted','applicable':true,'text':'Service sheet 7'}");
        t.does("{'kind':'part-fit-checked','action':" + action + ",'fit':'DOES_NOT_FIT','basis':'Other screw holes'}");
        t.tries("rec-ole", "{'kind':'part-override-approved','action':" + action + ",'reason':'Holes can be drilled'}");
        t.lets("rec-sue", "{'kind':'part-override-approved','action':" + action + ",'reason':'Holes can be drilled'}");
        t.lets("rec-sue", "{'kind':'plan-declined','reason':'Keep the hub'}");
        t.tries("rec-ines", settled(action, "CARRIED_OUT", ""));
        t.does("{'kind':'cautions-acknowledged','about':" + action + ",'cautions':['STATIC']}");
        t.tries("rec-ines", settled(action, "CARRIED_OUT", ""));
        t.does(
                "{'kind':'cautions-acknowledged','about':" + action
                        + ",'cautions':['LIVE','MAINS','BATTERY','SWELLING','CAPACITOR','HEAT','MOVING_PARTS','LIFTING','HEIGHT','LASER','STATIC','DATA_LOSS']}");
        t.does(settled(spare, "NOT_NEEDED", "The hub stays"));
        t.does(settled(action, "CARRIED_OUT", "Drilled"), ADVANCED);
        t.tries("rec-ines", ADVANCED);
        t.malformed("{'kind':'function-checked','items':{'9':'WORKS'}}");
        t.malformed("{'kind':'soak-run','minutes':5,'recurred':false,'note':'Too soon'}");
        t.does("{'kind':'soak-started','note':'Left idle'}");
        t.benchResult("{'calculation':'soak','input':{'every':24,'doubt':5}}");
        t.lets("rec-sue", "{'kind':'waived','requirement':'soak-time-passed','reason':'Seen at once'}");
        t.does(
                "{'kind':'symptom-rechecked','symptom':" + symptom + ",'gone':true,'how':'Two hours idle'}",
                "{'kind':'reading-recorded','quantity':'port voltage','value':'5.02','unit':'V','point':'port 3','instrument':'meter','lower':'4.75','upper':'5.25','limitSource':'data sheet','accuracy':'0.5 % + 2'}",
                "{'kind':'function-checked','answers':{'The device is recognised at the port where it belongs':'WORKS','It works after a restart and after waking from sleep':'WORKS','Other devices on the same hub still work':'NOT_APPLICABLE'},'note':'No hub here'}",
                "{'kind':'requester-answered','state':'AGREES','tries':1,'note':'By telephone'}",
                "{'kind':'prevention-considered','applies':true,'text':'A strain relief'}",
                ADVANCED);
        t.tries("rec-ines", "{'kind':'closed'}");
        t.does(
                "{'kind':'cause-named','cause':'Recordium worn port','causeId':'USB-02','sureness':'MEASURED'}",
                "{'kind':'summary-written','findings':'Bent tongue','actions':'Port replaced','outcome':'Holds'}",
                "{'kind':'knowledge-linked','learned':'PROPOSED','text':'Recordium worn port'}",
                "{'kind':'effort-recorded','minutes':75,'parts':'One port'}",
                "{'kind':'signed','signatory':'ASSIGNEE'}",
                "{'kind':'closed'}");
        t.tries("rec-ines", "{'kind':'onset-recorded','known':false}");
        int added = t.does("{'kind':'addendum','about':'PART','text':'One screw as well'}");
        t.lets("rec-sue", "{'kind':'addendum-countersigned','addendum':" + added + ",'note':'Seen'}");
        t.reads();
        return recording
                .get("rec-ole", "/api/knowledge?q=recordium")
                .at("/causes/0/id")
                .asLong();
    }

    private static String settled(int action, String settlement, String note) {
        return "{'kind':'action-settled','action':" + action + ",'settlement':'" + settlement + "','note':'" + note
                + "'}";
    }

    private void attachments(Recording.Desk t) {
        byte[] picture = "not really a picture".getBytes(StandardCharsets.UTF_8);
        String at = t.path() + "/attachments";
        t.sendsBytes("rec-ole", at + "?fileName=port.png&shows=The%20port", "image/png", picture);
        t.sendsBytes("rec-ole", at + "?fileName=&shows=The%20port", "image/png", picture);
        String sha256 = Recording.sha256(picture);
        String told = "{'kind':'attachment-added','fileName':'again.png','mediaType':'image/png','bytes':1,'sha256':'"
                + sha256 + "','shows':'The same'}";
        int twice = t.does(told);
        t.does("{'kind':'corrected','entry':" + twice + ",'reason':'A better name','replacement':"
                + told.replace("again", "better") + "}");
        String mark = "{'kind':'picture-marked','picture':" + twice
                + ",'mark':'CIRCLE','fromX':100,'fromY':200,'toX':300,'toY':400,'text':'Bent pin'}";
        t.does(mark);
        t.malformed(mark.replace("300", "1001"));
        t.malformed(told.replace(sha256, "0".repeat(64)));
        recording.get("rec-tom", at + "/" + sha256);
        recording.get("rec-tom", at + "/" + "1".repeat(64));
    }

    /** A way through rethinking, failing and a second closure that confirms the known cause, then opened again. */
    private void declinedAndReopened(long known) {
        Recording.Desk t = open("rec-ines", "BOOT", "Recordium box stays dark");
        t.does(
                "{'kind':'symptom-recorded','words':'Dark','observable':'No picture after a minute'}",
                "{'kind':'onset-recorded','known':false}",
                "{'kind':'scope-recorded','scope':'SITE'}",
                "{'kind':'hazards-screened','present':{'SMELL':false,'SMOKE':false,'HEAT':false,'SWELLING':false,'LIQUID':false,'MAINS_LEAD':false,'EXPOSED_WIRING':false,'SHOCK':false,'ARCING':false,'SHARP':false,'HEIGHT':false}}",
                "{'kind':'evidence-impossible','reason':'Nothing shows'}",
                "{'kind':'likeness-checked'}");
        t.benchResult("{'calculation':'drive-health','input':"
                + recording.example("drive-health").toString().replace("98.0", "97.5") + "}");
        t.benchResult("{'calculation':'soak','input':{'every':-1,'doubt':5}}");
        t.benchResult("{'calculation':'no-such'}");
        for (String requirement : new String[] {"changes-asked", "reproduced", "logs-reviewed"}) {
            t.lets("rec-sue", "{'kind':'waived','requirement':'" + requirement + "','reason':'It burned'}");
        }
        t.tries("rec-sue", "{'kind':'waived','requirement':'onset-known','reason':'Why not'}");
        t.tries("rec-ines", ADVANCED);
        t.does("{'kind':'data-answered','state':'TAKEN_NOW'}");
        t.does(ADVANCED);
        t.does(
                "{'kind':'obvious-questioned','looks':{'POWER':'IN_ORDER','CABLES':'IN_ORDER','SETTINGS':'IN_ORDER','RECENT_CHANGE':'SUSPECT'}}");
        int theory = t.does("{'kind':'theory-stated','text':'Clock cell','causeId':'BOO-05'}");
        t.does("{'kind':'theory-chosen','theory':" + theory + ",'reason':'At hand'}", ADVANCED);
        checked(t, theory);
        int action = t.does(
                        "{'kind':'action-planned','what':'Change the clock cell','effect':'Keeps the date','impact':'Nobody','wayBack':'Put it back','touchesStorage':true,'cautions':['STATIC'],'irreversible':false,'usesPart':false}",
                        "{'kind':'maker-consulted','applicable':false,'text':'None found'}")
                - 1;
        t.does(
                "{'kind':'cautions-acknowledged','about':" + action
                        + ",'cautions':['LIVE','MAINS','BATTERY','SWELLING','CAPACITOR','HEAT','MOVING_PARTS','LIFTING','HEIGHT','LASER','STATIC','DATA_LOSS']}");
        t.does(settled(action, "FAILED", "Does not come out"));
        t.tries("rec-ines", ADVANCED);
        t.does("{'kind':'rethought','reason':'The cell is soldered','theoryWrong':false}");
        t.does(
                "{'kind':'theory-chosen','theory':" + theory + ",'newEvidence':'Soldered','reason':'At hand'}",
                ADVANCED);
        checked(t, theory);
        t.lets("rec-sue", "{'kind':'waived','requirement':'maker-consulted','reason':'None found'}");
        second(t);
        t.does("{'kind':'verify-failed','reason':'Dark again'}");
        t.does(
                "{'kind':'theory-chosen','theory':" + theory + ",'newEvidence':'Dark again','reason':'At hand'}",
                ADVANCED);
        checked(t, theory);
        t.lets("rec-sue", "{'kind':'waived','requirement':'maker-consulted','reason':'None found'}");
        second(t);
        t.does(
                "{'kind':'symptom-rechecked','symptom':2,'gone':true,'how':'Ten starts'}",
                "{'kind':'function-checked','answers':{'Starts from cold to the sign-in screen, twice':'WORKS','No new errors in the system log':'WORKS','Usual programs and devices work':'WORKS','Updates and protection are on and current':'WORKS'}}",
                "{'kind':'requester-answered','state':'NOT_REACHED','tries':3}",
                "{'kind':'prevention-considered','applies':false,'text':'Age'}",
                ADVANCED);
        t.does(
                "{'kind':'cause-named','cause':'Recordium worn port','sureness':'PRESUMED'}",
                "{'kind':'summary-written','findings':'Dark','actions':'Cell replaced','outcome':'Starts'}",
                "{'kind':'effort-recorded','minutes':200}");
        t.malformed("{'kind':'knowledge-linked','learned':'CONFIRMED','text':'','known':999999999}");
        t.malformed("{'kind':'knowledge-linked','learned':'NOTHING','text':'','known':" + known + "}");
        t.does(
                "{'kind':'knowledge-linked','learned':'CONFIRMED','text':'','known':" + known + "}",
                "{'kind':'signed','signatory':'ASSIGNEE'}",
                "{'kind':'closed'}");
        t.lets("rec-ole", "{'kind':'reopened','reason':'Dark once more'}");
        t.reads();
    }

    private static void checked(Recording.Desk t, int theory) {
        int check = t.does("{'kind':'check-planned','theory':" + theory + ",'what':'Measure it','expectation':'Low'}");
        t.does(
                "{'kind':'cautions-acknowledged','about':" + check
                        + ",'cautions':['LIVE','MAINS','BATTERY','SWELLING','CAPACITOR','HEAT','MOVING_PARTS','LIFTING','HEIGHT','LASER','STATIC','DATA_LOSS']}");
        t.does("{'kind':'result-recorded','check':" + check + ",'observation':'Low','outcome':'INCONCLUSIVE'}");
        int again = t.does("{'kind':'check-planned','theory':" + theory + ",'what':'Again','expectation':'Low'}");
        t.does("{'kind':'result-recorded','check':" + again + ",'observation':'Low','outcome':'SUPPORTS'}", ADVANCED);
    }

    private static void second(Recording.Desk t) {
        int action = t.does(
                "{'kind':'action-planned','what':'Solder a holder in','effect':'Keeps the date','impact':'Nobody','wayBack':'Unsolder it','irreversible':false,'touchesStorage':false,'usesPart':false}");
        t.does(
                "{'kind':'cautions-acknowledged','about':" + action
                        + ",'cautions':['LIVE','MAINS','BATTERY','SWELLING','CAPACITOR','HEAT','MOVING_PARTS','LIFTING','HEIGHT','LASER','STATIC','DATA_LOSS']}");
        t.does(settled(action, "CARRIED_OUT", ""), ADVANCED);
    }

    /** A trainee's plan that a mentor approves; then the ticket is a duplicate. */
    /** What is veiled before the forecast, and told afterwards. */
    private void traineesForecasts() {
        Recording.Desk t = open("rec-tom", "VOICE", "Recordium handset crackles");
        t.does(
                "{'kind':'symptom-recorded','words':'It crackles','observable':'A crackle every ten seconds'}",
                "{'kind':'onset-recorded','known':false}",
                "{'kind':'scope-recorded','scope':'ONE'}",
                "{'kind':'hazards-screened','present':{'SMELL':false,'SMOKE':false,'HEAT':false,'SWELLING':false,'LIQUID':false,'MAINS_LEAD':false,'EXPOSED_WIRING':false,'SHOCK':false,'ARCING':false,'SHARP':false,'HEIGHT':false}}");
        recording.get("rec-tom", t.path() + "/ranking");
        t.tries("rec-tom", "{'kind':'likeness-checked','shown':[]}");
        t.forecasts("{'forecast':'CAUSES_EARLY','causes':{'voice/uplink-full':60},'other':30}");
        t.forecasts("{'forecast':'CAUSES_EARLY','causes':{'voice/uplink-full':60},'nextTest':'v1'}");
        t.forecasts("{'forecast':'CAUSES_EARLY','causes':{'voice/uplink-full':60}}");
    }

    private void traineesTicket() {
        Recording.Desk t = open("rec-tom", "OTHER", "Recordium shelf creaks");
        t.does(
                "{'kind':'symptom-recorded','words':'Creaks','observable':'A noise'}",
                "{'kind':'onset-recorded','known':false}",
                "{'kind':'changes-asked','answers':{'HARDWARE':'NO','SOFTWARE':'NO','SETTINGS':'NO','PLACE':'NO','INFRASTRUCTURE':'NO'}}",
                "{'kind':'scope-recorded','scope':'ONE'}",
                "{'kind':'reproduction-tried','outcome':'UNSAFE_TO_TRY','how':'It may fall'}",
                "{'kind':'hazards-screened','present':{'SMELL':false,'SMOKE':false,'HEAT':false,'SWELLING':false,'LIQUID':false,'MAINS_LEAD':false,'EXPOSED_WIRING':false,'SHOCK':false,'ARCING':false,'SHARP':false,'HEIGHT':false}}",
                "{'kind':'data-answered','state':'BACKUP_VERIFIED'}",
                "{'kind':'extract-recorded','source':'Ear','text':'Creak'}",
                "{'kind':'logs-reviewed','looked':false,'note':'There are none'}",
                "{'kind':'forecast-skipped','forecast':'CAUSES_EARLY','person':'rec-tom','reason':'Urgent'}",
                "{'kind':'likeness-checked','shown':[]}",
                ADVANCED,
                "{'kind':'obvious-questioned','looks':{'POWER':'NOT_APPLICABLE','CABLES':'IN_ORDER','SETTINGS':'IN_ORDER','RECENT_CHANGE':'IN_ORDER'},'note':'It has no power'}",
                "{'kind':'theory-stated','text':'Loose screw'}",
                "{'kind':'forecast-skipped','forecast':'CAUSES','person':'rec-tom','reason':'Nothing to choose from'}",
                "{'kind':'theory-chosen','theory':15}",
                ADVANCED,
                "{'kind':'check-planned','theory':15,'what':'Turn it','expectation':'It turns'}");
        t.does(
                "{'kind':'result-recorded','check':19,'observation':'It turns','outcome':'SUPPORTS'}",
                ADVANCED,
                "{'kind':'action-planned','what':'Tighten it','effect':'Quiet','impact':'Nobody','wayBack':'Loosen it','irreversible':false,'touchesStorage':false,'usesPart':false}",
                "{'kind':'maker-consulted','applicable':false,'text':'None'}");
        t.tries("rec-tom", settled(22, "CARRIED_OUT", ""));
        t.tries("rec-ole", "{'kind':'plan-approved','actions':[22]}");
        t.lets("rec-marek", "{'kind':'plan-approved','actions':[22],'note':'Go on'}");
        t.does(settled(22, "CARRIED_OUT", ""));
        t.lets("rec-marek", "{'kind':'sent-back','reason':'Say what was heard'}");
        t.tries("rec-tom", "{'kind':'signed','signatory':'MENTOR'}");
        int live = t.does(
                "{'kind':'action-planned','what':'Change the fuse in the mains plug','effect':'Holds','impact':'Nobody','wayBack':'The old one','irreversible':false,'touchesStorage':false,'usesPart':false}");
        t.presences("rec-tom", live);
        t.presences("rec-marek", 15);
        t.presences("rec-marek", live);
        t.lets("rec-marek", "{'kind':'presence-ended','presence':" + t.version() + ",'stayed':true,'saw':'Plug out'}");
        t.tries("rec-tom", "{'kind':'cancelled','reason':'Enough'}");
        t.does("{'kind':'cancelled','reason':'The same shelf','duplicateOf':'" + recording.first() + "'}");
        t.tries("rec-tom", ADVANCED);
        t.reads();
    }

    /** What happens at the desk, and what is refused there. */
    private void desk() {
        Recording.Desk t = recording.open(
                "rec-ines",
                "{'title':'Recordium queued','category':'VOICE','device':'Handset','place':'Recorded room','requester':'Rae Recorded','contact':'room 404','impact':'WHOLE_SITE','urgency':'STOPPED','queued':true}");
        t.tries("rec-ines", "{'kind':'onset-recorded','known':false}");
        t.does("{'kind':'handed-over','to':'rec-ines','toRoles':['SUPERVISOR'],'note':'Taken'}");
        t.does("{'kind':'held','waitingFor':'WINDOW','followUp':'{soon}','note':'At night'}");
        t.tries("rec-ines", ADVANCED);
        t.tries("rec-ines", "{'kind':'held','waitingFor':'PART','followUp':'{soon}'}");
        recording.get("rec-ole", "/api/tickets?place=recorded%20room&held=true");
        t.does("{'kind':'resumed'}");
        t.tries("rec-ines", "{'kind':'resumed'}");
        t.does("{'kind':'escalated','to':'The carrier','tried':'Other handset'}");
        t.tries("rec-ines", "{'kind':'escalated','to':'The carrier','tried':'Other handset'}");
        t.lets("rec-sue", "{'kind':'returned','note':'Line repaired'}");
        t.tries("rec-ines", "{'kind':'returned','note':'Line repaired'}");
        t.tries("rec-ole", "{'kind':'handed-over','to':'rec-ole'}");
        t.malformed("{'kind':'handed-over','to':'nobody-here'}");
        t.tries("rec-ines", "{'kind':'handed-over','to':'rec-ole','note':'Yours'}");
        t.does("{'kind':'hand-over-offered','to':'rec-ole','note':'Yours'}");
        t.lets("rec-ole", "{'kind':'offer-withdrawn','note':'Not today'}");
        judged(t);
        t.does("{'kind':'hand-over-offered','to':'rec-ole','note':'Yours'}");
        t.lets("rec-ole", "{'kind':'handed-over','to':'rec-ole','note':'Taken'}");
        t.tries("rec-ines", "{'kind':'onset-recorded','known':false}");
        t.lets("rec-ines", "{'kind':'finding-recorded','text':'The drive clicks','driveFailure':true}");
        t.lets("rec-ines", "{'kind':'corrected','entry':" + t.version() + ",'reason':'It does not'}");
        t.lets(
                "rec-sue",
                "{'kind':'corrected','entry':1,'reason':'Another room','replacement':{'kind':'opened','ticket':'{number}','title':'Recordium queued','words':'','category':'VOICE','device':'Handset','place':'Recorded hall','requester':{requester},'impact':'ONE_PERSON','urgency':'CAN_WAIT','assigneeRoles':[]}}");
        t.malformed("{'kind':'corrected','entry':2,'reason':'No such'}");
        t.onVersion(1, "{'kind':'finding-recorded','text':'Too late'}");
        t.onVersion(99, "{'kind':'finding-recorded','text':'Too early'}");
        t.reads();
        t.lets("rec-sue", "{'kind':'cancelled','reason':'Withdrawn'}");
        t.tries("rec-sue", "{'kind':'reopened','reason':'Not this one'}");
    }

    /** What is asked of others, remarked by them, and agreed to. */
    private static void judged(Recording.Desk t) {
        t.does("{'kind':'loss-accepted','owner':'Rae Recorded','how':'By telephone'}");
        int symptom = t.does("{'kind':'symptom-recorded','words':'Mute','observable':'No tone'}");
        t.does("{'kind':'asked','what':'MENTOR','note':'Is it the line?'}");
        t.lets("rec-marek", "{'kind':'remarked','entry':" + symptom + ",'text':'Which tone?'}");
        int struck = t.does("{'kind':'corrected','entry':" + symptom + ",'reason':'Another handset'}");
        t.tries("rec-ole", "{'kind':'lessening-agreed','correction':" + struck + ",'reason':'So it is'}");
        t.lets("rec-sue", "{'kind':'lessening-agreed','correction':" + struck + ",'reason':'So it is'}");
    }

    /** Every malformed act is refused with its field, and leaves no trace. */
    private void malformed() {
        Recording.Desk t = open("rec-ines", "OTHER", "Recordium malformed");
        for (String body : new String[] {
            "{'kind':'onset-recorded','known':true}",
            "{'kind':'scope-recorded','scope':'MOON'}",
            "{'kind':'scope-recorded','scope':1}",
            "{'kind':'changes-asked'}",
            "{'kind':'hazards-screened','present':{'SMELL':true}}",
            "{'kind':'soak-run','minutes':1.5}",
            "{'kind':'symptom-recorded','words':'a','observable':'b','intermitent':true}",
            "{'kind':'symptom-recorded','words':'\\u0000','observable':''}",
            "{'kind':'symptom-recorded','words':'\\ud83d','observable':'b'}",
            "{'kind':'held','waitingFor':'PART','followUp':'tomorrow'}",
            "{'kind':'held','waitingFor':'PART','followUp':'2001-01-01T00:00:00Z'}",
            "{'kind':'held','waitingFor':'PART','followUp':'2999-01-01T00:00:00Z'}",
            "{'kind':'cancelled','reason':'Same','duplicateOf':'40718-5'}",
            "{'kind':'reading-recorded','quantity':'q','value':'warm','unit':'V','point':'p'}",
            "{'kind':'reading-recorded','quantity':'q','value':'1','unit':'V','point':'p','lower':'3','upper':'2'}",
            "{'kind':'reading-recorded','quantity':'q','value':'1','unit':'V','point':'p','accuracy':'fine'}",
            "{'kind':'corrected','entry':1,'reason':'r','replacement':{'kind':'scope-recorded'}}",
            "{'kind':'corrected','entry':1,'reason':'r','replacement':{'kind':'scope-recorded','scope':'ONE'}}",
            "{'kind':'corrected','entry':99,'reason':'r'}",
            "{'kind':'cautions-acknowledged','about':99,'cautions':['HEAT']}",
            "{'kind':'action-planned','cost':'much'}",
            "{'kind':'bench-result-attached','calculation':'soak'}",
            "{'kind':'soak-time-reckoned','minutes':1,'basis':'a feeling'}",
            "{'kind':'theories-ranked','order':[],'basis':'a feeling','causes':[],'catalogue':1}",
            "{'kind':'refused','act':'advanced','missing':[]}",
            "{'kind':'opened'}",
            "{'kind':'nonsense'}",
            "{'kind':null}",
            "{'words':'no kind'}",
            "[{'kind':'onset-recorded'},{'kind':'nonsense'}]",
            "[{'kind':'onset-recorded'},5]",
            "[]",
            "{}",
            "5",
            "null",
            "{",
            "kind=advanced"
        }) {
            t.malformed(body);
        }
        t.tries("rec-ines", "[{'kind':'onset-recorded'},{'kind':'theory-stated','text':'Too early'}]");
        t.onVersion(null, "{'kind':'onset-recorded'}");
        recording.post("rec-ines", "/api/tickets", "{}");
        recording.post("rec-ines", "/api/tickets", "null");
        recording.post("rec-ines", "/api/tickets", "{'title':'x','colour':'blue'}");
        recording.post("rec-ada", "/api/tickets", "{}");
        recording.post("rec-ada", t.path() + "/acts", ADVANCED);
        recording.get("rec-ines", "/api/tickets/9999999996");
        recording.get("rec-ines", "/api/tickets/40718-5");
        recording.get("nobody", t.path());
    }

    private void lists() {
        String room = "/api/tickets?place=Recorded%20room";
        recording.get("rec-ole", room);
        recording.get("rec-ole", recording.nextOf(recording.get("rec-ole", room + "&size=1")));
        for (String query : new String[] {
            "&standing=CLOSED",
            "&standing=CANCELLED",
            "&step=IDENTIFY",
            "&assignee=rec-ines",
            "&assignee=-",
            "&overdue=true",
            "&held=false",
            "&text=recordium%20dark",
            "&size=0",
            "&after=x",
            "&standing=MOON"
        }) {
            recording.get("rec-ole", room + query);
        }
        recording.get("rec-ole", "/api/tickets/alike?text=recordium");
        recording.get("rec-ole", "/api/tickets/alike");
    }

    private void knowledge(long known) {
        String at = "/api/knowledge/" + known;
        recording.get("rec-ole", "/api/knowledge?q=recordium");
        recording.get("rec-ole", "/api/knowledge?q=recordium&category=VOICE");
        recording.get("rec-ole", "/api/knowledge?q=");
        recording.get("rec-ole", at);
        recording.get("rec-ole", "/api/knowledge/999999999");
        recording.act("rec-ole", 1, at, "{'kind':'flag','reason':'Says too little'}");
        recording.act(
                "rec-ole",
                2,
                at,
                "{'kind':'correct','reason':'More','text':{'title':'Recordium worn port','category':'USB','shows':'Drops out','apart':'Good on another port','cure':'Replace it'}}");
        recording.act("rec-ole", 3, at, "{'kind':'confirm','note':'Seen again'}");
        recording.act("rec-sue", 3, at, "{'kind':'confirm','note':'Seen again'}");
        recording.act("rec-sue", 4, at, "{'kind':'confirm'}");
        recording.act("rec-ole", 4, at, "{'kind':'retire','reason':'Old'}");
        recording.act("rec-sue", 4, at, "{'kind':'retire','reason':'Old'}");
        recording.act("rec-sue", 5, at, "{'kind':'bring-back','reason':'Not so old'}");
        JsonNode split = recording.act(
                "rec-sue",
                6,
                at,
                "{'kind':'split','reason':'Two kinds','cases':['" + recording.first()
                        + "'],'text':{'title':'Recordium bent tongue','category':'USB','shows':'Loose','apart':'','cure':'Straighten it'}}");
        recording.act(
                "rec-sue",
                7,
                at,
                "{'kind':'merge','into':" + split.at("/cause/id").asLong() + ",'reason':'One after all'}");
        recording.act("rec-sue", 1, at, "{'kind':'confirm'}");
        recording.act("rec-sue", null, at, "{'kind':'confirm'}");
        recording.act("rec-sue", 8, at, "{'kind':'praise'}");
        recording.act("rec-sue", 8, at, "{'kind':'flag','reason':''}");
        recording.act("rec-tom", 8, at, "{'kind':'confirm'}");
        recording.get("rec-ole", at);
    }

    private void learning() {
        String ticket = "{'tickets':['" + recording.first() + "'],'reason':'Only to record it'}";
        recording.own("rec-sue", "/api/learning/waiting?size=200", "/tickets");
        recording.post("rec-ole", "/api/learning/accepted", ticket);
        recording.post("rec-sue", "/api/learning/accepted", ticket);
        recording.own("rec-sue", "/api/learning/cases", "");
        recording.get("rec-sue", "/api/learning/calibration?category=usb");
        recording.post("rec-sue", "/api/learning/withdrawn", "{'tickets':['" + recording.first() + "']}");
        recording.post("rec-sue", "/api/learning/withdrawn", ticket);
        recording.own("rec-sue", "/api/learning/cases?state=WITHDRAWN", "");
        recording.post("rec-sue", "/api/learning/accepted", "{'tickets':['40718-5']}");
        recording.post("rec-sue", "/api/learning/versions", "{}");
        recording.post("rec-sue", "/api/learning/undoing", "{'base':999999,'note':'r'}");
    }

    private void catalogue() {
        recording.get("rec-ole", "/api/catalogue/versions/1");
        recording.get("rec-ole", "/api/catalogue/versions/999999");
        recording.post("rec-sue", "/api/catalogue/checks", "{'text':'format: 1'}");
        recording.post("rec-ole", "/api/catalogue/checks", "{'text':'format: 1'}");
        recording.post("rec-sue", "/api/catalogue/versions", "{'base':1,'text':''}");
        recording.post("rec-sue", "/api/catalogue/versions/1/restoration", "{'base':999999,'note':'r'}");
        recording.get("rec-sue", "/api/proposals");
        recording.get("rec-ole", "/api/proposals");
        recording.get("rec-sue", "/api/proposals/999999999");
        recording.post("rec-sue", "/api/proposals/999999999/confirmation", "{}");
        recording.post("rec-sue", "/api/proposals/999999999/declining", "{'reason':'No'}");
    }

    /** Every calculation with its own example, and what it says to nothing. */
    private void bench() {
        for (JsonNode calculation : recording.get("rec-ole", "/api/bench")) {
            String path = "/api/bench/" + calculation.at("/id").asText();
            recording.post("rec-ole", path, calculation.at("/example").toString());
            recording.post("rec-ole", path, "{}");
        }
        recording.get("rec-ole", "/api/bench/soak");
        recording.get("rec-ole", "/api/bench/no-such");
    }

    private void readIn() {
        String at = "/api/read-in/";
        recording.postBytes("rec-ole", at + "nvme-page?device=till", Sectors.nvme());
        recording.postBytes("rec-ole", at + "nvme-page", new byte[] {1, 2});
        for (Map.Entry<String, String> sent : Map.ofEntries(
                        Map.entry(
                                "ups-mib",
                                "upsBatteryVoltage.0 = 274\nupsBatteryStatus.0 = batteryLow(3)\nupsNo.0 = 1"),
                        Map.entry("ata-rows", "5 100 100 10 12\n194 64 40 0 36"),
                        Map.entry("series?quantity=temperature&unit=Cel&device=till", "0;41\n60;43,5\n120;x"),
                        Map.entry(
                                "redfish",
                                json(
                                        "{'Temperatures':[{'Name':'Inlet','ReadingCelsius':61,'UpperThresholdCritical':47}]}")),
                        Map.entry("no-kind", "x"))
                .entrySet()
                .stream()
                .sorted(Map.Entry.comparingByKey())
                .toList()) {
            recording.postBytes("rec-ole", at + sent.getKey(), sent.getValue().getBytes(StandardCharsets.UTF_8));
        }
        recording.postBytes("rec-ole", at + "ups-mib", new byte[] {(byte) 0xFF});
        recording.postBytes("rec-ole", at + "redfish", "{".getBytes(StandardCharsets.UTF_8));
    }

    private void accounts() {
        recording.get("rec-ada", "/api/people?search=rec-");
        recording.get("rec-ada", "/api/people?search=rec-&limit=2");
        recording.get("rec-ada", "/api/people?limit=0");
        recording.get("rec-ole", "/api/people");
        recording.post(
                "rec-ada",
                "/api/people",
                "{'login':'rec-new','name':'New Recorded','roles':['TECHNICIAN','MENTOR'],'password':'a long enough password'}");
        recording.post("rec-ada", "/api/people", "{'login':'Ä','roles':[],'password':'short'}");
        recording.get("rec-ada", "/api/people/rec-new");
        recording.get("rec-ada", "/api/people/rec-nobody");
        recording.put("rec-ada", "/api/people/rec-new/roles", "{'roles':['SUPERVISOR']}");
        recording.put("rec-ada", "/api/people/rec-new/password", "{'password':'another long password'}");
        recording.put("rec-ada", "/api/people/rec-new/active", "{'active':false}");
        recording.get("rec-ole", "/api/me");
        recording.put("rec-ole", "/api/me/zone", "{'zone':'Europe/Lisbon'}");
        recording.put("rec-ole", "/api/me/zone", "{'zone':'Moon/Dark'}");
        recording.post("rec-ole", "/api/me/tokens", "{'name':'second','days':3}");
        recording.get("rec-ole", "/api/me/tokens");
    }
}
