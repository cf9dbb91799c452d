package org.benchtrail.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import org.benchtrail.browser.DemoPeople;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;

/** All of the demo can be loaded, by the acts and gates of everybody's tickets; loading it again adds nothing. Last: others count. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@Order(Integer.MAX_VALUE)
class DemoStartTest {
    @Inject
    DemoStart demo;

    @Inject
    PeopleActs accounts;

    @Test
    void demo_isLoadedOnce_withClosedTicketsToo() throws IOException {
        DemoPeople.ensure(accounts);
        demo.load();
        int found = found();
        assertTrue(found > 0);
        demo.load();
        assertEquals(found, found());
    }

    /** What a new hire looks at on the first day is not empty: jobs behind them, a forecast, what they missed, and questions of it. */
    @Test
    void theTrainee_hasLearnedSomethingAlready() throws IOException {
        DemoPeople.ensure(accounts);
        demo.load();
        Browser tomasz = Browser.signedIn("tomasz", Scenarios.DEMO_PASSWORD);
        String jobs = tomasz.get("/practice").asString();
        assertEquals(3, jobs.split("Debrief: ", -1).length - 1, jobs);
        assertTrue(jobs.contains("closed") && jobs.contains("given up"), jobs);
        String forecasts = tomasz.get("/forecasts").asString();
        assertTrue(forecasts.contains("60 %") && forecasts.contains("before what is alike"), forecasts);
        assertTrue(tomasz.get("/coach").asString().contains("0 of 1 met at this level"));
        assertTrue(
                tomasz.get("/recall").asString().contains("1 of 3"),
                tomasz.get("/recall").asString());
        assertTrue(tomasz.get("/today").asString().contains("Questions for today"));
        String progress = Browser.signedIn("ruth", Scenarios.DEMO_PASSWORD)
                .get("/progress/tomasz")
                .asString();
        assertTrue(progress.contains("now Ruth Calloway"), progress);
    }

    private static int found() {
        return Browser.signedIn("omar", Scenarios.DEMO_PASSWORD)
                        .get("/search?q=stripe")
                        .asString()
                        .split("Grey .{0,7}stripe", -1)
                        .length
                - 1;
    }
}
