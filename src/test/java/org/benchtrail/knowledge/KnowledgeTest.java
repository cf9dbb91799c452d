package org.benchtrail.knowledge;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Lesson;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.knowledge.Jobs.Job;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.Forbidden;
import org.benchtrail.platform.Stale;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.KnownCauses;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.TicketQueries;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** Knowledge as it comes into being, is found, and is put right. Each test has words of its own, so that none meets another's. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class KnowledgeTest {
    private static final String PASSWORD = "a long enough password";
    private static final KnowledgeLinked PROPOSED = new KnowledgeLinked(Lesson.PROPOSED, "A new one");
    private static final KnowledgeLinked NOTHING = new KnowledgeLinked(Lesson.NOTHING, "Common");

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
    KnownCauses known;

    @Inject
    PeopleActs people;

    private Jobs jobs;

    @BeforeAll
    void people() {
        jobs = new Jobs(tickets);
        for (Actor who : List.of(Jobs.INES, Jobs.OLE, Jobs.SUE)) {
            people.ensureAccount(who.account(), who.name(), who.roles(), PASSWORD);
        }
    }

    private static Job job(String title, String cause) {
        return new Job(title, "Workstation", title, cause, "It was so", "Cleaned it");
    }

    private SearchResults find(String words) {
        return search.find(words, null, 0, Jobs.INES);
    }

    private SearchResults.CauseHit cause(String words) {
        SearchResults found = find(words);
        assertEquals(1, found.causes().size(), () -> words + ": " + found);
        return found.causes().get(0);
    }

    private CauseJson read(long id) {
        return knowledge.cause(id, Jobs.INES).cause();
    }

    private List<String> history(long id) {
        return knowledge.cause(id, Jobs.INES).history().stream()
                .map(h -> h.what().words())
                .toList();
    }

    // ---- by-products

    @Test
    void whateverAFactMayHold_aTicketWithItCanBeClosed() {
        String odd = "Odd\u007fly\u0085 so\u009b";
        Job job = new Job(odd, odd, odd, "Oddment " + odd, odd, odd);
        TicketNumber ticket = jobs.close(Jobs.INES, job, PROPOSED);
        long cause = search.find("oddment", null, 0, Jobs.INES).causes().get(0).id();
        assertTrue(knowledge.cause(cause, Jobs.INES).cause().text().shows().contains(odd), ticket::toString);
    }

    @Test
    void closing_writesTheCaseAndTheDraft_reopeningTakesThemBack() {
        Job job = new Job(
                "Quillon stops after a minute",
                "Plotter",
                "The quillon stands still",
                "Quillon bearing dry",
                "It squeaks",
                "Oiled the bearing");
        TicketNumber number = jobs.close(Jobs.INES, job, PROPOSED);
        SearchResults found = find("quillon");
        assertEquals(
                List.of(number.toString()),
                found.cases().stream().map(SearchResults.CaseHit::number).toList());
        assertEquals(45, found.cases().get(0).minutes());
        CauseJson draft = read(cause("quillon").id());
        assertEquals(CauseState.DRAFT, draft.state());
        assertEquals(
                new CauseText(
                        "Quillon bearing dry",
                        Category.HEAT,
                        null,
                        "The quillon stands still",
                        "Look: It squeaks",
                        "Oiled the bearing"),
                draft.text());
        assertEquals(number.toString(), draft.ticket());
        assertEquals("know-ines", draft.proposedBy());

        jobs.reopen(number, jobs.version(number, look), Jobs.SUE, "It squeaks again");
        assertEquals(List.of(), find("quillon").cases());
        assertEquals(CauseState.FLAGGED, read(draft.id()).state());
        assertEquals(List.of("flagged", "proposed"), history(draft.id()));
        assertTrue(
                knowledge.cause(draft.id(), Jobs.INES).history().get(0).reason().contains("It squeaks again"));

        jobs.work(number, jobs.version(number, look), Jobs.INES, job, PROPOSED);
        assertEquals(1, find("quillon").cases().size());
        assertEquals(90, find("quillon").cases().get(0).minutes());
        assertEquals(CauseState.DRAFT, read(draft.id()).state());
        assertEquals(0, read(draft.id()).confirmations());
    }

    @Test
    void reuse_isReview_butNotByTheAuthor() {
        jobs.close(Jobs.INES, job("Brindle hums", "Brindle loose"), PROPOSED);
        long id = cause("brindle").id();
        jobs.close(Jobs.INES, job("Brindle hums at night", "Brindle loose"), confirms(id));
        assertEquals(CauseState.DRAFT, read(id).state());
        assertEquals(0, read(id).confirmations());
        TicketNumber third = jobs.close(Jobs.OLE, job("Brindle hums by day", "Brindle loose"), confirms(id));
        CauseJson confirmed = read(id);
        assertEquals(CauseState.CONFIRMED, confirmed.state());
        assertEquals(1, confirmed.confirmations());
        assertEquals(1, confirmed.measured());
        assertEquals("know-ole", confirmed.confirmedBy());
        assertNotNull(confirmed.lastConfirmed());
        assertEquals(3, knowledge.cause(id, Jobs.INES).cases().size());

        jobs.reopen(third, jobs.version(third, look), Jobs.OLE, "Hums again");
        assertEquals(CauseState.DRAFT, read(id).state());
        assertEquals(0, read(id).confirmations());
        assertNull(read(id).confirmedBy());
        assertEquals("a confirmation withdrawn", history(id).get(0));
        assertEquals(2, knowledge.cause(id, Jobs.INES).cases().size());
    }

    private static KnowledgeLinked confirms(long id) {
        return new KnowledgeLinked(Lesson.CONFIRMED, "", id);
    }

    @Test
    void proposingWhatIsKnown_confirmsItInstead() {
        jobs.close(Jobs.INES, job("Tessera flickers", "Tessera bent"), PROPOSED);
        jobs.close(Jobs.OLE, job("Tessera flickers too", "tessera bent"), PROPOSED);
        CauseJson one = read(cause("tessera").id());
        assertEquals(1, one.confirmations());
        assertEquals(CauseState.CONFIRMED, one.state());
    }

    @Test
    void aKnownCauseThatIsNotThere_cannotBeConfirmed() {
        Invalid refused = assertThrows(
                Invalid.class, () -> jobs.close(Jobs.INES, job("Umbriel fails", "Umbriel"), confirms(999_999_999L)));
        assertEquals("knowledge.known", refused.problems().get(0).field());
        assertEquals(List.of(), find("umbriel").cases());
    }

    // ---- search

    @Test
    void search_findsBeginningsEndingsAndMistypedWords() {
        TicketNumber number =
                jobs.close(Jobs.INES, job("Vellichor clicking overheatedly", "Vellichor batteries"), NOTHING);
        for (String words : List.of(
                "vellichor",
                "VELLICHOR",
                "vell",
                "vellichors",
                "clicks vellichor",
                "battery vellichor",
                "vellichor the")) {
            SearchResults found = find(words);
            assertEquals("", found.spelling(), words);
            assertEquals(
                    List.of(number.toString()),
                    found.cases().stream().map(SearchResults.CaseHit::number).toList(),
                    words);
        }
        SearchResults mistyped = find("velichorr");
        assertEquals("vellichor", mistyped.spelling());
        assertEquals(1, mistyped.cases().size());
        SearchResults loose = find("vellichor unheardofword");
        assertTrue(loose.loose());
        assertEquals(number.toString(), loose.cases().get(0).number());
        assertEquals(0, find("xqzzkw").casesTotal());
    }

    @Test
    void search_ranksTheTitleBeforeThePassage_andHeedsTheKind() {
        TicketNumber inPassage =
                jobs.close(Jobs.INES, new Job("Noise", "Server", "The wimble turns", "Dust", "So", "Clean"), NOTHING);
        TicketNumber inTitle = jobs.close(Jobs.INES, job("Wimble noise", "Dust in it"), NOTHING);
        jobs.close(Jobs.INES, new Job("Noise", "Server", "A wimble", "Dust", "So", "Clean"), NOTHING);
        List<String> found = find("wimble").cases().stream()
                .map(SearchResults.CaseHit::number)
                .toList();
        assertEquals(3, found.size());
        assertEquals(inTitle.toString(), found.get(0));
        assertTrue(found.contains(inPassage.toString()));
        assertEquals(
                0,
                search.find("wimble", Category.PRINTING, 0, Jobs.INES).cases().size());
        assertEquals(
                3, search.find("wimble", Category.HEAT, 0, Jobs.INES).cases().size());
    }

    @Test
    void search_pages() {
        for (int i = 0; i < KnowledgeSearch.PER_PAGE + 2; i++) {
            jobs.close(Jobs.INES, job("Zarf warm " + i, "Zarf"), NOTHING);
        }
        SearchResults first = find("zarf");
        assertTrue(first.more());
        SearchResults second = search.find("zarf", null, 1, Jobs.INES);
        assertEquals(2, second.cases().size());
        assertFalse(second.more());
        assertThrows(Invalid.class, () -> search.find("zarf", null, 20, Jobs.INES));
        assertThrows(Invalid.class, () -> search.find("za\u0000rf", null, 0, Jobs.INES));
    }

    /** Whatever is typed is searched for, never run as a query. */
    @Test
    void search_takesAnything() {
        for (String words : List.of(
                "",
                "   ",
                "' | !",
                "a & b",
                ":*",
                "<->",
                "\\",
                "%",
                "''::tsquery",
                "the",
                "a",
                "no",
                "\ud83d\udd25",
                "½ inch",
                "x".repeat(5_000))) {
            assertNotNull(find(words), words);
        }
    }

    @Test
    void marked_wordsAreEscaped() {
        jobs.close(
                Jobs.INES,
                new Job(
                        "<script>alert(1)</script> kludgeon",
                        "<b>PC</b>",
                        "A kludgeon <script>x</script> & more",
                        "Kludgeon <i>",
                        "So",
                        "Clean"),
                PROPOSED);
        String page = Browser.signedIn("know-ines", PASSWORD)
                .get("/knowledge?q=kludgeon")
                .asString();
        assertTrue(page.contains("<mark>kludgeon</mark>"), page);
        assertFalse(page.contains("<script>alert"), page);
        assertFalse(page.contains("<script>x"), page);
        assertFalse(page.contains("<b>PC"), page);
        assertFalse(page.contains("<i>"), page);
        assertTrue(page.contains("&lt;script&gt;"), page);
    }

    // ---- likeness

    @Test
    void likeFindings_leadToTheKnownCause() {
        FindingAnswered stands = new FindingAnswered("know-q1", "Does it?", "no", Source.SEEN);
        jobs.close(Jobs.INES, job("Gnomon dies", "Gnomon stuck"), PROPOSED, stands);
        long id = cause("gnomon").id();
        List<KnownCauses.Line> lines = known.like("nothing alike", Category.HEAT, Set.of("know-q1=no"), 3);
        assertEquals(id, lines.get(0).id());
        assertTrue(lines.get(0).why().startsWith("same findings: know-q1: no"), lines::toString);
        assertEquals(
                List.of("know-q1: no"),
                knowledge.cause(id, Jobs.INES).findings().stream()
                        .map(KnowledgeQueries.ToldApart::finding)
                        .toList());
        assertEquals(List.of(), known.like("nothing alike", Category.PRINTING, Set.of("know-q1=no"), 3));
        assertEquals(
                id, known.like("The gnomon is dead", null, List.of(), 3).get(0).id());
    }

    /** No finding and no word is shared: another look at the same part of the path, in the same place, leads there. */
    @Test
    void samePartOfThePath_leadsToTheKnownCause() {
        FindingAnswered swapped = new FindingAnswered("substitute:sink", "Is the fault gone?", "yes", Source.SEEN);
        FindingAnswered elsewhere = new FindingAnswered("substitute:sink", "Is the fault gone?", "no", Source.SEEN);
        jobs.close(Jobs.INES, job("Pommel glows", "Pommel bent"), PROPOSED, swapped);
        jobs.close(Jobs.INES, job("Tiller glows", "Tiller bent"), PROPOSED, elsewhere);
        FindingAnswered seen = new FindingAnswered("look:sink", "Is anything wrong to be seen?", "yes", Source.SEEN);
        TicketNumber number =
                jobs.begin(Jobs.OLE, new Job("Too warm by noon", "Loom 3", "Blinks", "?", "?", "?"), seen);
        List<KnownCauses.Line> lines = known.of(look.ticket(number, Jobs.OLE).sheet());
        KnownCauses.Line line = line(lines, cause("pommel").id());
        assertTrue(
                line.why().startsWith("in the same part: heat sink: fins, heat pipe; in the same place; "),
                line::toString);
        assertTrue(lines.stream().noneMatch(l -> l.id() == cause("tiller").id()), lines::toString);
    }

    /** What was found may be typed by whoever reports; in which places it happened is told to nobody by that door. */
    @Test
    void alikeForWhoeverReports_tellsNoPlace_andNoPartOfAPath() {
        FindingAnswered swapped = new FindingAnswered("reseat:fanlead", "Is the fault gone?", "yes", Source.SEEN);
        jobs.close(Jobs.INES, job("Mullion hums", "Mullion loose"), PROPOSED, swapped);
        List<KnownCauses.Line> lines = known.like("Drawing office", Category.HEAT, Set.of("reseat:fanlead=yes"), 5);
        assertTrue(line(lines, cause("mullion").id()).why().startsWith("same findings: "), lines::toString);
        assertTrue(lines.stream().noneMatch(l -> l.why().contains("in the same")), lines::toString);
    }

    /** It is not like everything else that ever happened in a room. */
    @Test
    void samePlaceAlone_leadsToNothing() {
        jobs.close(Jobs.INES, job("Cornice drips", "Cornice cracked"), PROPOSED);
        FindingAnswered other = new FindingAnswered("know-q77", "Does it?", "yes", Source.SEEN);
        TicketNumber number =
                jobs.begin(Jobs.OLE, new Job("Too warm by noon", "Loom 4", "Blinks", "?", "?", "?"), other);
        assertTrue(known.of(look.ticket(number, Jobs.OLE).sheet()).stream()
                .noneMatch(l -> l.why().contains("in the same")));
    }

    private static KnownCauses.Line line(List<KnownCauses.Line> lines, long id) {
        return lines.stream().filter(l -> l.id() == id).findFirst().orElseThrow(() -> new AssertionError(lines));
    }

    /** Nothing in its words or findings is alike; it is the device that had it before. */
    @Test
    void whatTheDeviceHadBefore_isShownFirst() {
        Job before = new Job("Bodkin grinds", "Lathe lamp 7", "Grinds", "Bodkin dry", "Dry", "Oiled it");
        TicketNumber earlier = jobs.close(Jobs.INES, before, PROPOSED);
        TicketNumber again =
                jobs.begin(Jobs.OLE, new Job("Flickers at dusk", "Lathe lamp 7", "Flickers", "?", "?", "?"));
        TicketNumber another =
                jobs.begin(Jobs.OLE, new Job("Flickers at dusk", "Lathe lamp 8", "Flickers", "?", "?", "?"));
        List<KnownCauses.Line> lines = known.of(look.ticket(again, Jobs.OLE).sheet());
        assertEquals(cause("bodkin").id(), lines.get(0).id());
        assertTrue(lines.get(0).why().startsWith("on this device before, ticket " + earlier + "; "), lines::toString);
        assertTrue(known.of(look.ticket(another, Jobs.OLE).sheet()).stream()
                .noneMatch(line -> line.why().contains("before")));
        jobs.reopen(earlier, jobs.version(earlier, look), Jobs.SUE, "It came back");
        assertTrue(known.of(look.ticket(again, Jobs.OLE).sheet()).stream()
                .noneMatch(line -> line.why().contains("before")));
    }

    @Test
    void newTicket_showsWhatIsKnown() {
        TicketNumber number = jobs.close(Jobs.INES, job("Farthing rattles", "Farthing worn"), PROPOSED);
        long id = cause("farthing").id();
        String fragment = Browser.signedIn("know-ines", PASSWORD)
                .get("/new-ticket/alike?title=Farthing+rattling&category=HEAT")
                .asString();
        assertTrue(fragment.contains("/tickets/" + number), fragment);
        assertTrue(fragment.contains("/knowledge/" + id), fragment);
        assertTrue(fragment.contains("Farthing worn"), fragment);
    }

    // ---- putting it right

    @Test
    void technician_flagsAndCorrectsADraft_supervisorTheRest() {
        jobs.close(Jobs.INES, job("Ostler creaks", "Ostler old"), PROPOSED);
        long id = cause("ostler").id();
        assertThrows(Invalid.class, () -> acts.perform(id, 1, new KnowledgeAct.Confirm(null), Jobs.INES));
        acts.perform(id, 1, new KnowledgeAct.RaiseFlag("Not the ostler"), Jobs.OLE);
        assertEquals(CauseState.FLAGGED, read(id).state());
        CauseText better = new CauseText("Ostler seat worn", Category.HEAT, null, "Creaks", "Feel it", "New seat");
        acts.perform(id, 2, new KnowledgeAct.Correct(better, "Looked again"), Jobs.OLE);
        assertEquals(CauseState.DRAFT, read(id).state());
        assertEquals(better, read(id).text());
        assertEquals("Ostler seat worn", cause("seat ostler").title().toString());
        acts.perform(id, 3, new KnowledgeAct.Confirm("On the bench"), Jobs.SUE);
        assertEquals(CauseState.CONFIRMED, read(id).state());
        KnowledgeAct.Correct again = new KnowledgeAct.Correct(read(id).text(), null);
        assertThrows(Forbidden.class, () -> acts.perform(id, 4, again, Jobs.OLE));
        assertThrows(Invalid.class, () -> acts.perform(id, 4, again, Jobs.SUE));
        assertThrows(Forbidden.class, () -> acts.perform(id, 4, new KnowledgeAct.Retire("Gone"), Jobs.OLE));
        acts.perform(id, 4, new KnowledgeAct.Retire("Gone"), Jobs.SUE);
        assertEquals(List.of(), find("ostler").causes());
        assertEquals(List.of(), known.like("Ostler creaks", null, List.of(), 3));
        acts.perform(id, 5, new KnowledgeAct.BringBack("Still sold"), Jobs.SUE);
        assertEquals(CauseState.CONFIRMED, read(id).state());
        assertEquals(List.of("brought back", "retired", "confirmed", "corrected", "flagged", "proposed"), history(id));
    }

    @Test
    void history_keepsBothWordings() {
        jobs.close(Jobs.INES, job("Pintle sticks", "Pintle dry"), PROPOSED);
        long id = cause("pintle").id();
        CauseText other = new CauseText("Pintle bent", Category.HEAT, null, "Sticks", "", "Straighten it");
        acts.perform(id, 1, new KnowledgeAct.Correct(other, ""), Jobs.INES);
        List<KnowledgeQueries.Difference> differences =
                knowledge.cause(id, Jobs.INES).history().get(0).differences();
        assertTrue(differences.contains(new KnowledgeQueries.Difference("name", "Pintle dry", "Pintle bent")));
        assertTrue(differences.contains(new KnowledgeQueries.Difference("what told it apart", "Look: It was so", "")));
    }

    @Test
    void merge_takesCasesAndConfirmationsAlong_andKeepsTheHistory() {
        TicketNumber first = jobs.close(Jobs.INES, job("Rowel slips", "Rowel greasy"), PROPOSED);
        TicketNumber second = jobs.close(Jobs.INES, job("Spinner slips", "Spinner oily"), PROPOSED);
        long keep = cause("rowel").id();
        long gone = cause("spinner").id();
        jobs.close(Jobs.OLE, job("Spinner slips badly", "Spinner oily"), confirms(gone));
        int version = read(gone).version();
        assertThrows(Invalid.class, () -> acts.perform(gone, version, new KnowledgeAct.Merge(gone, "Same"), Jobs.SUE));
        assertEquals(keep, acts.perform(gone, version, new KnowledgeAct.Merge(keep, "The same oil"), Jobs.SUE));
        CauseJson kept = read(keep);
        assertEquals(1, kept.confirmations());
        assertEquals(CauseState.CONFIRMED, kept.state());
        List<String> cases = knowledge.cause(keep, Jobs.INES).cases().stream()
                .map(KnowledgeQueries.SupportingCase::number)
                .toList();
        assertEquals(3, cases.size());
        assertTrue(cases.containsAll(List.of(first.toString(), second.toString())));
        assertEquals(keep, read(gone).mergedInto());
        assertEquals(0, read(gone).confirmations());
        assertEquals(List.of("merged into another", "confirmed", "proposed"), history(gone));
        assertEquals(List.of("took another in", "proposed"), history(keep));
        assertEquals(List.of(), find("spinner").causes());

        jobs.close(Jobs.OLE, job("Spinner slips once more", "Spinner oily"), confirms(gone));
        assertEquals(2, read(keep).confirmations());
    }

    @Test
    void split_givesTheSecondItsCases() {
        jobs.close(Jobs.INES, job("Tabard torn", "Tabard thin"), PROPOSED);
        long id = cause("tabard").id();
        TicketNumber moved = jobs.close(Jobs.OLE, job("Tabard torn at night", "Tabard thin"), confirms(id));
        CauseText second = new CauseText("Moth in the tabard", Category.HEAT, null, "Holes", "A moth", "Cedar");
        KnowledgeAct.Split split = new KnowledgeAct.Split(second, List.of(moved.toString()), "Holes, not tears");
        long made = acts.perform(id, 2, split, Jobs.SUE);
        assertEquals(1, read(made).confirmations());
        assertEquals(0, read(id).confirmations());
        assertEquals(1, knowledge.cause(made, Jobs.INES).cases().size());
        assertEquals(1, knowledge.cause(id, Jobs.INES).cases().size());
        assertEquals("split", history(id).get(0));
        assertEquals(List.of("confirmed", "split off from another"), history(made));
        KnowledgeAct.Split strange = new KnowledgeAct.Split(second, List.of(moved.toString()), "Again");
        assertThrows(Invalid.class, () -> acts.perform(id, 3, strange, Jobs.SUE));
        assertEquals(3, read(id).version());
    }

    @Test
    void staleEdit_isRefused_andKeepsWhatWasTyped() {
        jobs.close(Jobs.INES, job("Yaffle knocks", "Yaffle loose"), PROPOSED);
        long id = cause("yaffle").id();
        acts.perform(id, 1, new KnowledgeAct.RaiseFlag("Doubtful"), Jobs.OLE);
        assertThrows(Stale.class, () -> acts.perform(id, 1, new KnowledgeAct.RaiseFlag("Late"), Jobs.OLE));
        Browser browser = Browser.signedIn("know-ole", PASSWORD);
        browser.get("/knowledge/" + id);
        Response answer =
                browser.post("/knowledge/" + id + "/flag", Map.of("version", "1", "flag.reason", "My late word"));
        assertEquals(409, answer.statusCode());
        assertTrue(answer.asString().contains("My late word"));
        assertEquals(2, read(id).version());
        Response empty = browser.post("/knowledge/" + id + "/flag", Map.of("version", "2", "flag.reason", " "));
        assertEquals(422, empty.statusCode());
        assertTrue(empty.asString().contains("Say what is wrong with it."));
        Response done = browser.post("/knowledge/" + id + "/flag", Map.of("version", "2", "flag.reason", "Now"));
        assertEquals(303, done.statusCode());
        assertTrue(browser.get("/knowledge/" + id).asString().contains("Now"));
    }

    @Test
    void history_cannotBeRewritten() throws SQLException {
        try (Connection server = TestDatabase.server();
                var statement = server.createStatement()) {
            assertThrows(SQLException.class, () -> statement.execute("update known_cause_change set reason = ''"));
            assertThrows(SQLException.class, () -> statement.execute("delete from known_cause_change"));
        }
        assertThrows(IllegalStateException.class, () -> TestDatabase.run("delete from known_cause_change"));
    }

    // ---- pages and API

    @Test
    void api_searchesReadsAndActs() {
        jobs.close(Jobs.INES, job("Xebec lists", "Xebec heavy"), PROPOSED);
        String token = people.createToken(Jobs.OLE, "knowledge", 1).secret();
        Response found = given().header("Authorization", "Bearer " + token)
                .queryParam("q", "xebec")
                .get("/api/knowledge");
        assertEquals(200, found.statusCode(), found.asString());
        long id = found.jsonPath().getLong("causes[0].id");
        assertTrue(found.jsonPath().getBoolean("causes[0].title.pieces[0].hit"));
        Response one = given().header("Authorization", "Bearer " + token).get("/api/knowledge/" + id);
        assertTrue(one.header("ETag").startsWith("\"1-"));
        assertEquals("Xebec heavy", one.jsonPath().getString("cause.text.title"));
        Response flagged = act(token, id, "1", "{\"kind\":\"flag\",\"reason\":\"Light\"}");
        assertEquals(200, flagged.statusCode(), flagged.asString());
        assertEquals("FLAGGED", flagged.jsonPath().getString("cause.state"));
        assertEquals("\"2\"", flagged.header("ETag"));
        assertEquals(
                412,
                act(token, id, "1", "{\"kind\":\"flag\",\"reason\":\"Light\"}").statusCode());
        assertEquals(422, act(token, id, "2", "{\"kind\":\"flag\"}").statusCode());
        assertEquals(422, act(token, id, "2", "{\"kind\":\"burn\"}").statusCode());
        assertEquals(422, act(token, id, "2", "[]").statusCode());
        assertEquals(
                403,
                act(token, id, "2", "{\"kind\":\"retire\",\"reason\":\"x\"}").statusCode());
        assertEquals(
                404,
                act(token, 999_999_999L, "2", "{\"kind\":\"flag\",\"reason\":\"x\"}")
                        .statusCode());
        assertNull(read(id).mergedInto());
    }

    private static Response act(String token, long id, String version, String body) {
        return given().header("Authorization", "Bearer " + token)
                .header("If-Match", "\"" + version + "\"")
                .contentType("application/json")
                .body(body)
                .post("/api/knowledge/" + id + "/acts");
    }

    @Test
    void pages_showWhatIsThere() {
        jobs.close(Jobs.INES, job("Jennet shies", "Jennet nervous"), PROPOSED);
        long id = cause("jennet").id();
        Browser browser = Browser.signedIn("know-sue", PASSWORD);
        String all = browser.get("/knowledge").asString();
        assertTrue(all.contains("Jennet nervous") || all.contains("Further results"), all);
        String none = browser.get("/knowledge?q=nothinglikethis&category=HEAT").asString();
        assertTrue(none.contains("Nothing fits"), none);
        String page = browser.get("/knowledge/" + id).asString();
        for (String part :
                List.of("How it shows", "What told it apart", "What cured it", "Split it", "Retire it", "proposed")) {
            assertTrue(page.contains(part), () -> part + " is missing in " + page);
        }
        String technicians =
                Browser.signedIn("know-ines", PASSWORD).get("/knowledge/" + id).asString();
        assertTrue(technicians.contains("Flag it"));
        assertFalse(technicians.contains("Retire it"));
    }

    @Test
    void document_offersTheKnownCause() {
        jobs.close(Jobs.INES, job("Halberd glows", "Halberd shorted"), PROPOSED);
        long id = cause("halberd").id();
        assertEquals(
                List.of(id),
                known
                        .of(look.ticket(
                                        jobs.close(Jobs.OLE, job("Halberd glows", "Halberd shorted"), NOTHING),
                                        Jobs.OLE)
                                .sheet())
                        .stream()
                        .map(KnownCauses.Line::id)
                        .limit(1)
                        .toList());
    }
}
