package org.benchtrail.knowledge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Addendum;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Lesson;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.Everywhere;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.SealRounds;
import org.benchtrail.seal.offline.VerifyCommand;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.WordsErasure;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Words that name a person are erased from a ticket that was worked to its end: they are nowhere, and everything holds. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class WordsErasedTest {
    private static final String PASSWORD = "a long enough password";
    private static final String NAME = "Ulfhild Quarrenbost";
    private static final Actor OMAR = new Actor("words-omar", "Omar", Set.of(Role.SUPERVISOR));
    private static final Actor WILMA = new Actor("words-wilma", "Wilma", Set.of(Role.SUPERVISOR));

    @Inject
    PeopleActs people;

    @Inject
    TicketActs acts;

    @Inject
    TicketQueries look;

    @Inject
    WordsErasure erasure;

    @TempDir
    Path own;

    private String said = "";

    @BeforeEach
    void persons() {
        for (Actor one : List.of(Jobs.INES, Jobs.OLE, Jobs.SUE, OMAR, WILMA)) {
            people.ensureAccount(one.account(), one.name(), one.roles(), PASSWORD);
        }
    }

    private TicketNumber closed() {
        Jobs.Job job = new Jobs.Job(
                "The laptop of " + NAME,
                "Laptop 7",
                "Rattles, says " + NAME,
                "A hair of " + NAME + " in the fan",
                "A hair in the fan",
                "Take it out");
        return new Jobs(acts)
                .close(
                        Jobs.INES,
                        job,
                        new KnowledgeLinked(Lesson.NOTHING, "It was the hair of " + NAME),
                        new FindingRecorded(NAME + " sat there", false));
    }

    private List<Integer> naming(TicketNumber number) {
        return erasure.written(number).stream()
                .filter(w -> w.words().contains(NAME))
                .map(WordsErasure.Written::entry)
                .toList();
    }

    private static String path(String location) {
        return location.replaceFirst("^https?://[^/]+", "");
    }

    @Test
    void wordsOfAClosedTicket_areNowhere_andEverythingHolds() {
        TicketNumber number = closed();
        SealRounds.once();
        List<?> before = SealRounds.look(number.toString());
        List<Integer> naming = naming(number);
        assertTrue(naming.size() >= 5, naming::toString);
        assertTrue(Everywhere.holding(NAME).contains("public.closed_case"));

        Browser omar = Browser.signedIn(OMAR.account(), PASSWORD);
        String page = "/tickets/" + number + "/erasing/words";
        assertTrue(omar.get(page).asString().contains(NAME));
        String proposal =
                path(omar.post(page, Map.of("entries", texts(naming), "reason", List.of("asked for by letter")))
                        .getHeader("Location"));
        assertEquals(422, omar.post(proposal + "/confirmation", Map.of()).statusCode(), "not the same person");
        Browser wilma = Browser.signedIn(WILMA.account(), PASSWORD);
        assertTrue(wilma.get(proposal).asString().contains(NAME), "who confirms it sees what goes");
        assertEquals(303, wilma.post(proposal + "/confirmation", Map.of()).statusCode());

        assertEquals(List.of(), Everywhere.holding(NAME), "nowhere");
        assertEquals(List.of(), Everywhere.holding("Quarrenbost"), "nor a word of it");
        assertEquals(before, SealRounds.look(number.toString()));
        SealRounds.once();
        assertEquals(before, SealRounds.look(number.toString()), "nothing that holds is told not to");
        assertEquals("", look.ticket(number, Jobs.INES).fault());
        assertEquals(
                FreeText.ERASED, look.ticket(number, Jobs.INES).sheet().opened().title());
        String after = wilma.get(page).asString();
        assertTrue(
                after.contains("were erased on") && after.contains("words-omar, words-wilma: asked for by letter"),
                after);
        assertFalse(after.contains(NAME));
        for (String read : List.of("", "/trail", "/record", "/record.pdf")) {
            assertEquals(200, wilma.get("/tickets/" + number + read).statusCode(), read);
        }
    }

    /** All of it, whatever it was: the entries still tell the ticket, and no requirement asks for it again. */
    @Test
    void everyWord_canGo() {
        TicketNumber number = closed();
        SealRounds.once();
        List<?> before = SealRounds.look(number.toString());
        List<Integer> all = erasure.written(number).stream()
                .map(WordsErasure.Written::entry)
                .toList();
        erasure.erase(number, all, "words-omar, words-wilma", "asked");
        SealRounds.once();
        assertEquals(before, SealRounds.look(number.toString()));
        assertEquals("", look.ticket(number, Jobs.INES).fault());
        assertEquals(List.of(), erasure.written(number));
    }

    /** Whoever holds the file of the ticket sees whether the words are those that were written. */
    @Test
    void fileOfTheTicket_provesItsWords() {
        TicketNumber number = closed();
        SealRounds.once();
        Browser sue = Browser.signedIn(Jobs.SUE.account(), PASSWORD);
        String file = sue.get("/tickets/" + number + "/trail.jsonl").asString();
        assertTrue(file.contains(NAME));
        assertEquals(2, verify(file), () -> said);
        assertFalse(said.contains("The words of"), said);
        assertEquals(1, verify(file.replaceFirst(NAME + " sat there", "Somebody sat there")), said);
        assertTrue(said.contains("words: entry") && said.contains("are not those that it holds commitments to"), said);
        erasure.erase(number, naming(number).subList(0, 2), "words-omar, words-wilma", "asked");
        assertEquals(2, verify(sue.get("/tickets/" + number + "/trail.jsonl").asString()), said);
        assertTrue(said.contains("The words of 2 of them are not in the file"), said);

        assertEquals(200, sue.get("/tickets/" + number + "/record.pdf").statusCode());
        Browser omar = Browser.signedIn(OMAR.account(), PASSWORD);
        for (String page : List.of("/erasing", "/erasing/words")) {
            String shown = omar.get("/tickets/" + number + page).asString();
            assertTrue(
                    shown.contains("record as PDF, by Sue, ") && shown.contains("trail with proofs, by Sue, "), shown);
        }
        assertTrue(omar.get("/exports").asString().contains(number.toString()));
        assertEquals(
                "3",
                TestDatabase.one("select count(*)::text from site_record where stream = 'audit/exports'"
                        + " and convert_from(canonical, 'UTF8')::jsonb #>> '{content,ticket}' = '" + number.serial()
                        + "'"),
                "each is a record of the log");
    }

    private int verify(String file) {
        try {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            int exit = VerifyCommand.run(
                    List.of(Files.writeString(own.resolve("trail.jsonl"), file).toString()),
                    new PrintStream(out, true, StandardCharsets.UTF_8));
            said = out.toString(StandardCharsets.UTF_8);
            return exit;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void whatIsNotTicked_orGone_orNoNumber_isRefused_andNothingTypedIsLost() {
        TicketNumber number = closed();
        Browser omar = Browser.signedIn(OMAR.account(), PASSWORD);
        String page = "/tickets/" + number + "/erasing/words";
        for (List<String> entries : List.of(List.<String>of(), List.of("x"), List.of("2", "999"), List.of("-1"))) {
            var refused = omar.post(page, Map.of("entries", entries, "reason", List.of("as they asked")));
            assertEquals(422, refused.statusCode(), entries::toString);
            assertTrue(refused.asString().contains("as they asked"), entries::toString);
        }
        assertTrue(Everywhere.holding(NAME).contains("public.trail_entry"));
    }

    /** Nobody makes nothing look like words that were erased. */
    @Test
    void theMarkOfErasedWords_isNotTakenForWords() {
        TicketNumber number = closed();
        int version = look.ticket(number, Jobs.INES).sheet().entries();
        for (Fact fact : List.of(
                new Reopened(FreeText.ERASED),
                new Addendum(Addendum.About.values()[0], " (ERASED) ", null),
                new Corrected(2, FreeText.ERASED, null),
                new Corrected(2, "A slip", new SymptomRecorded("It fails", FreeText.ERASED, false)))) {
            Invalid refused = assertThrows(
                    Invalid.class,
                    () -> acts.perform(number, version, List.<Act>of(s -> fact), Jobs.INES),
                    fact::toString);
            assertTrue(refused.problems().get(0).sentence().startsWith("Say it in other words"), refused::getMessage);
        }
        Jobs.Job job = new Jobs.Job(FreeText.ERASED, "Laptop 7", "Rattles", "Dust", "Dust", "Clean");
        assertThrows(Invalid.class, () -> new Jobs(acts).queue(Jobs.INES, job));
    }

    private static List<String> texts(List<Integer> entries) {
        return entries.stream().map(String::valueOf).toList();
    }
}
