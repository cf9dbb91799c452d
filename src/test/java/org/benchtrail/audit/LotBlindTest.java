package org.benchtrail.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.core.audit.AuditAct.Marked;
import org.benchtrail.core.audit.AuditLot.Turn;
import org.benchtrail.core.audit.Mark;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.knowledge.ClosedTickets;
import org.benchtrail.people.Browser;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.Act;
import org.junit.jupiter.api.Test;

/** What a reviewer's page holds and leads to, in bytes; and what it asks nobody twice. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class LotBlindTest extends LotCourse {
    private static final Pattern LINK = Pattern.compile("href=\"(/[^\"#]*)");

    /** Tina opened it, Mila had it and did nothing, Ron put a picture on it, Cora ended it. */
    private TicketNumber throughManyHands() {
        for (var person : List.of(RON, MILA, CORA)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        TicketNumber number = tickets.open(lamp(), TINA).number();
        done(tickets.perform(number, 1, List.<Act>of(s -> new HandedOver(MILA.account(), Set.of(), "")), CORA));
        done(tickets.perform(number, 2, List.<Act>of(s -> new HandedOver(RON.account(), Set.of(), "")), CORA));
        byte[] picture = "a picture of the lamp".getBytes(StandardCharsets.UTF_8);
        String sha = Hash.sha256(picture).hex();
        TestDatabase.run("insert into attachment (sha256, content) values (?, ?) on conflict do nothing", sha, picture);
        done(tickets.perform(
                number,
                3,
                List.<Act>of(
                        s -> new AttachmentAdded("lamp.png", "image/png", 21, sha, "The lamp"),
                        s -> new LogsReviewed(true, "Nothing")),
                RON));
        done(tickets.perform(number, 5, List.<Act>of(s -> new Cancelled("It was the bulb", null)), CORA));
        return number;
    }

    private static void namesNobody(String page, String where) {
        for (var person : List.of(TINA, RON, MILA, CORA)) {
            assertFalse(page.contains(person.name()), where + " names " + person.name());
            assertFalse(page.contains(person.account()), where + " names " + person.account());
        }
    }

    /** What of a page is not the same on every page. */
    private static String own(String page) {
        int main = page.indexOf("<main");
        assertTrue(main > 0, page);
        return page.substring(main);
    }

    private static Set<String> links(String page) {
        Set<String> links = new LinkedHashSet<>();
        Matcher link = LINK.matcher(own(page));
        while (link.find()) {
            links.add(link.group(1).replace("&amp;", "&"));
        }
        return links;
    }

    @Test
    void nothingThatAnOpenReviewLeadsTo_namesWhoDidTheWork() {
        Instant from = begins();
        TicketNumber number = throughManyHands();
        stated(from, 9);
        drawn();
        String review = at(take(boris));
        String page = boris.get(review).asString();
        assertTrue(page.contains("The lamp"), page);
        namesNobody(own(page), "the review");
        Set<String> links = links(page);
        assertTrue(links.stream().anyMatch(l -> l.endsWith("/picture?size=large")), "the picture opens: " + links);
        for (String link : links) {
            if (!link.contains("/picture?")) {
                namesNobody(own(boris.get(link).asString()), link);
            }
        }
        assertTrue(page.contains("because they name people"), page);
        markAll(BORIS, review, "");
        String entry = "/tickets/" + number + "/entries/4";
        assertFalse(links(boris.get(review).asString()).contains(entry), "all is marked, and nothing signed");
        at(boris.post(review + "/signature", Map.of()));
        page = boris.get(review).asString();
        namesNobody(own(page), "the signed review");
        assertTrue(links(page).contains(entry), "now the work is judged");
        assertTrue(page.contains("where people are named"), page);
    }

    /** Of a plain closed ticket nine are not asked: one act marks them, each with the gate's reason. */
    @Test
    void whatTheGateDidNotAskFor_isMarkedInOneAct_withItsReasons() {
        Instant from = begins();
        TicketNumber number = ClosedTickets.one(tickets, TINA);
        stated(from, 9);
        drawn();
        String review = at(take(boris));
        refused(404, sue.post(review + "/not-asked", Map.of()));
        refused(403, tina.post(review + "/not-asked", Map.of()));
        String page = boris.get(review).asString();
        assertTrue(page.contains("No trainee worked on it."), page);
        Matcher told = Pattern.compile("Mark these (\\d+) not applicable").matcher(page);
        assertTrue(told.find(), page);
        int left = Integer.parseInt(told.group(1));
        Map<String, Object> own = Map.of(
                "requirement", "mentor-signed", "mark", "NOT_APPLICABLE", "defect", "", "entries", "", "remark", "");
        at(boris.post(review + "/marks", own));
        // where the reviewer sees it otherwise than the gate it takes words
        refused(
                422,
                boris.post(
                        review + "/marks",
                        Map.of(
                                "requirement",
                                "scope-known",
                                "mark",
                                "NOT_APPLICABLE",
                                "defect",
                                "",
                                "entries",
                                "",
                                "remark",
                                "")));
        at(boris.post(review + "/not-asked", Map.of()));
        Map<String, Marked> marks =
                now().review(number.toString(), 1).orElseThrow().marks();
        assertEquals(left, marks.size(), "these and no other");
        assertTrue(marks.values().stream().allMatch(m -> m.mark() == Mark.NOT_APPLICABLE && m.defect() == null));
        assertEquals("No trainee worked on it.", marks.get("mentor-signed").remark());
        refused(422, boris.post(review + "/not-asked", Map.of()));
        assertFalse(boris.get(review).asString().contains("Not asked by the gate"));
        markAll(BORIS, review, "");
        at(boris.post(review + "/signature", Map.of()));
        refused(422, boris.post(review + "/not-asked", Map.of()));
        assertEquals(new Turn(number.toString(), 1), now().reviews().get(0).turn());
    }

    @Test
    void afterOneIsSigned_theNextIsOneTapAway_withHowManyAreLeft() {
        Instant from = begins();
        for (int i = 0; i < 3; i++) {
            ended(TINA);
        }
        stated(from, 9);
        drawn();
        assertTrue(page().contains("3 are left that you may take, about 18 min in all, 6 each."), page());
        String review = at(take(sue));
        assertFalse(page().contains("Take the next review"), "one at a time");
        markAll(SUE, review, "");
        String next = at(sue.post(review + "/signature", Map.of()));
        String lotPage = sue.get(next).asString();
        String first = lotPage.substring(lotPage.indexOf("<main"));
        assertTrue(
                first.indexOf("<button") > 0 && first.indexOf("Take the next review") > first.indexOf("<button"),
                first);
        assertEquals(
                "Take the next review",
                first.substring(first.indexOf("<button")).replaceFirst("(?s)<button[^>]*>([^<]*)<.*", "$1"),
                "the first button of the page");
        assertTrue(lotPage.contains("2 are left that you may take, about 2 min in all, 1 each."), lotPage);
        Browser other = boris;
        assertTrue(other.get(next).asString().contains("3 are left that you may take"), "he may read the first again");
    }
}
