package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.theorize.RankedCause;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Another theory than the best ranked one is tested with a reason, whoever ranked them. */
class RankedTheoryTest {
    private static final String WHY = "This is not the best ranked theory: say why it is tested first.";

    private static final TheoryStated DUST = new TheoryStated("Dust", "heat.dust");
    private static final TheoryStated FAN = new TheoryStated("Fan stands still", "heat.fan");

    private static TicketFixture desk() {
        TicketFixture desk = atStep(Step.THEORIZE);
        desk.as(INES).records(anyObvious());
        return desk;
    }

    /** As the server records it, with the likeliest first. */
    private static void catalogueRanks(TicketFixture desk, List<Integer> order, String... causes) {
        List<RankedCause> ranked = Arrays.stream(causes)
                .map(id -> new RankedCause(id, id, id.equals(causes[0]) ? "0.6000" : "0.1000"))
                .toList();
        desk.as(INES).forces(new TheoriesRanked(order, "catalogue", ranked, 1));
    }

    private static void ruleOut(TicketFixture desk, TheoryStated theory) {
        int stated = desk.as(INES).records(theory);
        desk.as(INES).records(choose(stated));
        desk.as(INES).records(new Advanced());
        desk.as(INES).records(result(desk.as(INES).records(check(stated)), CheckOutcome.REFUTES));
        desk.as(INES).records(new RuledOut());
    }

    private static void asks(String sentence, TicketFixture desk) {
        assertEquals(sentence, sentence(desk, "theory-chosen"));
    }

    @Test
    void nothingRanked_asksForNoReason() {
        TicketFixture desk = desk();
        int fan = desk.as(INES).records(FAN);
        asks("Choose the one theory that is tested next.", desk);
        desk.as(INES).records(choose(fan));
        asks("", desk);
    }

    @Test
    void anotherThanTheCataloguesFirst_asksForAReason() {
        TicketFixture desk = desk();
        int dust = desk.as(INES).records(DUST);
        int fan = desk.as(INES).records(FAN);
        int words = desk.as(INES).records(theory("Something else"));
        catalogueRanks(desk, List.of(), "heat.dust", "heat.fan");
        desk.as(INES).records(choose(dust));
        asks("", desk);
        desk.as(INES).records(choose(fan));
        asks(WHY, desk);
        desk.as(INES).records(choose(words));
        asks(WHY, desk);
        desk.as(INES).records(new TheoryChosen(fan, "Heard at once", ""));
        asks("", desk);
    }

    /** 3 dB are half the probability; the cause that the advised test speaks for is as good as the best. */
    @ParameterizedTest
    @CsvSource({
        "0.4000, 0.2006, , ''",
        "0.4000, 0.2004, , ask",
        "0.6000, 0.1000, heat.fan, ''",
        "0.6000, 0.1000, heat.dust, ask"
    })
    void nearTheBest_orOfTheAdvisedTest_asksForNoReason(
            String best, String other, @Nullable String favoured, String asked) {
        TicketFixture desk = desk();
        int fan = desk.as(INES).records(FAN);
        List<RankedCause> ranked =
                List.of(new RankedCause("heat.dust", "dust", best), new RankedCause("heat.fan", "fan", other));
        String test = favoured == null ? null : "h9";
        desk.as(INES).forces(new TheoriesRanked(List.of(), "catalogue", ranked, 1, test, favoured));
        desk.as(INES).records(choose(fan));
        asks(asked.isEmpty() ? "" : WHY, desk);
    }

    @Test
    void catalogueCauseThatWasRuledOut_isPassedOver() {
        TicketFixture desk = desk();
        ruleOut(desk, DUST);
        int fan = desk.as(INES).records(FAN);
        int words = desk.as(INES).records(theory("Something else"));
        catalogueRanks(desk, List.of(), "heat.dust", "heat.fan");
        desk.as(INES).records(choose(fan));
        asks("", desk);
        desk.as(INES).records(choose(words));
        asks(WHY, desk);
    }

    @Test
    void everyCatalogueCauseRuledOut_asksForNoReason() {
        TicketFixture desk = desk();
        ruleOut(desk, DUST);
        int words = desk.as(INES).records(theory("Something else"));
        catalogueRanks(desk, List.of(), "heat.dust");
        desk.as(INES).records(choose(words));
        asks("", desk);
    }

    @Test
    void orderOfTheStatedTheories_goesBeforeTheCatalogues() {
        TicketFixture desk = desk();
        int dust = desk.as(INES).records(DUST);
        int fan = desk.as(INES).records(FAN);
        catalogueRanks(desk, List.of(fan, dust), "heat.dust", "heat.fan");
        desk.as(INES).records(choose(fan));
        asks("", desk);
        desk.as(INES).records(choose(dust));
        asks(WHY, desk);
    }

    @Test
    void orderOfWhatWasRuledOut_leavesTheChoiceFree() {
        TicketFixture desk = desk();
        ruleOut(desk, DUST);
        int dust = desk.latest(TheoryStated.class);
        int fan = desk.as(INES).records(FAN);
        desk.as(INES).records(new TheoriesRanked(List.of(dust), "judgement"));
        desk.as(INES).records(choose(fan));
        asks("", desk);
    }

    @Test
    void latestRanking_counts() {
        TicketFixture desk = desk();
        int dust = desk.as(INES).records(DUST);
        int fan = desk.as(INES).records(FAN);
        desk.as(INES).records(new TheoriesRanked(List.of(dust, fan), "judgement"));
        desk.as(INES).records(choose(fan));
        asks(WHY, desk);
        desk.as(INES).records(new TheoriesRanked(List.of(fan, dust), "a new reading"));
        asks("", desk);
    }
}
