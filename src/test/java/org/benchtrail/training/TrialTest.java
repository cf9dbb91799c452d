package org.benchtrail.training;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.training.TrialOutcome;
import org.benchtrail.core.training.TrialTurn;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.Forbidden;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Tests of the coach, and how somebody might state, end or read one otherwise than it was stated. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class TrialTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor SUE = new Actor("trial-sue", "Sue", Set.of(Role.SUPERVISOR));
    private static final String MARK = "<details class=\"coach";

    @Inject
    PeopleActs people;

    @Inject
    TrialActs acts;

    @Inject
    TrialQueries queries;

    @Inject
    TrialStore store;

    @Inject
    PracticeActs practice;

    @Inject
    CoachStore coach;

    @BeforeEach
    void supervisor() {
        people.ensureAccount(SUE.account(), SUE.name(), SUE.roles(), PASSWORD);
    }

    private static Actor trainee(String login) {
        return new Actor(login, login, Set.of(Role.TRAINEE));
    }

    private Browser page(Actor actor) {
        people.ensureAccount(actor.account(), actor.name(), actor.roles(), PASSWORD);
        return Browser.signedIn(actor.account(), PASSWORD);
    }

    private int stated(int margin, int each) {
        return acts.state(new TrialActs.Asked(margin, 99, 0, 5, each), SUE);
    }

    private TrialView view(int trial, Actor viewer) {
        return queries.all(viewer, ZoneOffset.UTC).stream()
                .filter(t -> t.id() == trial)
                .findFirst()
                .orElseThrow();
    }

    /** Takes part, whatever they have worked on. */
    private Actor takesPart(String login, int trial) {
        Actor actor = trainee(login);
        QuarkusTransaction.requiringNew().run(() -> {
            TrialStore.Trial stated = store.trials().stream()
                    .filter(t -> t.id() == trial)
                    .findFirst()
                    .orElseThrow();
            store.agree(
                    trial, login, TrialTurn.of(stated.orderSeed(), login, Set.of(), stated.jobsEach()), Instant.now());
        });
        return actor;
    }

    private void endsAJob(int trial, Actor actor) {
        practice.giveUp(acts.begin(trial, actor), actor);
        acts.ended();
    }

    private static String column(String sql) throws SQLException {
        try (Connection owner = TestDatabase.owner();
                ResultSet rows = owner.createStatement().executeQuery(sql)) {
            return rows.next() ? rows.getString(1) : "";
        }
    }

    private static String lastRecord() throws SQLException {
        return column("select convert_from(canonical, 'UTF8') from site_record where stream = 'training'"
                + " order by place desc limit 1");
    }

    @Test
    void aPlan_isSealedAsStated_andAnotherMarginIsAnotherPlan() throws SQLException {
        int first = stated(30, 1);
        String record = lastRecord();
        assertTrue(record.contains("\"margin\":30") && record.contains("\"people\":5"), record);
        TrialView before = view(first, SUE);
        assertTrue(record.contains(before.devices()) && record.contains(before.orderSeed()), record);
        assertTrue(record.contains("30 points or more"), record);

        String change = "update coach_trial set margin = 1 where id = " + first;
        try (Connection server = TestDatabase.server()) {
            for (String sql : List.of(
                    change,
                    "delete from coach_trial",
                    "update coach_trial_seed set secret = salt",
                    "update coach_trial_turn set coached = false",
                    "update coach_trial_result set not_worse = true")) {
                SQLException refused = assertThrows(
                        SQLException.class, () -> server.createStatement().execute(sql), sql);
                assertTrue(refused.getMessage().contains("permission denied"), refused.getMessage());
            }
        }
        assertThrows(IllegalStateException.class, () -> TestDatabase.run(change), "nor the owner, unseen");

        int second = stated(29, 1);
        assertTrue(lastRecord().contains("\"margin\":29"));
        assertEquals(before, view(first, SUE), "the old one stands as it was");
        assertTrue(second > first);
    }

    @Test
    void onlyASupervisor_statesAPlan_andOnlyOneLargeEnough() {
        for (Role role : List.of(Role.TRAINEE, Role.TECHNICIAN, Role.MENTOR, Role.ADMINISTRATOR)) {
            Actor other = new Actor("trial-" + role, "Other", Set.of(role));
            assertThrows(Forbidden.class, () -> acts.state(new TrialActs.Asked(30, 99, 0, 5, 1), other));
        }
        Response small = page(SUE)
                .post(
                        "/coach-tests",
                        Map.of("margin", "10", "expected", "90", "correlation", "5", "people", "5", "jobsEach", "2"));
        assertEquals(422, small.statusCode());
        assertTrue(small.asString().contains("takes 11"), small.asString());
        Response none = page(SUE).post("/coach-tests", Map.of("margin", "ten"));
        assertEquals(422, none.statusCode());
    }

    @Test
    void noFigure_beforeTheSizeIsReached_andNoSeed() throws SQLException {
        int trial = stated(28, 1);
        String secret = column("select encode(secret, 'hex') from coach_trial_seed where trial = " + trial);
        for (int person = 1; person <= 5; person++) {
            Actor actor = takesPart("trial-size" + person, trial);
            endsAJob(trial, actor);
            assertEquals("", view(trial, actor).alone(), "one's own: not before one's jobs are over");
            // one job of the last one is still to come
            assertEquals("", view(trial, SUE).figure());
            assertEquals("", view(trial, SUE).verdict());
            assertFalse(page(SUE).get("/coach-tests").asString().contains(secret));
            assertEquals("", column("select trial from coach_trial_result where trial = " + trial), "person " + person);
            endsAJob(trial, actor);
            assertTrue(
                    view(trial, actor).alone().startsWith("0 of 22, 0 %"),
                    view(trial, actor).alone());
        }
        TrialView over = view(trial, SUE);
        assertEquals("Work is not worse without the coach by 28 points or more.", over.verdict());
        assertTrue(over.figure().contains("0.0 points"), over.figure());
        assertEquals("5 of 5", over.over());
        assertEquals(secret, over.opened().get(0));
        assertEquals(
                over.devices(),
                Seeds.commitment(
                        HexFormat.of().parseHex(secret),
                        HexFormat.of().parseHex(over.opened().get(1))));
        assertTrue(lastRecord().contains("\"not_worse\":true"), lastRecord());
        assertEquals("", over.alone(), "what one person came to is theirs");
        assertFalse(page(SUE).get("/coach-tests").asString().contains("0 of 22"));
    }

    @Test
    void theJobWithoutTheCoach_hasNone_andTheOtherHas() {
        int trial = stated(27, 1);
        Actor actor = takesPart("trial-silent", trial);
        Browser browser = page(actor);
        Browser other = page(trainee("trial-other"));
        boolean sawBoth = false;
        for (int turn = 0; turn < 2; turn++) {
            boolean coached = view(trial, actor).own().get(turn).coach().equals("with the coach");
            int job = acts.begin(trial, actor);
            assertEquals(coached, browser.get("/practice/" + job).asString().contains(MARK), "turn " + turn);
            assertEquals(coached, browser.get("/coach").asString().contains(MARK), "nor on the page of its texts");
            assertTrue(other.get("/coach").asString().contains(MARK), "but for who works no such job");
            assertEquals(job, acts.begin(trial, actor), "the same job again, not another device");
            practice.giveUp(job, actor);
            sawBoth |= turn == 1;
        }
        assertTrue(sawBoth);
        assertTrue(browser.get("/coach").asString().contains(MARK));
    }

    @Test
    void aJobBrokenOff_isLeftOutAndCounted_andOnlyWhileItIsOpen() throws SQLException {
        int trial = stated(26, 1);
        Actor actor = takesPart("trial-broken", trial);
        int job = acts.begin(trial, actor);
        assertEquals(
                303,
                page(actor).post("/coach-tests/broken-off/" + job, Map.of()).statusCode());
        assertEquals(1, view(trial, SUE).broken());
        int again = acts.begin(trial, actor);
        assertTrue(again > job);
        String seeds = "select count(distinct seed) from practice_truth where job in (" + job + "," + again + ")";
        assertEquals("2", column(seeds), "what was seen of one tells nothing of the other");
        practice.giveUp(again, actor);
        assertThrows(NotFound.class, () -> acts.breakOff(again, actor), "after its debrief it counts");
        int next = acts.begin(trial, actor);
        assertThrows(NotFound.class, () -> acts.breakOff(next, trainee("trial-stranger")), "nobody else's");
        assertEquals(1, view(trial, SUE).broken());
    }

    @Test
    void whoTakesPart_isATrainee_thirtyDaysAfterTheirFirstWork() {
        int trial = stated(25, 1);
        Invalid refused = assertThrows(Invalid.class, () -> acts.agree(trial, trainee("trial-new")));
        assertTrue(refused.getMessage().contains("30 days"), refused.getMessage());
        assertThrows(Invalid.class, () -> acts.agree(trial, SUE));
        assertThrows(NotFound.class, () -> acts.begin(trial, trainee("trial-new")));
    }

    /** On such a site the coach fades later; the plan that ends last says. */
    @Test
    void whereItWasNotShown_theCoachFadesLater() throws SQLException {
        int failed = stated(24, 1);
        int passed = stated(23, 1);
        try {
            QuarkusTransaction.requiringNew().run(() -> {
                assertEquals(0.80, coach.bound());
                store.conclude(failed, new TrialOutcome(5, 0.2, 0.1, 0.41, false), Instant.now());
                assertEquals(0.85, coach.bound());
            });
            assertTrue(
                    view(failed, SUE).verdict().contains("needed still"),
                    view(failed, SUE).verdict());
            assertTrue(lastRecord().contains("\"not_worse\":false"), lastRecord());
        } finally {
            QuarkusTransaction.requiringNew()
                    .run(() -> store.conclude(passed, new TrialOutcome(5, 0, 0, 0, true), Instant.now()));
        }
        QuarkusTransaction.requiringNew().run(() -> assertEquals(0.80, coach.bound()));
    }
}
