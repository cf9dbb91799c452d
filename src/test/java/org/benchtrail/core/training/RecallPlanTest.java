package org.benchtrail.core.training;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.benchtrail.core.Published;
import org.benchtrail.core.training.RecallItem.Choice;
import org.benchtrail.core.training.RecallItem.Source;
import org.benchtrail.core.training.RecallPlan.Answered;
import org.benchtrail.core.training.RecallPlan.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RecallPlanTest {
    private static final ZoneId ZONE = ZoneId.of("Europe/Vienna");
    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

    private static RecallItem item(String id, String job, String trade, boolean safety, LocalDate ended) {
        return new RecallItem(
                id,
                RecallForm.WHY,
                new Source(
                        job,
                        "/" + job,
                        "/" + job + "#",
                        trade,
                        ended.atTime(17, 0).atZone(ZONE).toInstant()),
                safety,
                "Which?",
                List.of(),
                List.of(new Choice("a", "A"), new Choice("b", "B")),
                List.of("a"),
                "Because.",
                0);
    }

    private static RecallItem of(String job, String trade) {
        return item(job, job, trade, false, DAY.minusDays(3));
    }

    private static List<String> asked(List<RecallItem> items, List<Answered> answers, LocalDate day) {
        return RecallPlan.of(items, answers, day, ZONE).stream()
                .map(RecallItem::id)
                .toList();
    }

    private static Stage stage(Answered... answers) {
        return RecallPlan.stages(List.of(answers)).get("q");
    }

    private static Answered at(int day, boolean right) {
        return new Answered("q", DAY.plusDays(day), right);
    }

    @Test
    void right_comesAfterThreeSevenAndTwentyOneDays_andThenRests() {
        assertEquals(new Stage(1, 1, DAY, DAY.plusDays(3)), stage(at(0, true)));
        assertEquals(new Stage(2, 2, DAY.plusDays(3), DAY.plusDays(10)), stage(at(0, true), at(3, true)));
        assertEquals(
                new Stage(3, 3, DAY.plusDays(10), DAY.plusDays(31)), stage(at(0, true), at(3, true), at(10, true)));
        Stage rests = stage(at(0, true), at(3, true), at(10, true), at(31, true));
        assertEquals(new Stage(4, 4, DAY.plusDays(31), null), rests);
        assertTrue(rests.rests());
    }

    @Test
    void wrong_comesTheNextDay_aStageLower_neverBelowTheFirst() {
        assertEquals(new Stage(0, 1, DAY, DAY.plusDays(1)), stage(at(0, false)));
        assertEquals(
                new Stage(1, 3, DAY.plusDays(10), DAY.plusDays(11)), stage(at(0, true), at(3, true), at(10, false)));
    }

    /** At, under and over the day on which it is due. */
    @Test
    void askedOnItsDay_andOnAnyLaterWorkedOne_notBefore() {
        List<RecallItem> items = List.of(of("q", "Heat"));
        List<Answered> right = List.of(at(0, true));
        assertEquals(List.of(), asked(items, right, DAY.plusDays(2)));
        assertEquals(List.of("q"), asked(items, right, DAY.plusDays(3)));
        assertEquals(List.of("q"), asked(items, right, DAY.plusDays(40)));
    }

    /** Neither is a stage lost by a day without an answer, nor is a question of today another one once it is answered. */
    @Test
    void aDayIsTheSameAllDay_andOneLeftOutChangesNothing() {
        List<RecallItem> items = List.of(of("q", "Heat"), of("r", "Power"), of("s", "Wired"), of("t", "USB"));
        List<String> before = asked(items, List.of(), DAY);
        assertEquals(3, before.size());
        assertEquals(before, asked(items, List.of(new Answered(before.get(0), DAY, true)), DAY));
        assertEquals(before, asked(items, List.of(), DAY.plusDays(5)));
    }

    @Test
    void aJobOfTheSameDay_isAskedTheNext() {
        List<RecallItem> items = List.of(item("q", "q", "Heat", false, DAY));
        assertEquals(List.of(), asked(items, List.of(), DAY));
        assertEquals(List.of("q"), asked(items, List.of(), DAY.plusDays(1)));
    }

    @Test
    void safetyComesFirst_thenTheLongestOverdue_thenNewOnesOneAJob() {
        List<RecallItem> items = List.of(
                item("late", "1", "Heat", false, DAY.minusDays(30)),
                item("later", "2", "Power", false, DAY.minusDays(30)),
                item("safe", "3", "Wired", true, DAY.minusDays(30)),
                item("new", "4", "USB", false, DAY.minusDays(1)),
                item("new2", "4", "USB", false, DAY.minusDays(1)));
        List<Answered> answers = List.of(
                new Answered("late", DAY.minusDays(9), false),
                new Answered("later", DAY.minusDays(10), false),
                new Answered("safe", DAY.minusDays(2), false));
        assertEquals(List.of("safe", "later", "late"), asked(items, answers, DAY));
        assertEquals(List.of("new"), asked(items.subList(3, 5), List.of(), DAY));
    }

    @Test
    void twoOfOneTrade_onlyWhereNoOthersAreDue() {
        List<RecallItem> items = List.of(of("a", "Heat"), of("b", "Heat"), of("c", "Power"), of("d", "USB"));
        List<Answered> due = items.stream()
                .map(i -> new Answered(i.id(), DAY.minusDays(i.id().equals("d") ? 1 : 5), false))
                .toList();
        assertEquals(List.of("a", "c", "d"), asked(items, due, DAY));
        assertEquals(List.of("a", "c", "b"), asked(items.subList(0, 3), due, DAY));
    }

    /** Mixed kinds are remembered better than blocked ones. */
    @Test
    void formsAreMixed_whereOthersAreThere() {
        List<RecallItem> items = List.of(
                of("a", "Heat"),
                of("b", "Power"),
                new RecallItem(
                        "c",
                        RecallForm.VALUE,
                        of("b", "Power").source(),
                        false,
                        "Does it?",
                        List.of(),
                        List.of(),
                        List.of(),
                        "",
                        0));
        assertEquals(List.of("a", "c"), asked(items, List.of(), DAY));
        assertEquals(List.of("a", "b"), asked(items.subList(0, 2), List.of(), DAY));
    }

    @Test
    void whatRests_comesBackWhereALaterJobMakesItAgain() {
        List<Answered> four = List.of(at(0, true), at(3, true), at(10, true), at(31, true));
        assertEquals(List.of(), asked(List.of(of("q", "Heat")), four, DAY.plusDays(400)));
        List<RecallItem> again = List.of(item("q", "9", "Heat", true, DAY.plusDays(60)));
        assertEquals(List.of(), asked(again, four, DAY.plusDays(60)));
        assertEquals(List.of("q"), asked(again, four, DAY.plusDays(61)));
        List<RecallItem> sameDay = List.of(item("q", "9", "Heat", true, DAY.plusDays(31)));
        assertEquals(List.of(), asked(sameDay, four, DAY.plusDays(90)), "the job that it rests after");
    }

    /** Asks until it rests, in a walk with a wall at the first stage: e = SUM d_i, d_0 = 1/s, d_i = (1 + (1-s) d_(i-1)) / s. */
    @ParameterizedTest
    @CsvSource({"0.6, 11.98", "0.7, 8.19", "0.8, 6.11", "0.9, 4.84"})
    void load_isThatOfTheWalk(double right, double asks) {
        Random random = new Random(20260302);
        long asked = 0;
        int walks = 20_000;
        for (int i = 0; i < walks; i++) {
            List<Answered> answers = new ArrayList<>();
            LocalDate day = DAY;
            Stage now;
            do {
                answers.add(new Answered("q", day, random.nextDouble() < right));
                day = day.plusDays(1);
                now = RecallPlan.stages(answers).get("q");
            } while (!now.rests());
            asked += answers.size();
        }
        double step = 1 / right;
        double sum = step;
        for (int i = 1; i < 4; i++) {
            step = (1 + (1 - right) * step) / right;
            sum += step;
        }
        Published.check("first-step analysis of a random walk (memory)", sum, asks, 0.006);
        Published.check("first-step analysis of a random walk (memory)", sum, (double) asked / walks, 0.02 * sum);
    }
}
