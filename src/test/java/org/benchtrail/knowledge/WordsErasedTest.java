package org.benchtrail.knowledge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Lesson;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.Everywhere;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.SealRounds;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.WordsErasure;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

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

    private static List<String> texts(List<Integer> entries) {
        return entries.stream().map(String::valueOf).toList();
    }
}
