package org.benchtrail.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.APIResponse;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.net.URL;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.benchtrail.audit.LotRounds;
import org.benchtrail.core.audit.AuditLot.Turn;
import org.benchtrail.core.audit.Stratum;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.knowledge.ClosedTickets;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A month by its forms alone: the plan and what it can show, empty records found, the addendum that comes, and the month on paper. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class MonthAuditJourneyTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor THEO = new Actor("month-theo", "Theo Month", Set.of(Role.TECHNICIAN));
    private static final Actor SILJA = new Actor("month-silja", "Silja Month", Set.of(Role.SUPERVISOR));
    private static final Actor BELA = new Actor("month-bela", "Bela Month", Set.of(Role.SUPERVISOR));
    private static final int TICKETS = 6;

    /** One more than there are good ones: one of the two is always among them. */
    private static final int LOOKED = 5;

    private static final String EMPTY = "symptom recorded: n-a;";

    @TestHTTPResource("/")
    URL server;

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    MovedClock clock;

    private final Set<String> planted = new HashSet<>();
    private String lot = "";

    @BeforeEach
    void people() {
        for (Actor person : List.of(THEO, SILJA, BELA)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        // lots of other tests lie before; two never overlap
        clock.putForward(Duration.ofDays(300));
    }

    @AfterEach
    void clockIsPutRight() {
        clock.putRight();
    }

    private Person at(Actor person, String path) {
        Person somebody = new Person(server.toString()).signIn(person.account(), PASSWORD);
        somebody.go(path);
        return somebody;
    }

    @Test
    void aMonth_fromItsPlanToItsPaper() throws IOException {
        LocalDateTime from =
                LocalDateTime.ofInstant(clock.instant(), ZoneOffset.UTC).truncatedTo(ChronoUnit.MINUTES);
        lot = from.toString().substring(0, "2026-11".length());
        for (int i = 0; i < TICKETS; i++) {
            if (i % 3 == 1) {
                planted.add(ClosedTickets.empty(tickets, THEO).toString());
            } else {
                ClosedTickets.one(tickets, THEO);
            }
        }
        try (Person silja = at(SILJA, "/audit");
                Person bela = at(BELA, "/today")) {
            planIsStated(silja, from);
            clock.putForward(Duration.ofMinutes(10));
            LotRounds.draw();
            Set<String> found = emptyOnesAreFound(silja);
            areReadAgain(bela);
            assertTrue(!found.isEmpty() && planted.containsAll(found), found + " of " + planted);
            differencesAreSettled(bela);
            addendumIsAsked(silja);
            addendumIsWritten();
            addendumIsCountersigned(bela);
            isConcluded(silja);
            isOnPaper(silja, found);
            otherPagesOfASupervisor(silja);
        }
    }

    private void planIsStated(Person silja, LocalDateTime from) {
        silja.page.locator("a:text-is('State a plan')").click();
        silja.sees("Plan of an audit");
        silja.fill("lot", lot);
        silja.fill("from", from.toString());
        silja.fill("until", from.plusMinutes(8).toString());
        silja.fill("take." + Stratum.REST, String.valueOf(LOOKED));
        silja.fill("acceptance", "2");
        silja.press("Show what it would find");
        // what it can show, and what it cannot, before anything is stated
        silja.sees(LOOKED + " of " + TICKETS + ", drawn at random.");
        silja.sees("If none of them has a defect, at most 1 of the " + TICKETS + " has one, with 95 % confidence.");
        silja.sees("it cannot show that there is none unless all are looked at");
        assertEquals(404, silja.page.request().get(server + "audit/" + lot).status(), "nothing is stated by looking");
        silja.lookInEveryWay("month-plan-shown");
        silja.press("State this plan");
        silja.sees("Once stated, nobody changes this plan.");
        silja.sees("The draw waits for no witness.");
        silja.look("month-plan-asked");
        assertEquals(404, silja.page.request().get(server + "audit/" + lot).status(), "nor by being asked");
        silja.press("State it for good");
        silja.sees("The server freezes the list");
        silja.look("month-stated");
    }

    /** Reads until nothing is left; the first one wholly in the browser's hands. @return what was found to say nothing */
    private Set<String> emptyOnesAreFound(Person silja) {
        Set<String> found = new HashSet<>();
        silja.go("/today");
        silja.sees(" to give");
        silja.look("month-today-to-give");
        for (int read = 0; read < LOOKED; read++) {
            silja.go("/audit/" + lot);
            silja.press("Take the next review");
            if (read == 0) {
                silja.go("/today");
                silja.sees("1 to finish");
                silja.lookInEveryWay("month-today-to-finish");
                silja.page.locator("main a:has-text('Go on reviewing')").click();
                silja.page.locator("tbody a:has-text('1 to finish')").click();
                silja.page.locator("a.button:text-is('Go on')").click();
                silja.sees("The record as it was");
            }
            if (reads(silja, SILJA)) {
                found.add(turn(silja).ticket());
            }
            silja.press("Sign this review");
        }
        return found;
    }

    /** The second reader, who finds the same, and once a little more. */
    private void areReadAgain(Person bela) {
        boolean differs = true;
        for (int read = 0; read < LOOKED; read++) {
            bela.go("/audit/" + lot);
            bela.press("Take the next review");
            bela.sees("Second review, blind");
            Turn turn = turn(bela);
            List<String> faults = new ArrayList<>(says(bela) ? List.of() : List.of("symptom-observed"));
            if (differs) {
                faults.add("scope-known");
                differs = false;
            }
            LotRounds.markAll(lot, turn, BELA, faults);
            bela.go(path(turn));
            bela.press("Sign this review");
        }
    }

    private static boolean says(Person reader) {
        return !reader.text().contains(EMPTY);
    }

    private String path(Turn turn) {
        return "/audit/" + lot + "/reviews/" + turn.ticket() + "/" + turn.turn();
    }

    /** Marks all; of an empty record the symptom, by the form. @return whether it was empty */
    private boolean reads(Person reader, Actor by) {
        Turn turn = turn(reader);
        boolean empty = !says(reader);
        if (empty) {
            reader.go(path(turn) + "?of=symptom-observed");
            reader.fill("remark", "'n-a' is no symptom: nobody could have seen it again");
            reader.select("defect", "MAJOR");
            reader.page.locator("button[name=mark][value=NOT_SATISFIED]").click();
            reader.sees("1 of ");
            reader.look("month-review-of-an-empty-one");
        }
        LotRounds.markAll(lot, turn, by, List.of());
        reader.go(path(turn));
        return empty;
    }

    private static Turn turn(Person reviewer) {
        String[] path = reviewer.page.url().replaceAll("[?#].*", "").split("/");
        return new Turn(path[path.length - 2], Integer.parseInt(path[path.length - 1]));
    }

    private void differencesAreSettled(Person bela) {
        bela.go("/today");
        // other tests of the run may have left some as well
        bela.sees("to settle");
        bela.lookInEveryWay("month-today-differences");
        bela.page.locator("main a:has-text('Look at the audit')").click();
        bela.page.locator("tbody a:text-is('" + lot + "')").click();
        bela.sees("Where the two readers differ");
        bela.select("mark", "SATISFIED");
        bela.page
                .locator("form[action$=settlements] input[name=remark]")
                .fill("It stands in the report, we both overlooked it");
        bela.look("month-settling");
        bela.page.locator("form[action$=settlements] button").click();
        bela.sees("Settled: Satisfied");
    }

    private void addendumIsAsked(Person silja) {
        silja.go("/audit/" + lot);
        silja.sees("'n-a' is no symptom");
        silja.page.locator("summary:has-text('Ask for an addendum')").first().click();
        silja.page
                .locator("form[action$=addenda] textarea")
                .first()
                .fill("Say what was to be seen, and how you know it today");
        silja.page.locator("form[action$=addenda] button").first().click();
        silja.sees("not written yet");
    }

    private void addendumIsWritten() {
        try (Person theo = at(THEO, "/today")) {
            theo.sees("thing to add to a closed ticket");
            theo.look("month-today-of-who-is-asked");
            theo.go("/my-reviews");
            theo.sees("Say what was to be seen");
            theo.lookInEveryWay("month-own-reviews");
            theo.page.locator("main a:has-text('Add it')").click();
            theo.sees("Add to the papers; the ticket stays closed");
            assertEquals("symptom-observed", theo.page.inputValue("[name='addendum.requirement']"));
            theo.press("Add it");
            theo.look("month-addendum-refused");
            theo.choose("addendum.about", "REMARK");
            theo.fill("addendum.text", "It went dark after two minutes; I remember it and the requester wrote so");
            theo.look("month-addendum");
            theo.press("Add it");
            theo.sees("not countersigned yet");
            theo.look("month-addendum-written");
            theo.go("/my-reviews");
            theo.sees("You wrote entry");
        }
    }

    private void addendumIsCountersigned(Person bela) {
        bela.go("/audit/" + lot);
        bela.sees("written as entry");
        bela.page
                .locator("tbody a[href^='/tickets/'][href$='#addenda']")
                .first()
                .click();
        bela.sees("It went dark after two minutes");
        bela.look("month-to-countersign");
        bela.page.locator("button:has-text('Countersign entry')").click();
        bela.sees("Countersigned by " + BELA.name());
    }

    private void isConcluded(Person silja) {
        silja.go("/audit/" + lot);
        silja.look("month-to-conclude");
        silja.fill("decision", "Whoever writes 'n-a' is asked the same day");
        silja.press("Conclude the audit");
        silja.sees("Concluded.");
        silja.lookInEveryWay("month-concluded");
    }

    private void isOnPaper(Person silja, Set<String> found) throws IOException {
        silja.page.locator(".title a:text-is('Report')").click();
        silja.sees("Audit report");
        silja.sees("Whoever writes 'n-a' is asked the same day");
        silja.lookInEveryWay("month-report");
        String file = silja.page.locator(".title a:text-is('PDF')").getAttribute("href");
        APIResponse answer = silja.page.request().get(server.toString().replaceAll("/$", "") + file);
        assertEquals("application/pdf", answer.headers().get("content-type"));
        try (PDDocument pdf = Loader.loadPDF(answer.body())) {
            String text = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
            for (String words : List.of(
                    "Audit report",
                    "Whoever writes 'n-a' is asked the same day",
                    "'n-a' is no symptom: nobody could have seen it again",
                    LOOKED + " of " + TICKETS + ", drawn at random",
                    "it cannot show that there is none unless all are looked at",
                    "the shop's own number",
                    "audit-plan/1 lot " + lot)) {
                assertTrue(text.contains(words), () -> words + " is not in: " + text);
            }
            found.forEach(ticket -> assertTrue(text.contains(ticket), ticket));
            for (int page = 0; page < pdf.getNumberOfPages(); page++) {
                isWrittenOn(new PDFRenderer(pdf).renderImageWithDPI(page, 100), page);
            }
        }
    }

    /** Ink where it is expected, and none beyond the margins. */
    private static void isWrittenOn(BufferedImage sheet, int number) throws IOException {
        if (Boolean.getBoolean("pictures")) {
            File folder = new File("target/screenshots");
            assertTrue(folder.isDirectory() || folder.mkdirs());
            ImageIO.write(sheet, "png", new File(folder, "month-paper-" + number + ".png"));
        }
        int margin = 20;
        int inside = 0;
        for (int x = 0; x < sheet.getWidth(); x++) {
            for (int y = 0; y < sheet.getHeight(); y++) {
                boolean ink = (sheet.getRGB(x, y) & 0xff) < 0x80;
                boolean edge = x < margin || x >= sheet.getWidth() - margin;
                assertFalse(ink && edge, "page " + number + " has ink at " + x + ", " + y);
                inside += ink ? 1 : 0;
            }
        }
        assertTrue(inside > 1000, "page " + number + " has " + inside + " dark points");
    }

    private void otherPagesOfASupervisor(Person silja) {
        silja.go("/figures");
        silja.sees("Figures");
        silja.lookInEveryWay("month-figures");
        silja.go("/exports");
        silja.sees("Exports");
        silja.lookInEveryWay("month-exports");
        silja.go("/seal/heads");
        silja.sees("Heads of the log");
        silja.lookInEveryWay("month-seal-heads");
    }
}
