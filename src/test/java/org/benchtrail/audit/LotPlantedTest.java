package org.benchtrail.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.audit.LotResult;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.statistics.DiscoverySampling;
import org.benchtrail.knowledge.ClosedTickets;
import org.benchtrail.people.Browser;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

/** Records that went through every gate and say nothing, among others: a reviewer who knows of none finds them by reading. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class LotPlantedTest extends LotCourse {
    private static final int TICKETS = 8;
    private static final int PLANTED = 2;
    private static final double CONFIDENCE = 0.95;

    /** By the page alone: the symptom of an empty record is no symptom. */
    private static boolean saysNothing(String review) {
        return review.contains("<strong>symptom recorded</strong>: n-a;");
    }

    /** The empty ones among those that a reader was given. */
    private Set<String> readAll(Browser by, Actor actor) {
        Set<String> found = new HashSet<>();
        for (Response taken = take(by); taken.statusCode() == 303; taken = take(by)) {
            String review = at(taken);
            boolean empty = saysNothing(by.get(review).asString());
            markAll(actor, review, empty ? new String[] {"symptom-observed"} : new String[0]);
            at(by.post(review + "/signature", Map.of()));
            if (empty) {
                found.add(review.split("/")[4]);
            }
        }
        return found;
    }

    @Test
    void plantedRecords_areFoundByWhoeverReads_andTheRangeHoldsTheirNumber() {
        int looked = DiscoverySampling.sampleSize(TICKETS, PLANTED, CONFIDENCE);
        assertTrue(
                DiscoverySampling.probability(TICKETS, PLANTED, looked) >= CONFIDENCE,
                "one of the two is drawn in most months");
        Instant from = begins();
        List<String> planted = new ArrayList<>();
        for (int i = 0; i < TICKETS; i++) {
            TicketNumber number = i < PLANTED ? ClosedTickets.empty(tickets, TINA) : ClosedTickets.one(tickets, TINA);
            if (i < PLANTED) {
                planted.add(number.toString());
            }
        }
        stated(from, looked);
        drawn();
        assertTrue(page().contains(looked + " of " + TICKETS + ", drawn at random"), page());
        Set<String> drawn = new HashSet<>(now().drawnTickets());
        assertEquals(looked, drawn.size());

        Set<String> found = readAll(sue, SUE);
        found.addAll(readAll(boris, BORIS));

        Set<String> there = planted.stream().filter(drawn::contains).collect(Collectors.toSet());
        assertEquals(there, found, "who reads finds what was drawn, and nothing else");
        LotResult result = LotResult.of(now());
        assertTrue(result.lower() <= PLANTED && PLANTED <= result.upper(), result.lower() + " to " + result.upper());
        String page = page();
        assertTrue(
                page.contains("Of " + TICKETS + " tickets, between " + result.lower() + " and " + result.upper()),
                page);
        for (String ticket : there) {
            assertTrue(page.contains("/tickets/" + ticket + "/record"), ticket);
        }
    }
}
