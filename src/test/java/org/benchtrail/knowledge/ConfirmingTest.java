package org.benchtrail.knowledge;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.LesseningAgreed;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Lesson;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.knowledge.Jobs.Job;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.TicketQueries;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** Ways to have words of one's own counted as found true by others, or one finding counted twice: none is open. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ConfirmingTest {
    private static final String PASSWORD = "a long enough password";
    private static final KnowledgeLinked PROPOSED = new KnowledgeLinked(Lesson.PROPOSED, "A new one");
    private static final Actor INES = new Actor("sure-ines", "Ines", Set.of(Role.TECHNICIAN));
    private static final Actor OLE = new Actor("sure-ole", "Ole", Set.of(Role.TECHNICIAN));
    private static final Actor MIA = new Actor("sure-mia", "Mia", Set.of(Role.TECHNICIAN));
    private static final Actor SUE = new Actor("sure-sue", "Sue", Set.of(Role.SUPERVISOR));

    @Inject
    TicketActs tickets;

    @Inject
    TicketQueries look;

    @Inject
    KnowledgeSearch search;

    @Inject
    KnowledgeQueries knowledge;

    @Inject
    KnowledgeActs acts;

    @Inject
    PeopleActs people;

    private Jobs jobs;
    private final Map<Actor, String> tokens = new HashMap<>();

    @BeforeAll
    void people() {
        jobs = new Jobs(tickets);
        for (Actor who : List.of(INES, OLE, MIA, SUE)) {
            people.ensureAccount(who.account(), who.name(), who.roles(), PASSWORD);
            tokens.put(who, people.createToken(who, "sure", 1).secret());
        }
    }

    private static Job job(String title, String cause) {
        return new Job(title, "Workstation", title, cause, "It was so", "Cleaned it");
    }

    /** A draft of Ines's. */
    private long draft(String word) {
        jobs.close(INES, job(word + " fails", word + " worn"), PROPOSED);
        return search.find(word, null, 0, INES).causes().get(0).id();
    }

    /** Answers with the number of the entry. */
    private int done(TicketNumber ticket, Actor who, Fact fact) {
        Outcome outcome = tickets.perform(ticket, jobs.version(ticket, look), List.<Act>of(s -> fact), who);
        assertFalse(outcome.refused(), () -> outcome.missing().toString());
        return outcome.sheet().entries();
    }

    private static HandedOver assigned(Actor who) {
        return new HandedOver(who.account(), Set.of(), "");
    }

    private void confirm(long id, Actor who) {
        acts.perform(id, read(id).version(), new KnowledgeAct.Confirm(null), who);
    }

    private void closesWith(long id, String word, Actor who) {
        jobs.close(who, job(word + " fails again", word + " worn"), new KnowledgeLinked(Lesson.CONFIRMED, "", id));
    }

    private static KnowledgeAct.Correct words(String title) {
        return new KnowledgeAct.Correct(new CauseText(title, Category.HEAT, null, "Fails", "Feel it", "New"), "Better");
    }

    private void correct(long id, String title, Actor who) {
        acts.perform(id, read(id).version(), words(title), who);
    }

    private CauseJson read(long id) {
        return knowledge.cause(id, INES).cause();
    }

    private void assertStands(CauseState state, int confirmations, long id) {
        assertEquals(state + ", " + confirmations, read(id).state() + ", " + read(id).confirmations());
    }

    private Response program(Actor who, long id, String act) {
        return given().header("Authorization", "Bearer " + tokens.get(who))
                .header("If-Match", "\"" + read(id).version() + "\"")
                .contentType("application/json")
                .body(act)
                .post("/api/knowledge/" + id + "/acts");
    }

    private Response page(Actor who, long id, String act, Map<String, String> fields) {
        Browser browser = Browser.signedIn(who.account(), PASSWORD);
        browser.get("/knowledge/" + id);
        Map<String, String> all = new HashMap<>(fields);
        all.put("version", "" + read(id).version());
        return browser.post("/knowledge/" + id + "/" + act, all);
    }

    private void assertShutToAuthor(long id, Actor author) {
        int version = read(id).version();
        Response program = program(author, id, "{\"kind\":\"confirm\"}");
        assertEquals(422, program.statusCode(), program.asString());
        assertTrue(program.asString().contains("somebody else has to find it true"), program.asString());
        Response page = page(author, id, "confirm", Map.of("confirm.note", "I am sure"));
        assertEquals(422, page.statusCode());
        assertTrue(page.asString().contains("somebody else has to find it true"), page.asString());
        String shown = Browser.signedIn(author.account(), PASSWORD)
                .get("/knowledge/" + id)
                .asString();
        assertFalse(shown.contains("I found it true again"), "no such door is shown");
        assertEquals(version, read(id).version());
    }

    @Test
    void correctedAfterItWasConfirmed_isADraft_andConfirmedAnewByOthersOnly() {
        long id = draft("Fescue");
        closesWith(id, "Fescue", OLE);
        confirm(id, MIA);
        assertStands(CauseState.CONFIRMED, 2, id);
        Response page = page(
                SUE,
                id,
                "correct",
                Map.of(
                        "correct.text.title", "Fescue cracked",
                        "correct.text.category", "HEAT",
                        "correct.text.shows", "Fails",
                        "correct.text.apart", "Feel it",
                        "correct.text.cure", "New"));
        assertEquals(303, page.statusCode(), page.asString());
        assertStands(CauseState.DRAFT, 0, id);
        assertShutToAuthor(id, SUE);
        confirm(id, MIA);
        assertStands(CauseState.CONFIRMED, 1, id);
        correct(id, "Fescue split", SUE);
        assertStands(CauseState.DRAFT, 0, id);
        assertEquals(List.of("sure-ines", "sure-sue"), knowledge.cause(id, INES).authors());
    }

    @Test
    void correctedByAProgram_isADraftAsWell() {
        long id = draft("Gantry");
        confirm(id, OLE);
        Response program = program(
                SUE,
                id,
                "{\"kind\":\"correct\",\"text\":{\"title\":\"Gantry bent\",\"category\":\"HEAT\",\"shows\":\"Fails\","
                        + "\"apart\":\"\",\"cure\":\"\"}}");
        assertEquals("DRAFT", program.jsonPath().getString("cause.state"), program.asString());
        assertEquals(0, program.jsonPath().getInt("cause.confirmations"));
        assertEquals(List.of(), program.jsonPath().getList("confirmers"));
    }

    @Test
    void flaggedFirst_thenCorrected_isADraftToo() {
        long id = draft("Halyard");
        confirm(id, MIA);
        acts.perform(id, read(id).version(), new KnowledgeAct.RaiseFlag("Not so"), OLE);
        correct(id, "Halyard frayed", OLE);
        assertStands(CauseState.DRAFT, 0, id);
        assertShutToAuthor(id, OLE);
    }

    @Test
    void whoeverWroteAnyOfItsWords_doesNotConfirm_evenIfOthersWroteSince() {
        long id = draft("Isinglass");
        correct(id, "Isinglass cloudy", OLE);
        assertShutToAuthor(id, INES);
        assertShutToAuthor(id, OLE);
        confirm(id, MIA);
        assertStands(CauseState.CONFIRMED, 1, id);
    }

    @Test
    void author_closingATicketWithIt_addsACase_andNoConfirmation() {
        long id = draft("Jackstay");
        closesWith(id, "Jackstay", INES);
        assertStands(CauseState.DRAFT, 0, id);
        correct(id, "Jackstay loose", OLE);
        closesWith(id, "Jackstay", OLE);
        assertStands(CauseState.DRAFT, 0, id);
        assertEquals(3, knowledge.cause(id, INES).cases().size());
        closesWith(id, "Jackstay", MIA);
        assertStands(CauseState.CONFIRMED, 1, id);
    }

    /** The one worked it out, the other closed it: both wrote the words. */
    @Test
    void draftOfATicketThatWentThroughTwoHands_isConfirmedByNeither() {
        Job job = job("Kelson rots", "Kelson damp");
        TicketNumber ticket = jobs.begin(INES, job);
        done(ticket, SUE, assigned(OLE));
        jobs.work(ticket, jobs.version(ticket, look), OLE, job, PROPOSED);
        long id = search.find("kelson", null, 0, INES).causes().get(0).id();
        assertShutToAuthor(id, INES);
        assertShutToAuthor(id, OLE);
        confirm(id, MIA);
    }

    /** Another opened it, and what they recorded was struck out since; the words may be theirs all the same. */
    @Test
    void whoseEntriesWereAllStruckOut_isAnAuthorStill() {
        Job job = job("Quoin slips", "Quoin loose");
        TicketNumber ticket = jobs.queue(SUE, job);
        done(ticket, SUE, assigned(INES));
        int symptom = done(ticket, INES, new SymptomRecorded("It slips", job.symptom(), false));
        done(ticket, SUE, assigned(OLE));
        int strike = done(ticket, OLE, new Corrected(symptom, "Misheard", null));
        done(ticket, OLE, new SymptomRecorded("It slips", job.symptom(), false));
        done(ticket, SUE, new LesseningAgreed(strike, "Misheard"));
        jobs.work(ticket, jobs.version(ticket, look), OLE, job, PROPOSED);
        assertEquals(
                List.of(),
                look.ticket(ticket, INES).sheet().facts().stream()
                        .filter(f -> f.stamp().person().equals("sure-ines"))
                        .toList(),
                "nothing of hers stands");
        long id = search.find("quoin", null, 0, INES).causes().get(0).id();
        assertEquals(List.of("sure-ines", "sure-ole"), knowledge.cause(id, INES).authors());
        assertShutToAuthor(id, INES);
    }

    /** An author worked on it, and had somebody else close it. */
    @Test
    void ticketOnWhichAnAuthorWorked_isNoConfirmation_whoeverClosesIt() {
        long id = draft("Topsail");
        Job job = job("Topsail fails again", "Topsail worn");
        TicketNumber ticket = jobs.begin(INES, job);
        done(ticket, SUE, assigned(OLE));
        jobs.work(ticket, jobs.version(ticket, look), OLE, job, new KnowledgeLinked(Lesson.CONFIRMED, "", id));
        assertStands(CauseState.DRAFT, 0, id);
        assertEquals(2, knowledge.cause(id, INES).cases().size());
        closesWith(id, "Topsail", OLE);
        assertStands(CauseState.CONFIRMED, 1, id);
    }

    @Test
    void proposedAnewUnderTheSameName_byItsAuthor_isNoConfirmation() {
        long id = draft("Lanyard");
        jobs.close(INES, job("Lanyard fails once more", "lanyard WORN"), PROPOSED);
        assertStands(CauseState.DRAFT, 0, id);
    }

    @Test
    void samePerson_confirmsOnceOutsideTickets_byEitherDoor() {
        long id = draft("Mizzen");
        confirm(id, OLE);
        Response program = program(OLE, id, "{\"kind\":\"confirm\"}");
        assertEquals(422, program.statusCode());
        assertTrue(program.asString().contains("confirmed this one already"), program.asString());
        assertEquals(422, page(OLE, id, "confirm", Map.of()).statusCode());
        assertStands(CauseState.CONFIRMED, 1, id);
        closesWith(id, "Mizzen", OLE);
        assertStands(CauseState.CONFIRMED, 2, id);
        assertThrows(Invalid.class, () -> confirm(id, OLE));
    }

    @Test
    void mergedIn_noConfirmationBecomesOnesOwn_andNoneCountsTwice() {
        long kept = draft("Oakum");
        jobs.close(OLE, job("Pawl fails", "Pawl worn"), PROPOSED);
        long gone = search.find("pawl", null, 0, INES).causes().get(0).id();
        confirm(gone, INES);
        confirm(gone, MIA);
        confirm(kept, MIA);
        int version = read(gone).version();
        acts.perform(gone, version, new KnowledgeAct.Merge(kept, "The same"), SUE);
        assertStands(CauseState.CONFIRMED, 1, kept);
        assertEquals(List.of("sure-mia"), knowledge.cause(kept, INES).confirmers());
    }

    @Test
    void splitOff_itsAuthorsOwnCasesDoNotConfirmIt() {
        long id = draft("Ratline");
        TicketNumber own = jobs.close(
                SUE, job("Ratline fails again", "Ratline worn"), new KnowledgeLinked(Lesson.CONFIRMED, "", id));
        CauseText second = new CauseText("Ratline wet", Category.HEAT, null, "Fails", "Feel it", "Dry it");
        KnowledgeAct.Split split = new KnowledgeAct.Split(second, List.of(own.toString()), "Wet, not worn");
        long made = acts.perform(id, read(id).version(), split, SUE);
        assertStands(CauseState.DRAFT, 0, made);
        assertShutToAuthor(made, SUE);
    }
}
