package org.benchtrail.audit;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.people.Browser;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.Act;
import org.junit.jupiter.api.Test;

/** Who reads the marks of their own work, and when. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class LotCoachingTest extends LotCourse {
    private TicketNumber endedByTwo() {
        TicketNumber number = tickets.open(lamp(), TINA).number();
        done(tickets.perform(number, 1, List.<Act>of(s -> new ScopeRecorded(Scope.ONE, "")), TINA));
        done(tickets.perform(number, 2, List.<Act>of(s -> new Remarked(null, null, "Which lamp is it?")), MILA));
        done(tickets.perform(number, 3, List.<Act>of(s -> new HandedOver(RON.account(), Set.of(), "")), CORA));
        done(tickets.perform(number, 4, List.<Act>of(s -> new LogsReviewed(true, "Nothing")), RON));
        done(tickets.perform(number, 5, List.<Act>of(s -> new Cancelled("It was the bulb", null)), CORA));
        return number;
    }

    /** Who did the work reads its marks once no reader is led by it; who had another part in it never does; asked is one. */
    @Test
    void ownReviews_areReadByWhoDidTheWork_whenAllAreSigned_andWhatIsAskedByWhoIsAsked() {
        for (Actor person : List.of(RON, MILA)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        Browser ron = Browser.signedIn(RON.account(), PASSWORD);
        Browser mila = Browser.signedIn(MILA.account(), PASSWORD);
        Instant from = begins();
        String number = endedByTwo().toString();
        stated(from, 9);
        drawn();
        String review = at(take(sue));
        markAll(SUE, review, "scope-known");
        at(sue.post(review + "/signature", Map.of()));
        for (Browser hand : List.of(tina, ron)) {
            assertFalse(hand.get("/my-reviews").asString().contains(number), "the second reader is still at it");
        }
        reviewAll("scope-known");
        at(sue.post("/audit/" + lot + "/addenda", Map.of("of", number + "/scope-known", "remark", "Whose lamp?")));
        String coachingOfRon = "/audit-coaching/" + RON.account();
        assertEquals(404, boris.get(coachingOfRon).statusCode(), "it is told to who did the work first");
        String ofRon = ron.get("/my-reviews").asString();
        String ofTina = tina.get("/my-reviews").asString();
        String ofMila = mila.get("/my-reviews").asString();
        assertAll(
                () -> assertTrue(ofTina.contains(number) && ofTina.contains("Nothing was looked at")),
                () -> assertTrue(ofRon.contains(number) && ofRon.contains("Whose lamp?")),
                () -> assertFalse(ofMila.contains(number), "a remark is no work"),
                () -> assertFalse(sue.get("/my-reviews").asString().contains(number), "nor is a review"),
                () -> assertFalse(ofTina.contains("Whose lamp?"), "it was asked of another"));
        assertFalse(tina.get("/today").asString().contains("thing to add to a closed ticket"));
        String question = "Does the answer fit what else is known of the site?";
        assertTrue(ofRon.contains("id=\"learn\"")
                && ofRon.contains(question)
                && ofRon.contains("Not satisfied in 1 of 1."));
        assertFalse(ofMila.contains("id=\"learn\""));
        for (Browser other : List.of(tina, ron)) {
            assertEquals(403, other.get(coachingOfRon).statusCode());
            assertEquals(403, other.get("/audit-coaching").statusCode());
        }
        assertEquals(404, mila.get(coachingOfRon).statusCode(), "she is a mentor, and not his");
        assertFalse(mila.get("/audit-coaching").asString().contains(RON.name()));
        assertTrue(boris.get("/audit-coaching").asString().contains(RON.name()));
        assertFalse(boris.get("/audit-coaching").asString().contains(MILA.name()), "she has none to read");
        String shown = boris.get(coachingOfRon).asString();
        assertTrue(shown.contains(question) && shown.contains(number), shown);
        assertTrue(ron.get("/my-reviews").asString().contains("Looked at by " + BORIS.name()));
        assertFalse(tina.get("/my-reviews").asString().contains("Looked at by " + BORIS.name()), "that was Ron's");
        TestDatabase.run("update coaching_read set place = place - 4 where lot = ? and person = ?", lot, RON.account());
        String earlier = boris.get(coachingOfRon).asString();
        assertFalse(earlier.contains(number), "as far as he had read it then: not all of its reviews were signed");
        theMentorOfATrainee_readsIt_asLongAsTheyAre(coachingOfRon, question);
    }

    /** Of their own trainee, as far as that one has read it; not before, not of another, and not once one of them is it no more. */
    private void theMentorOfATrainee_readsIt_asLongAsTheyAre(String coachingOfRon, String question) {
        Actor ada = new Actor("audit-ada", "Ada Finch", Set.of(Role.ADMINISTRATOR));
        people.ensureAccount(ada.account(), ada.name(), ada.roles(), PASSWORD);
        try {
            people.setRoles(ada, RON.account(), Set.of(Role.TRAINEE));
            people.setMentor(ada, RON.account(), MILA.account());
            Browser mila = Browser.signedIn(MILA.account(), PASSWORD);
            Browser again = Browser.signedIn(RON.account(), PASSWORD);
            again.get("/my-reviews");
            String shown = mila.get(coachingOfRon).asString();
            assertTrue(shown.contains(question) && shown.contains("Not satisfied in 1 of 1."), shown);
            assertTrue(mila.get("/audit-coaching").asString().contains(RON.name()));
            assertEquals(404, mila.get("/audit-coaching/" + TINA.account()).statusCode(), "another's");
            assertEquals(403, mila.get("/audit/" + lot).statusCode());
            assertTrue(again.get("/my-reviews").asString().contains("Looked at by " + MILA.name()));
            assertEquals(403, again.get("/audit-coaching").statusCode(), "a trainee coaches nobody");

            // what he has not read yet is his first
            TestDatabase.run("delete from coaching_read where person = ?", RON.account());
            assertEquals(404, mila.get(coachingOfRon).statusCode());
            again.get("/my-reviews");
            assertEquals(200, mila.get(coachingOfRon).statusCode());

            people.setMentor(ada, RON.account(), "");
            assertEquals(404, mila.get(coachingOfRon).statusCode(), "not his mentor any more");
            people.setMentor(ada, RON.account(), MILA.account());
            people.setRoles(ada, RON.account(), Set.of(Role.TECHNICIAN));
            assertEquals(404, mila.get(coachingOfRon).statusCode(), "no trainee any more");
            people.setRoles(ada, RON.account(), Set.of(Role.TRAINEE));
            people.setRoles(ada, MILA.account(), Set.of(Role.TECHNICIAN));
            Browser once = Browser.signedIn(MILA.account(), PASSWORD);
            assertEquals(403, once.get(coachingOfRon).statusCode(), "no mentor any more");
            assertEquals(List.of(), directory.traineesOf(MILA.account()));
            assertEquals("", directory.mentorOf(RON.account()));
        } finally {
            people.setRoles(ada, RON.account(), RON.roles());
            people.setRoles(ada, MILA.account(), MILA.roles());
        }
    }
}
