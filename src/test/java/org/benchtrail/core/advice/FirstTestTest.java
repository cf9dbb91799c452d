package org.benchtrail.core.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is done first on a ticket whose words say much and whose questions nobody has answered yet. */
class FirstTestTest {
    static Stream<PlainTickets.Row> tickets() {
        return PlainTickets.read("/diagnosis/first-tests.yaml").stream();
    }

    @ParameterizedTest
    @MethodSource("tickets")
    void firstTest_isOneThatATechnicianWouldMake(PlainTickets.Row ticket) {
        Diagnosis now = PlainTickets.diagnosis(PlainTickets.sheet(ticket, ticket));
        Set<String> good = ticket.list("good").stream().map(String::valueOf).collect(Collectors.toSet());

        List<String> tests = now.tests().stream().map(Action::id).toList();
        assertFalse(tests.isEmpty());
        assertTrue(good.contains(tests.get(0)), ticket.text("id") + ": " + tests);
        assertEquals(
                Optional.of(Action.Type.TEST), now.next().map(Action::type), "the next act is the test that is shown");
        assertEquals(tests.get(0), now.next().orElseThrow().id());
    }

    @Test
    void wordsThatNobodyAnswered_chooseTheTest_andWeighNothing() {
        PlainTickets.Row phone = ticket("f5");
        Diagnosis now = PlainTickets.diagnosis(PlainTickets.sheet(phone, phone));

        assertTrue(now.goesByWords());
        assertTrue(now.evidence().reports().stream().noneMatch(Suggestions::isSupposed));
        Diagnosis deaf = new Diagnosis(now.where(), now.explanation(), now.repairOdds(), null);
        assertEquals(
                deaf.ranking().all().stream().map(Ranking.Ranked::probability).toList(),
                now.ranking().all().stream().map(Ranking.Ranked::probability).toList());
        assertFalse(deaf.next().equals(now.next()), "else this ticket shows nothing");
    }

    @Test
    void whatTheWordsAnswer_isNotAskedAsATest() {
        PlainTickets.Row phone = ticket("f5");
        HeatSheet sheet = PlainTickets.sheet(phone, phone);
        Diagnosis now = PlainTickets.diagnosis(sheet);
        Set<String> heard = Suggestions.supposed(sheet.sheet(), now).reports().stream()
                .filter(Suggestions::isSupposed)
                .map(Report::finding)
                .collect(Collectors.toSet());

        assertFalse(heard.isEmpty());
        assertTrue(now.tests().stream().map(Action::id).noneMatch(heard::contains));
    }

    @Test
    void onceOneQuestionWasAnswered_theOthersWereLeftOnPurpose() {
        PlainTickets.Row laptop = ticket("f6");
        HeatSheet sheet = PlainTickets.sheet(laptop, laptop);
        assertTrue(PlainTickets.diagnosis(sheet).goesByWords());

        sheet.with(new FindingAnswered("h30", "Do the fans run louder?", "no", Source.SEEN));

        assertFalse(PlainTickets.diagnosis(sheet).goesByWords());
    }

    /** What smells burnt is not put under power again with its own supply. */
    @Test
    void afterABurntSmell_noTestSwitchesItOnAsItIs() {
        PlainTickets.Row burnt = ticket("f3");
        HeatSheet sheet = PlainTickets.sheet(burnt, burnt);
        sheet.with(new FindingAnswered("p7", "Is there a burnt smell?", "yes", Source.REPORTED));

        List<String> offered = PlainTickets.diagnosis(sheet).advice().actions().stream()
                .filter(a -> a.type() == Action.Type.TEST)
                .map(Action::id)
                .toList();

        assertTrue(offered.contains("substitute:supply"), offered.toString());
        assertTrue(
                offered.stream().noneMatch(Set.of("p1", "p2", "p8", "p11", "p12", "p19", "p21")::contains),
                offered.toString());
    }

    private static PlainTickets.Row ticket(String id) {
        return tickets().filter(t -> t.text("id").equals(id)).findFirst().orElseThrow();
    }
}
