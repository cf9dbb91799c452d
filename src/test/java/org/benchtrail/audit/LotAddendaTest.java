package org.benchtrail.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.core.audit.Mending;
import org.benchtrail.core.audit.ReviewSheet;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Addendum;
import org.benchtrail.core.method.desk.AddendumCountersigned;
import org.benchtrail.knowledge.ClosedTickets;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.site.SiteBook;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.Outcome;
import org.junit.jupiter.api.Test;

/** Addenda that reviews ask for, until they are answered or closed. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class LotAddendaTest extends LotCourse {
    private List<Integer> answers(TicketNumber ticket) {
        return QuarkusTransaction.requiringNew().call(() -> rows.addenda(lot)).stream()
                .filter(a -> a.ticket() == ticket.serial())
                .map(LotRows.AddendumRow::entry)
                .filter(java.util.Objects::nonNull)
                .toList();
    }

    @Inject
    SiteBook site;

    /** One entry answers one thing that was asked: the one that it names, whichever was asked first. */
    @Test
    void eachAddendumThatIsAsked_needsItsOwnAnswer_andTheAnswerNamesIt() {
        Instant from = begins();
        TicketNumber closed = ClosedTickets.one(tickets, TINA);
        stated(from, 9);
        drawn();
        for (String account : List.of("sue", "boris")) {
            String review = at(take(account.equals("sue") ? sue : boris));
            markAll(account.equals("sue") ? SUE : BORIS, review, "logs-reviewed", "cause-named");
            at((account.equals("sue") ? sue : boris).post(review + "/signature", Map.of()));
        }
        for (String requirement : List.of("logs-reviewed", "cause-named")) {
            at(sue.post(
                    "/audit/" + lot + "/addenda",
                    Map.of("of", closed + "/" + requirement, "remark", "Say more of " + requirement)));
        }
        assertTrue(tina.get("/my-reviews").asString().contains("Each needs an addendum of its own"));
        nobodyIsAskedTwice(closed);
        List<String> kept = told(closed);
        adds(closed, null);
        adds(closed, "symptom-observed");
        assertEquals(List.of(), answers(closed), "neither names what was asked");
        int first = adds(closed, "cause-named");
        assertEquals(List.of(first), answers(closed));
        assertTrue(sue.get("/audit/" + lot).asString().contains("1 of 2 asked for are written."));
        adds(closed, "cause-named");
        assertEquals(List.of(first), answers(closed), "it is answered, and the other one is not");
        int second = adds(closed, "logs-reviewed");
        assertEquals(Set.of(first, second), Set.copyOf(answers(closed)));
        Outcome unknown = tickets.perform(
                closed,
                looks.ticket(closed, TINA).sheet().entries(),
                List.<Act>of(s -> new Addendum(Addendum.About.REMARK, "Of nothing", "cause-named")),
                BORIS);
        assertEquals("not-yours", unknown.missing().get(0).code());
        mendingIsCounted(closed, first);
        assertEquals(kept, told(closed), "gates, facts, times and step are as they were");
    }

    /** What the ticket says of itself besides its addenda: its gates, its facts, its row, and what figures make of its times. */
    private List<String> told(TicketNumber ticket) {
        JobSheet sheet = looks.ticket(ticket, TINA).sheet();
        List<String> told = new ArrayList<>();
        ReviewSheet.of(sheet, site.policy())
                .rows()
                .forEach(r -> told.add(r.code() + " " + r.gate() + " " + r.unasked() + " " + r.cited()));
        sheet.facts().stream()
                .filter(f -> !(f.fact() instanceof Addendum) && !(f.fact() instanceof AddendumCountersigned))
                .forEach(f -> told.add(f.entry() + " " + f.fact()));
        assertTrue(told.size() > 60, told.toString());
        told.add(sheet.step() + " " + sheet.course().standing() + " " + sheet.round() + " " + sheet.hands());
        told.add(TestDatabase.one("select to_jsonb(t) - 'entries' - 'touched' - 'last_hash' - 'words' - 'search'"
                + " from ticket t where serial = " + ticket.serial()));
        List<String> times = sue.get("/figures/closings.csv")
                .asString()
                .lines()
                .filter(line -> line.startsWith(ticket + ","))
                .toList();
        assertEquals(1, times.size(), "one closing, with its working time");
        told.addAll(times);
        return told;
    }

    /** What never comes is closed by a supervisor, once its time is over, whatever two of them do at once; what was found stays. */
    @Test
    void anAddendumThatNeverComes_isClosed_onlyOnceItsTimeIsOver() {
        Instant from = begins();
        TicketNumber closed = ClosedTickets.one(tickets, TINA);
        stated(from, 9);
        drawn();
        reviewAll("logs-reviewed", "cause-named", "symptom-observed");
        for (String requirement : List.of("logs-reviewed", "cause-named", "symptom-observed")) {
            at(sue.post(
                    "/audit/" + lot + "/addenda",
                    Map.of("of", closed + "/" + requirement, "remark", "Say more of " + requirement)));
        }
        at(sue.post("/audit/" + lot + "/conclusion", Map.of("decision", "We wait for three addenda")));
        String words = meaning();
        String door = "/audit/" + lot + "/addenda/closings";
        Map<String, String> logs = Map.of("of", closed + "/logs-reviewed", "closing", "Nobody kept that log");
        refused(422, sue.post(door, logs));
        assertFalse(page().contains("Wait for it no longer"), page());
        assertTrue(tina.get("/today").asString().contains("things to add to closed tickets"));

        clock.putForward(Duration.ofDays(60));
        persons();
        assertTrue(page().contains("Wait for it no longer") && page().contains("not written in time"), page());
        refused(403, tina.post(door, logs));
        refused(422, sue.post(door, Map.of("of", closed + "/logs-reviewed", "closing", " ")));
        refused(422, sue.post(door, Map.of("of", closed + "/scope-known", "closing", "It was never asked")));
        refused(422, sue.post(door, Map.of("of", "10000-0/logs-reviewed", "closing", "Of no ticket")));
        refused(404, sue.post("/audit/2099-01/addenda/closings", logs));
        // written late: it is answered, and not closed over
        adds(closed, "cause-named");
        refused(422, sue.post(door, Map.of("of", closed + "/cause-named", "closing", "Too late")));
        at(sue.post(door, logs));
        refused(422, boris.post(door, logs));
        assertThrows(
                RuntimeException.class,
                () -> TestDatabase.run("update audit_addendum set entry = 1 where lot = ? and closed", lot));

        String page = page();
        assertTrue(page.contains("closed without it: Nobody kept that log"), page);
        String told = tina.get("/my-reviews").asString();
        assertTrue(told.contains("Closed without it: Nobody kept that log"), told);
        assertTrue(tina.get("/today").asString().contains("1</strong> thing to add")
                || tina.get("/today").asString().contains("thing to add to a closed ticket"));
        // what is written afterwards stands on the ticket and answers nothing; the other one is still asked for
        adds(closed, "logs-reviewed");
        assertEquals(1, answers(closed).size());
        adds(closed, "symptom-observed");
        assertEquals(2, answers(closed).size());
        assertEquals(words, meaning(), "what was found does not change");
        assertEquals(new Mending(3, 3, 0, 0), mending(now().plan().until(), clock.instant()));
        assertTrue(sue.get("/audit/" + lot + "/report").asString().contains("closed without it"));
    }

    private String meaning() {
        Matcher meaning = Pattern.compile("Of [0-9]+ tickets?, [^<]*").matcher(page());
        assertTrue(meaning.find(), page());
        return meaning.group();
    }

    /** Once it is due: two were asked for and written in time, and one is mended when it is countersigned. */
    private void mendingIsCounted(TicketNumber closed, int first) {
        Instant ends = now().plan().until();
        Instant later = clock.instant().plus(Duration.ofDays(30));
        assertEquals(new Mending(2, 0, 0, 0), mending(ends, clock.instant()));
        assertEquals(new Mending(2, 2, 2, 0), mending(ends, later));
        done(tickets.perform(
                closed,
                looks.ticket(closed, TINA).sheet().entries(),
                List.<Act>of(s -> new AddendumCountersigned(first, "")),
                BORIS));
        assertEquals(new Mending(2, 2, 2, 1), mending(ends, later));
        String csv = sue.get("/figures/mending.csv").asString();
        assertTrue(csv.contains("\nAll requirements,") && csv.contains("of 30 needed"), csv);
    }

    private Mending mending(Instant ends, Instant at) {
        return mended.between(ends.minusMillis(1), ends, at).get(0).mending();
    }

    /** Who comes from what was asked finds it chosen in the form. */
    private void nobodyIsAskedTwice(TicketNumber closed) {
        String door = "/tickets/" + closed + "?answers=cause-named";
        assertTrue(tina.get("/my-reviews").asString().contains("href=\"" + door + "#addenda\""));
        assertEquals("cause-named", chosenIn(tina.get(door).asString()));
        for (String nothing : List.of("", "?answers=none-of-these", "?answers=%22%3E%3Cb%3E")) {
            String sheet = tina.get("/tickets/" + closed + nothing).asString();
            assertEquals("", chosenIn(sheet), nothing);
            assertFalse(sheet.contains("none-of-these") || sheet.contains("<b>"));
        }
    }

    /** What the form for an addendum says that it answers. */
    private static String chosenIn(String sheet) {
        String field = sheet.substring(sheet.indexOf("<select id=\"addendum.requirement\""));
        Matcher chosen = Pattern.compile("<option value=\"([^\"]*)\" selected>")
                .matcher(field.substring(0, field.indexOf("</select>")));
        return chosen.find() ? chosen.group(1) : "";
    }

    /** @return number of the entry */
    private int adds(TicketNumber closed, @org.jspecify.annotations.Nullable String requirement) {
        int end = looks.ticket(closed, TINA).sheet().entries();
        done(tickets.perform(
                closed,
                end,
                List.<Act>of(s -> new Addendum(Addendum.About.REMARK, "The system log", requirement)),
                TINA));
        return end + 1;
    }
}
